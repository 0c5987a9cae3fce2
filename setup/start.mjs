/** `npm start`: installs and builds where needed, then shows the demo tank. Words after `--` go to the demo. */
import { ensureInstalled } from './install.mjs';
import { runProgram } from './program.mjs';

await ensureInstalled();
await runProgram(['demo', ...process.argv.slice(2)], { page: true });
