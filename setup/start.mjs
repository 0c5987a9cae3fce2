/** `npm start`: installs and builds where needed, then answers for the demo tank and serves the drawing board. */
import { ensureInstalled } from './install.mjs';
import { runProgram } from './program.mjs';

await ensureInstalled();
await runProgram(['start', ...process.argv.slice(2)], { page: true });
