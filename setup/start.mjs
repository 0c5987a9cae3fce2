/** `npm start`: installs and builds where needed, then shows the demo tank. Words after `--` go to the demo. */
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { ensurePage, ensureProgram } from './build.mjs';

await ensureInstalled();
await ensureProgram();
await ensurePage();
const command = fileURLToPath(new URL('hoopwright.mjs', import.meta.url));
process.argv = [process.argv[0], command, 'demo', ...process.argv.slice(2)];
await import(new URL('../dist/hoopwright.mjs', import.meta.url).href);
