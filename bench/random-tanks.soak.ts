/** 2,000 random but buildable tanks (TANKS=, SEED=): how they end, and how long the slowest takes. */
import { diceOf } from '../core/math/dice.ts';
import { randomEnd } from '../checks/shell/randomEnd.ts';

const tanks = Number(process.env['TANKS'] ?? 2000);
const seed = Number(process.env['SEED'] ?? 0);
const ends = new Map<string, number>();
let slowest = 0;
let wrong = 0;
for (let k = 0; k < tanks; k++) {
  const start = performance.now();
  const { whole, reason, finite, limit } = randomEnd(diceOf(seed + k));
  slowest = Math.max(slowest, performance.now() - start);
  const end = whole ? limit : (reason ?? 'no reason');
  ends.set(end, (ends.get(end) ?? 0) + 1);
  if (!finite || (!whole && reason === undefined)) {
    wrong++;
    console.log(`seed ${seed + k}: ${finite ? 'no reason' : 'not a number'}`);
  }
  if ((k + 1) % 200 === 0) console.log(`${k + 1} of ${tanks}, slowest ${slowest.toFixed(0)} ms`);
}
for (const [end, count] of ends) console.log(`${count} ended by ${end}`);
console.log(`slowest ${slowest.toFixed(0)} ms; ${wrong} wrong`);
process.exitCode = wrong > 0 || slowest > 2000 ? 1 : 0;
