/**
 * The judgement of the test day on invented tanks that live on the shell with its rate effect: final growth foreseen at
 * 25, 50 and 75 % of it, with certificate only and with + 4 coupons, by wires and by hand. Steel, evidence and instruments
 * are drawn from what the range assumes; what is not assumed is how the shell strays from the quick tank.
 * TANKS=n for each condition (default 200), SEED=n for others, ONLY=word for some conditions.
 */
import { DAY_RUNS, runsFor } from '../core/stretch/quick/quick.ts';
import { airTrials } from '../checks/knowing/air.ts';
import { knowCoverage } from '../checks/knowing/coverage.ts';
import { levelTrials } from '../checks/knowing/level.ts';
import { knowTrial, type KnowTrial } from '../checks/knowing/trial.ts';
import { quickOf, worldOf } from '../checks/knowing/world.ts';

const tanks = Number(process.env['TANKS'] ?? 200);
const seed = Number(process.env['SEED'] ?? 40_000);
const only = process.env['ONLY'] ?? '';
const DRAWS = 300;
const RUNS = runsFor(DAY_RUNS);
const SHARES = [0.25, 0.5, 0.75];

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const percent = (share: number, digits = 1): string => `${(100 * share).toFixed(digits)} %`;
const failures: string[] = [];
const hold = (what: string, value: number, [low, high]: readonly [number, number]): void => {
  if (!(value >= low && value <= high)) failures.push(`${what}: ${value}, wanted ${low} to ${high}`);
};

const quick = quickOf(RUNS, seed - 1000);
const { held, pressure, nearYield } = quick.error;
say(
  `quick tank against ${held} held-back shell solutions: pressure off by ${percent(pressure.rms, 2)} rms from 1 % growth up, ` +
    `${percent(nearYield.rms, 2)} about yield`,
);

const conditions = [
  { name: 'certificate only, by wire', coupons: 0, by: 'wire', width: 0.15 },
  { name: 'certificate + 4 coupons, by wire', coupons: 4, by: 'wire', width: 0.25 },
  { name: 'certificate only, by hand', coupons: 0, by: 'tape', width: Infinity },
  { name: 'certificate + 4 coupons, by hand', coupons: 4, by: 'tape', width: Infinity },
] as const;

for (const { name, coupons, by, width } of conditions) {
  if (!name.includes(only)) continue;
  const trials = Array.from(
    { length: tanks },
    (_, k): KnowTrial =>
      knowTrial({ seed: seed + k, quick, world: worldOf(seed + k, coupons, DRAWS), shares: SHARES, by }),
  );
  const burst = trials.filter(({ growth }) => growth === Infinity).length;
  say(`${name}: ${tanks} tanks, ${burst} burst before the end of the final hold`);
  for (const share of SHARES) {
    const found = knowCoverage(trials, share);
    say(
      `  at ${percent(share)} of the final growth: ${percent(found.wide)} of ${found.tanks} inside the 90 % range, ` +
        `${percent(found.half)} inside the 50 % range, median width ${found.width.toFixed(3)} of that before`,
    );
    hold(`${name}, at ${share}, 90 %`, found.wide, [0.85, 0.95]);
    hold(`${name}, at ${share}, 50 %`, found.half, [0.42, 0.58]);
    if (share === 0.5) hold(`${name}, width`, found.width, [0, width]);
  }
}

for (const supply of ['strokes', 'litres'] as const) {
  const found = airTrials(2000, seed, supply);
  say(
    `air by ${supply}: ${found.held} of ${found.trials} first steps hold it in the 90 % range, half width ${found.halfWidth.toFixed(2)} L`,
  );
  hold(`air by ${supply}`, found.held / found.trials, [0.9, 1]);
}

const level = levelTrials({ quick, seed: seed + 50_000, tests: 1000 });
say(`level: ${level.alarm} alarms and ${level.quiet} quiet notes in ${level.tests} healthy tests`);
hold('alarms of healthy tests', level.alarm / level.tests, [0, 0.01]);

for (const failure of failures) say(`FAILED ${failure}`);
process.exitCode = failures.length > 0 ? 1 : 0;
