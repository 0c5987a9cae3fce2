/** What others may use of the server. */
export { type AppParts, makeApp } from './app.ts';
export { type Answer, type Message, type Pool, openPool } from './pool.ts';
export type { CheckFile } from './routes/projects.ts';
export { type ServeOptions, type Serving, serve } from './serve.ts';
export { type Settings, USUAL_PORT, settingsFrom } from './settings.ts';
