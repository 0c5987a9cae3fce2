/** How the page is bundled: no inline script or style, nothing fetched from elsewhere. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// oxlint-disable-next-line import/no-default-export -- the bundler wants a default export
export default defineConfig({
  plugins: [react()],
  build: {
    target: 'es2022',
    // The content policy forbids data: in fonts and styles.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  worker: { format: 'es' },
});
