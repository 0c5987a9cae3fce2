/** `npm run soak [-- WORD …]`: runs every bench/*.soak.ts whose name holds one of the words, one after the other. Each fails by its exit code. */
import { ensureBundles } from './benches.mjs';
import { run, say } from './run.mjs';

const failed = [];
for (const program of await ensureBundles('soak', process.argv.slice(2))) {
  say(`\n== ${program}`);
  if ((await run(process.execPath, ['--enable-source-maps', program])) !== 0) failed.push(program);
}
if (failed.length > 0) say(`\nFailed: ${failed.join(', ')}`);
process.exitCode = failed.length > 0 ? 1 : 0;
