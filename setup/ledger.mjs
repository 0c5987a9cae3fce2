/** What the timings look like on a screen and in BENCH.md, where each is set against its own last value on that machine. */

/**
 * @typedef {import('../bench/harness.ts').Timing} Timing
 * @typedef {Map<string, Map<string, Timing>>} Ledger machine, then name of the bench
 */

const HEAD = `# Timings

Made by \`npm run bench -- --write\`, one table for each machine. The median is that of one run, warm; the spread is the
distance between the quartiles over the median. A change below twice the spread is noise.
`;
const COLUMNS = '| name | median, ms | spread, % | limit, ms | note |\n| --- | ---: | ---: | ---: | --- |';

/**
 * @param {string} text of BENCH.md, empty if there is none
 * @returns {Ledger}
 */
export function readLedger(text) {
  const ledger = new Map();
  let machine = '';
  for (const line of text.split('\n')) {
    if (line.startsWith('## ')) machine = line.slice(3);
    const [, name, median, spread, limit, note] = line.split('|').map((cell) => cell.trim());
    if (!Number.isFinite(Number.parseFloat(median ?? ''))) continue;
    const timing = { name, median_ms: Number(median), spread: Number(spread) / 100 };
    const extra = { ...(limit && { limit_ms: Number(limit) }), ...(note && { note }) };
    ledger.set(machine, (ledger.get(machine) ?? new Map()).set(name, { ...timing, ...extra }));
  }
  return ledger;
}

/** @param {Ledger} ledger */
export function writeLedger(ledger) {
  const tables = [...ledger].map(
    ([machine, rows]) => `\n## ${machine}\n\n${COLUMNS}\n${[...rows.values()].map(row).join('\n')}\n`,
  );
  return HEAD + tables.join('');
}

/** @param {Timing} timing */
const row = ({ name, median_ms, spread, limit_ms, note }) =>
  `| ${name} | ${digits(median_ms)} | ${(spread * 100).toFixed(1)} | ${limit_ms ?? ''} | ${(note ?? '').replaceAll('|', '/')} |`;

/** Three figures are what a median is worth. @param {number} value */
const digits = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/**
 * Puts new timings in place of the old ones of the same name; others stay.
 * @param {Ledger} ledger
 * @param {string} machine
 * @param {Timing[]} timings
 * @returns {Ledger}
 */
export function merged(ledger, machine, timings) {
  const rows = new Map(ledger.get(machine));
  for (const timing of timings) rows.set(timing.name, timing);
  return new Map(ledger).set(machine, rows);
}

/**
 * One line for the screen.
 * @param {Timing} timing
 * @param {Timing | undefined} before on the same machine
 */
export function lineOf(timing, before) {
  const { name, median_ms, spread, limit_ms, note } = timing;
  const parts = [
    `${name.padEnd(44)} ${digits(median_ms).padStart(8)} ms  ±${(spread * 100).toFixed(0).padStart(3)} %`,
  ];
  if (limit_ms !== undefined) parts.push(isOver(timing) ? `OVER ${limit_ms} ms` : `under ${limit_ms} ms`);
  if (before) parts.push(changeSince(before, timing));
  if (note) parts.push(note);
  return parts.join('  ');
}

/** @param {Timing} timing */
export const isOver = ({ median_ms, limit_ms }) => limit_ms !== undefined && median_ms > limit_ms;

/** @param {Timing} before @param {Timing} now */
function changeSince(before, now) {
  const change = now.median_ms / before.median_ms - 1;
  const noise = 2 * Math.max(before.spread, now.spread);
  if (Math.abs(change) <= noise) return 'as before';
  return `${change > 0 ? '+' : ''}${(change * 100).toFixed(0)} % since ${digits(before.median_ms)} ms`;
}
