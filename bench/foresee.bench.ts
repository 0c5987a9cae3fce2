/** The adviser of a running day against the clock: a batch that wires have read, late in the final hold, and the advice. */
import { diceOf } from '../core/gauge/door.ts';
import { advance, drawnTank, justFilled, livedTank, truthOf } from '../core/stretch/door.ts';
import { fromBar, toBar, toLitre } from '../core/units.ts';
import { plateOf } from '../station/range/steelRange.ts';
import { judgedWorld } from '../station/rig/judged/days.ts';
import { Adviser } from '../wire/advice/door.ts';
import type { Plan, Step } from '../wire/plan/plan.ts';
import { channelsOf, type Row } from '../wire/reading/door.ts';
import { bench } from './harness.ts';

const SEED = 71;
/** Noise of one reading: bar and mm. */
const NOISE = { pressure: 0.05, girth: 0.1 } as const;
/** s of each hold, read once a second; mm³/s of the pump. */
const HELD = 600;
const FLOW = 15_000;
/** ms from a batch to its forecast on a running day, and for advice beside it. */
const LIMIT = 200;

const { plan, tank, stretch } = judgedWorld(SEED);
const channels = channelsOf(plan).map((channel) => {
  if (channel.reads === 'pressure') return { ...channel, noise: NOISE.pressure };
  return channel.reads === 'girth' ? { ...channel, by: 'draw-wire' as const, noise: NOISE.girth } : channel;
});
const adviser = new Adviser({ plan, channels, stretch });
const rows = [...secondsOf(plan)];
for (const row of rows.slice(0, -1)) {
  adviser.take(row);
  adviser.forecast();
}
const [last] = rows.slice(-1);

await bench(`a batch foreseen after ${rows.length} rows`, () => adviser.forecastWith(last), {
  warm: 10,
  runs: 41,
  limit_ms: LIMIT,
  note: (found) => `growth ${found?.growth_percent.median?.toFixed(2) ?? '-'} %`,
});
await bench('advice in the final hold', () => adviser.advice(last.seconds, last.step), {
  warm: 10,
  runs: 41,
  limit_ms: LIMIT,
  note: ({ state }) => state,
});

/** A day on the shell up to ten minutes into the final hold. */
function* secondsOf({ steps }: Plan): Generator<Row> {
  const dice = diceOf(SEED);
  const lived = livedTank(drawnTank(tank, plateOf(tank), stretch.draws[7]), {
    shell: { elements: 24, layers: 3 },
  });
  let now = justFilled(lived);
  const read = ({ number, pressure_bar }: Step): Row => {
    now = advance(lived, now, { does: 'pump', flow: FLOW, upTo: fromBar(pressure_bar), seconds: 1 });
    const truth = truthOf(lived, now);
    const gauge = () => toBar(truth.pressure) + NOISE.pressure * dice.normal();
    const girths = tank.girths.map(({ name }, i) => [name, truth.girths[i] + NOISE.girth * dice.normal()]);
    const values = { 'gauge A': gauge(), 'gauge B': gauge(), weighing: toLitre(truth.drawn) };
    return { seconds: truth.seconds, step: number, values: { ...values, ...Object.fromEntries(girths) } };
  };
  for (const step of steps) {
    if (step.kind === 'drain') return;
    const goal = fromBar(step.pressure_bar) * (1 - 1e-4);
    while (now.burst === undefined && now.walk.now.pressure < goal) yield read(step);
    if (step.hold !== undefined) for (let s = 0; s < HELD; s++) yield read(step);
    if (step.kind === 'final hold') return;
  }
}
