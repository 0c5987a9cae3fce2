/**
 * The range of steels against invented tanks whose truth is known, in full: certificate only, + 2 and + 4 coupons, and
 * steels that the range does not expect. The truth is drawn from what the range assumes and tested with the errors it
 * assumes: this shows that the inference is worked out rightly, not that what it assumes of steel is right.
 * TANKS=n for each condition (default 1000, 300 at least), SEED=n for others.
 */
import { coverageOf, type Coverage, type Trial, trialOf } from '../checks/calibration/coverage.ts';
import { type Outsider, OUTSIDERS } from '../checks/calibration/outsiders.ts';

const tanks = Number(process.env['TANKS'] ?? 1000);
const seed = Number(process.env['SEED'] ?? 10_000);
const DRAWS = 400;
const STRANGERS = 25;

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const failures: string[] = [];
const hold = (what: string, value: number, [low, high]: readonly [number, number]): void => {
  if (!(value >= low && value <= high)) failures.push(`${what}: ${value}, wanted ${low} to ${high}`);
};

const conditionOf = (coupons: number): Trial[] =>
  Array.from({ length: tanks }, (_, k) => trialOf({ seed: seed * (coupons + 1) + k, coupons, draws: DRAWS }));

const told = (name: string, coverage: Coverage): void => {
  const { wide, half, medianWidth, uniform, uniformCells, bursts, untrusted, warnings } = coverage;
  say(
    `${name}: ${coverage.tanks} tanks, ${percent(wide)} inside the 90 % range, ${percent(half)} inside the 50 % range, ` +
      `median width ${percent(medianWidth)} of growth; ranks uniform with chance ${uniform.toFixed(3)} (Kolmogorov), ` +
      `${uniformCells?.toFixed(3) ?? 'too few'} (20 cells); ${bursts} burst, ${untrusted} with weights not to be trusted, ` +
      `${warnings.length} warnings`,
  );
};

const names = ['certificate only', 'certificate + 2 coupons', 'certificate + 4 coupons'];
const conditions = [0, 2, 4].map((coupons, k) => {
  const coverage = coverageOf(conditionOf(coupons));
  told(names[k], coverage);
  hold(`${names[k]}, 90 %`, coverage.wide, [0.86, 0.94]);
  hold(`${names[k]}, 50 %`, coverage.half, [0.44, 0.56]);
  hold(`${names[k]}, uniform ranks`, Math.min(coverage.uniform, coverage.uniformCells ?? 1), [0.01, 1]);
  hold(`${names[k]}, weights not to be trusted`, coverage.untrusted, [0, 0]);
  return coverage;
});
const pooled = conditions.reduce((sum, { wide }) => sum + wide, 0) / conditions.length;
say(`all conditions: ${percent(pooled)} inside the 90 % range`);
hold('all conditions, 90 %', pooled, [0.88, 0.92]);
const narrowed = conditions[2].medianWidth / conditions[0].medianWidth;
say(`median width with four coupons over certificate only: ${narrowed.toFixed(2)}`);
hold('narrowing by four coupons', narrowed, [0, 0.6]);

const strangers = OUTSIDERS.flatMap((outsider: Outsider) => {
  const trials = Array.from({ length: STRANGERS }, (_, k) =>
    trialOf({ seed: 7 * seed + k, coupons: 4, draws: DRAWS, outsider }),
  );
  const coverage = coverageOf(trials);
  told(`${outsider}, certificate + 4 coupons`, coverage);
  for (const warning of coverage.warnings) say(`    ${warning}`);
  return trials;
});
const strange = coverageOf(strangers);
say(
  `${strange.tanks} tanks of a steel the range does not expect: ${percent(strange.wide)} inside the 90 % range`,
);
hold('unexpected steels, 90 %', strange.wide, [0.8, 1]);

for (const failure of failures) say(`FAILED ${failure}`);
process.exitCode = failures.length > 0 ? 1 : 0;
