/**
 * `npm run bench [-- WORD …] [--json] [--write]`: times every bench/*.bench.ts whose name holds one of the words.
 * `--json` prints a list of { name, median_ms, spread } on standard output; `--write` enters the figures in BENCH.md.
 * Ends with 1 where a bench breaks or is over its limit.
 */
import { fork } from 'node:child_process';
import { cpus, totalmem } from 'node:os';
import { ensureBundles } from './benches.mjs';
import { inRoot, leaveMark, markAt } from './folders.mjs';
import { isOver, lineOf, merged, readLedger, writeLedger } from './ledger.mjs';
import { say } from './run.mjs';

/** @typedef {import('./ledger.mjs').Timing} Timing */

const LEDGER = 'BENCH.md';
const words = process.argv.slice(2);
const wants = (/** @type {string} */ option) => words.includes(option);

const machine = machineName();
const history = readLedger(markAt(LEDGER));
say(machine);
/** @type {Timing[]} */
const timings = [];
let broken = 0;
for (const program of await ensureBundles(
  'bench',
  words.filter((word) => !word.startsWith('--')),
)) {
  if ((await timed(program)) !== 0) broken++;
}
if (wants('--json')) process.stdout.write(`${JSON.stringify(timings.map(listed), null, 2)}\n`);
if (wants('--write')) leaveMark(LEDGER, writeLedger(merged(history, machine, timings)));
const over = timings.filter(isOver).length;
if (broken > 0) say(`${broken} bench files broke off`);
if (over > 0) say(`${over} over the limit`);
process.exitCode = broken + over > 0 ? 1 : 0;

/**
 * Runs one bundle in a process of its own, so that what one bench does to the compiler does not reach the next.
 * @param {string} program
 * @returns {Promise<number>} exit code
 */
function timed(program) {
  return new Promise((resolve) => {
    // What a bench prints is for people: standard output is kept for the list.
    const child = fork(inRoot(program), {
      stdio: ['ignore', 2, 2, 'ipc'],
      execArgv: ['--enable-source-maps'],
    });
    child.on('message', (message) => {
      if (!isTiming(message)) return;
      timings.push(message);
      say(lineOf(message, history.get(machine)?.get(message.name)));
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/** @param {Timing} timing what the list on standard output holds of it */
function listed({ name, median_ms, spread }) {
  return { name, median_ms, spread };
}

/** @param {unknown} message @returns {message is Timing} */
function isTiming(message) {
  return typeof message === 'object' && message !== null && 'median_ms' in message;
}

function machineName() {
  const processors = cpus();
  const model = processors[0]?.model.trim() || process.arch;
  const memory = Math.round(totalmem() / 2 ** 30);
  return `${model}, ${processors.length} cores, ${memory} GB, Node ${process.versions.node}, ${process.platform}`;
}
