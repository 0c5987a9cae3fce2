/** The heart against the clock: C3 by the very settings of the checks, cost by mesh, and a thousand forecasts at once. */
import { diceOf } from '../core/math/dice.ts';
import { type Forecast, forecast, type ForecastOrders } from '../core/stretch/forecast.ts';
import { STANDARD_RISE } from '../core/stretch/rise.ts';
import { TANK_C3 } from '../checks/shell/tankC3.ts';
import type { Tank } from '../core/tank/tank.ts';
import { availableParallelism } from 'node:os';
import { openManyForecasts } from '../station/range/manyForecasts.ts';
import type { ManyAnswer, ManyMessage } from '../station/worker/many.ts';
import { bench } from './harness.ts';

const TENTH = { until: 0.1 } satisfies ForecastOrders;
const POINTS = 160 * 5;

/** Largest difference of pressure at equal volume from the same path in ten times finer steps, percent. */
function offFine(coarse: Forecast): number {
  const fine = forecast(TANK_C3, undefined, { ...TENTH, rise: { ...STANDARD_RISE, refine: 10 } }).path;
  let most = 0;
  for (const moment of coarse.path) {
    const j = fine.findIndex((m) => m.growth >= moment.growth);
    if (j < 1) continue;
    const [a, b] = [fine[j - 1], fine[j]];
    const f = (moment.growth - a.growth) / (b.growth - a.growth);
    most = Math.max(most, Math.abs(moment.pressure / (a.pressure + f * (b.pressure - a.pressure)) - 1));
  }
  return 100 * most;
}

function noteOf(result: Forecast, ms: number): string {
  const { steps, iterations, most, cuts } = result.effort;
  const perPoint = (1e6 * ms) / ((iterations + steps) * POINTS);
  return `${steps} steps, ${iterations} iterations, at most ${most} a step, ${cuts.length} cut, ${perPoint.toFixed(0)} ns a point`;
}

await bench('C3 to 10 % girth growth, 160 elements x 5 layers', () => forecast(TANK_C3, undefined, TENTH), {
  warm: 15,
  runs: 41,
  limit_ms: 25,
  note: (result, ms) =>
    `${noteOf(result, ms)}, pressure ${offFine(result).toFixed(3)} % from ten times finer steps`,
});

await bench('C3 past the pressure maximum, 160 elements x 5 layers', () => forecast(TANK_C3, undefined, {}), {
  warm: 8,
  runs: 21,
  limit_ms: 75,
  note: (result, ms) =>
    `${noteOf(result, ms)}, maximum ${((result.maximum?.pressure ?? 0) * 10).toFixed(2)} bar`,
});

for (const elements of [40, 80, 160, 320, 640, 1280]) {
  await bench(
    `C3 to 10 %, ${elements} elements`,
    () => forecast(TANK_C3, undefined, { ...TENTH, shell: { elements, layers: 5 } }),
    {
      warm: 3,
      runs: 7,
      note: ({ effort }, ms) =>
        `${((1e3 * ms) / ((effort.iterations + effort.steps) * elements)).toFixed(2)} microseconds an element and assembly`,
    },
  );
}

/** A thousand tanks of varied steel and wall, seeded. */
function varied(count: number): Tank[] {
  const dice = diceOf(1_000);
  return Array.from({ length: count }, () => {
    const [course] = TANK_C3.courses;
    const K = 1350 * (1 + 0.06 * dice.normal());
    const steel = {
      ...course.steel,
      flow: { law: 'swift', K, n: 0.45 + 0.02 * dice.normal(), e0: 0.0155 } as const,
    };
    const wall = 2 * (1 + 0.03 * dice.normal());
    const head = { ...TANK_C3.heads.top, steel };
    return { ...TANK_C3, courses: [{ ...course, steel, wall }], heads: { top: head, bottom: head } };
  });
}

const many = openManyForecasts(new URL('./worker-many.mjs', import.meta.url), availableParallelism());

const messagesFor = (until: number | undefined): ManyMessage[] =>
  varied(1000).map((tank) => ({ tank, ...(until === undefined ? {} : { until }) }));

async function thousand(until: number | undefined): Promise<readonly ManyAnswer[]> {
  const progress = (done: number): void => {
    if (done % 250 === 0) process.stderr.write(`  ${done} of 1000 forecasts\n`);
  };
  const answers = await many.run(messagesFor(until), { progress });
  if (answers.some(({ pressure }) => !Number.isFinite(pressure)))
    throw new Error('a forecast gave no number');
  return answers;
}

/** Asks for a thousand, stops after fifty, and says how long the stop took. */
async function stopped(): Promise<number> {
  const stop = new AbortController();
  let asked = 0;
  const progress = (done: number): void => {
    if (done !== 50) return;
    asked = performance.now();
    stop.abort();
  };
  await many.run(messagesFor(0.1), { progress, signal: stop.signal }).catch((error: unknown) => {
    if (!stop.signal.aborted) throw error;
  });
  return performance.now() - asked;
}

const both = `${availableParallelism()} threads`;
const computing = new WeakMap<readonly ManyAnswer[], number>();
/** With what the threads computed: on a machine that others use too, the clock says more of them than of us. */
async function thousandComputed(until: number | undefined): Promise<readonly ManyAnswer[]> {
  const before = process.cpuUsage();
  const answers = await thousand(until);
  const { user, system } = process.cpuUsage(before);
  computing.set(answers, (user + system) / 1000);
  return answers;
}
const computedNote = (answers: readonly ManyAnswer[]): string =>
  `${(computing.get(answers) ?? 0).toFixed(0)} ms of processor time over all threads`;
await bench(`1,000 forecasts to 10 %, ${both}`, () => thousandComputed(0.1), {
  warm: 0,
  runs: 1,
  limit_ms: 15_000,
  note: computedNote,
});
await bench(`1,000 forecasts past the maximum, ${both}`, () => thousandComputed(undefined), {
  warm: 0,
  runs: 1,
  limit_ms: 45_000,
  note: computedNote,
});
const ms = await stopped();
process.stderr.write(`  a thousand stopped after fifty: ended ${ms.toFixed(0)} ms later\n`);
await many.close();
