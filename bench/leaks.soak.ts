/**
 * Leaks in holds of invented tanks that live on the shell. Draw-wire with 0.1 mm of noise, drifting up to 0.02 mm in five
 * minutes, water up to 0.2 K: 20 mL/min and more in five minutes of a shut valve, the same with the valve open and the
 * supply weighed to 5 g, and by tape the smallest leak that is stated. HOLDS=n (default 200; creep alone 300), SEED=n.
 */
import { type Held, heldTank, type LeakOrders, leakTrial } from '../checks/knowing/leaks.ts';
import { diceOf } from '../core/math/dice.ts';
import { DAY_RUNS, runsFor } from '../core/stretch/quick/quick.ts';
import { quickOf } from '../checks/knowing/world.ts';

const holds = Number(process.env['HOLDS'] ?? 200);
const creeps = Math.round(1.5 * holds);
const seed = Number(process.env['SEED'] ?? 70_000);
/** Tanks that the holds are spread over. */
const TANKS = 40;

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const quick = quickOf(runsFor(DAY_RUNS), seed - 1000);
const tanks: Held[] = Array.from({ length: TANKS }, (_, k) => heldTank(seed + k, quick)).filter(
  ({ now }) => now.burst === undefined,
);
let failed = false;

type Way = Pick<LeakOrders, 'valve' | 'girth' | 'thermometer' | 'time'>;
const seenIn = (way: Way, count: number, leak: (k: number) => number): number => {
  let seen = 0;
  for (let k = 0; k < count; k++) {
    const found = leakTrial({ ...way, leak: leak(k), held: tanks[k % tanks.length], seed: seed + 7 * k });
    if (found?.verdict === 'seen') seen++;
  }
  return seen;
};

const shut: Way = { valve: 'shut', girth: 'wire', thermometer: true, time: 300 };
/** 20 to 60 mL/min. */
const leaking = (k: number): number => 20 + 40 * diceOf(seed + k).uniform() ** 2;
for (const [name, way] of [
  ['valve shut, by wire', shut],
  ['valve open, supply weighed', { ...shut, valve: 'open' }],
] as const) {
  const found = seenIn(way, holds, leaking);
  const least = seenIn(way, holds, () => 20);
  const called = seenIn(way, creeps, () => 0);
  failed ||= found < 0.95 * holds || least < 0.95 * holds || called > 0;
  say(
    `${name}: 20-60 mL/min seen in ${found} of ${holds}, 20 mL/min in ${least} of ${holds} (95 %); ` +
      `none called in ${creeps - called} of ${creeps} holds that only creep`,
  );
}

const tape: Way = { ...shut, girth: 'tape', time: 600 };
const stated = Math.max(
  ...tanks.map(
    (held, k) => 0.06 * (leakTrial({ ...tape, leak: 0, held, seed: seed + k })?.smallest ?? Infinity),
  ),
);
const found = seenIn(tape, holds, () => stated);
const called = seenIn(tape, creeps, () => 0);
failed ||= found < 0.95 * holds || called > 0;
say(
  `by tape, ten minutes: smallest leak stated ${stated.toFixed(1)} mL/min, seen in ${found} of ${holds} (95 %); ` +
    `none called in ${creeps - called} of ${creeps} holds that only creep`,
);
process.exitCode = failed ? 1 : 0;
