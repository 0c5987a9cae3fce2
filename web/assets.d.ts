/** What the bundler takes besides sources. */
declare module '*.css';
declare module '@fontsource/b612/latin-400.css';
declare module '@fontsource/b612/latin-700.css';
