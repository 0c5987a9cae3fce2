/**
 * What is foreseen, in time: the set-up for a new tank, its second start, and then the server's own adviser beside a record
 * that takes 12 channels at 100 Hz with six screens that listen, while the tank is pumped and yields. Told: ms from the last
 * reading of a batch, ten batches in a second, to its forecast, and to the record for those that say something new. Under
 * 200 ms at p95; set-up under 60 s.
 * SECONDS=n of pumping (usual 90). The thread's own time, there and back, is told beside it.
 */
import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { pressureAt, valueAt } from '../core/stretch/quick/path.ts';
import { quickPath } from '../core/stretch/quick/quick.ts';
import { planFor } from '../wire/plan/planFor.ts';
import type { Plan } from '../wire/plan/plan.ts';
import { parseTankFile } from '../wire/tank/parseTankFile.ts';
import type { Stretchable } from '../wire/advice/facts.ts';
import { askAdviser } from '../station/advise/adviseThread.ts';
import { keptStretch } from '../station/advise/keptStretch.ts';
import { LiveAdviser } from '../station/advise/liveAdviser.ts';
import { openPaceDay, type PaceDay } from '../station/day/pace.ts';
import { couponsBeside } from '../station/range/coupons.ts';
import { openRunner } from '../station/range/runner.ts';
import { serve } from '../station/server/serve.ts';
import { sha256 } from '../station/store/hash.ts';
import { openStore } from '@hoopwright/station/store';
import { listen, pause, sendLines } from './node.ts';

const CHILD = 'child';
const TANK = fileURLToPath(new URL('../examples/dunlin-oxidiser.json', import.meta.url));
const SECONDS = Number(process.env['SECONDS'] ?? 90);
const RATE = 100;
const SCREENS = 6;
const P95_MS = 200;
/** Batches in a second that must have been foreseen, of the ten: the first is only heard when the pump has begun. */
const BATCHES = 9;
const SET_UP_S = 60;

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ?? NaN;
const spread = (values: readonly number[]): string =>
  `p50 ${quantile(values, 0.5).toFixed(0)} ms, p95 ${quantile(values, 0.95).toFixed(0)} ms, longest ${Math.max(...values).toFixed(0)} ms`;

async function soak(): Promise<void> {
  const dir = mkdtempSync(join(tmpdir(), 'hoopwright-foresee-'));
  try {
    const file: unknown = JSON.parse(await readFile(TANK, 'utf8'));
    const given = parseTankFile(file);
    if (!given.ok) throw new Error(JSON.stringify(given.issues));
    const made = await setUp(dir, given);
    const answer = planFor({ ...given, program: 'soak', hash: sha256 });
    if (answer.kind !== 'plan') throw new Error(JSON.stringify(answer.reasons));
    const failed = [
      ...made.failed,
      ...(await pumped(dir, { file: given.file, plan: answer.plan, stretch: made.stretch })),
    ];
    if (failed.length > 0) throw new Error(failed.join('; '));
  } finally {
    rmSync(dir, { recursive: true });
  }
}

/** By the day's own way: threads on every core, kept in the data folder. */
async function setUp(dir: string, given: Extract<ReturnType<typeof parseTankFile>, { ok: true }>) {
  const files = await couponsBeside(TANK, given, (path) => readFile(path));
  const start = async () => {
    let told = 0;
    const runner = openRunner();
    const began = performance.now();
    const progress = (): void => void told++;
    const stretch = await keptStretch({ dir, digest: 'soak', given, files, run: runner.run, progress });
    const seconds = (performance.now() - began) / 1000;
    await runner.close();
    if (stretch === undefined) throw new Error('the demo tank has no range');
    return { stretch, seconds, told };
  };
  const before = process.cpuUsage();
  const first = await start();
  const { user, system } = process.cpuUsage(before);
  const second = await start();
  say(
    `set-up for a new tank: ${first.seconds.toFixed(1)} s on ${availableParallelism()} cores (${((user + system) / 1e6).toFixed(1)} s of processor time), progress told ${first.told} times; second start ${second.seconds.toFixed(2)} s, solved again: ${second.told}`,
  );
  return {
    stretch: first.stretch,
    failed: [
      ...(first.seconds > SET_UP_S ? [`set-up took ${first.seconds.toFixed(0)} s`] : []),
      ...(second.told > 0 ? ['the second start solved again'] : []),
    ],
  };
}

interface Pumped {
  readonly file: object;
  readonly plan: Plan;
  readonly stretch: Stretchable;
}

async function pumped(dir: string, { file, plan, stretch }: Pumped): Promise<string[]> {
  const store = openStore(join(dir, 'day'));
  const asked: number[] = [];
  const foreseen: number[] = [];
  const late: number[] = [];
  /** ms since the reading of so many s since the vent was shut. */
  let since: (seconds: number) => number = () => NaN;
  const ask: typeof askAdviser = async (message) => {
    const began = performance.now();
    const said = await askAdviser(message);
    if (message.kind !== 'hear') return said;
    asked.push(performance.now() - began);
    if (message.batch !== undefined && said?.forecast !== undefined)
      foreseen.push(since(message.batch.seconds));
    return said;
  };
  const names = nodeNames(plan);
  const day = await openPaceDay(store, {
    fast: 1,
    on: { file, plan, names },
    adviser: (_frozen, _project, clock) => {
      const adviser = new LiveAdviser({
        ask,
        stretch: async () => stretch,
        later: (ms, work) => {
          const timer = setTimeout(work, ms);
          return () => clearTimeout(timer);
        },
        now: () => clock.now().wall_ms,
        log: (error) => console.error(error),
      });
      return {
        heard: (now, write) => {
          since = (seconds) => clock.now().wall_ms - (now.state.ventShut_ms ?? 0) - 1000 * seconds;
          adviser.heard(now, (kind, body) => {
            write(kind, body);
            const { seconds } = body;
            if (kind === 'forecast' && typeof seconds === 'number') late.push(since(seconds));
          });
        },
        close: () => adviser.close(),
      };
    },
  });
  const serving = await serve({ store, days: day.days, port: 0, log: (error) => console.error(error) });
  await toFirstRise(day, plan);
  const sender = child('send', serving.port, day.record, JSON.stringify(rideOf(plan, stretch, names)));
  const readers = child('read', serving.port, day.record, String(SCREENS));
  const from = day.live.state.state.seq;
  await pause(1000 * (SECONDS + 10));
  const taken = day.live.state.state.seq - from;
  for (const one of [sender, readers]) one.kill();
  const aside = day.live.state.state.channels.flatMap(({ aside: told }) => told?.why ?? []);
  await day.days.close();
  await serving.close();
  store.close();
  say(
    `${taken} entries of 12 channels in ${SECONDS + 10} s with ${SCREENS} screens; ${foreseen.length} batches foreseen, from their last reading ${spread(foreseen)}; ${late.length} forecasts in the record, from the reading ${spread(late)}; ${asked.length} questions to the adviser's thread, there and back ${spread(asked)}`,
  );
  return [
    ...aside,
    ...(foreseen.length < BATCHES * SECONDS ? [`only ${foreseen.length} batches were foreseen`] : []),
    ...(taken < 0.9 * RATE * SECONDS ? [`${taken} entries came in`] : []),
    ...[foreseen, late].flatMap((all) =>
      quantile(all, 0.95) > P95_MS ? [`forecast p95 ${quantile(all, 0.95).toFixed(0)} ms`] : [],
    ),
  ];
}

/** Short names, as a node sends them, to channels of the plan. */
const nodeNames = ({ places }: Plan): Record<string, string> =>
  Object.fromEntries(places.map(({ name }, i) => [`c${i}`, name]));

async function toFirstRise({ live }: PaceDay, plan: Plan): Promise<void> {
  for (const _ of plan.steps) {
    const { step } = live.state.state;
    if (step?.kind === 'rise' || step === undefined) return;
    const answer = await live.order({ order: 'go on', by: 'A. Invented', from: step.number });
    if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.issue));
  }
}

interface Ride {
  readonly seconds: readonly number[];
  /** By short name, at those seconds; and the size of its noise: as the set-up of the day has it (station/day/pace.ts). */
  readonly columns: Readonly<Record<string, { readonly values: readonly number[]; readonly noise: number }>>;
}

/** From nothing to the stretch pressure of one steel of the range in SECONDS, as the shell of the quick tank has it. */
function rideOf(plan: Plan, { quick, draws }: Stretchable, names: Readonly<Record<string, string>>): Ride {
  const draw = draws[11];
  const path = quickPath(quick, draw);
  const rate = 0.03 / SECONDS;
  const bars = Array.from(path.growth, (growth, j) =>
    path.plastic[j] > 0 ? 10 * pressureAt(path, draw, growth, rate) : 10 * path.pressure[j],
  );
  const end = bars.findIndex((bar) => bar >= plan.target.pressure_bar);
  const last = end < 0 ? bars.length - 1 : end;
  const points = Array.from({ length: last + 1 }, (_, j) => j);
  const share = (j: number): number =>
    0.4 * (bars[j] / bars[last]) + 0.6 * (path.growth[j] / path.growth[last]);
  const expected = plan.steps.flatMap(({ expected: all }) => all?.girths ?? []);
  const column = (name: string) => {
    const place = plan.places.find((one) => one.name === name);
    const girth = quick.tank.girths.findIndex((one) => one.name === name);
    const length = expected.find((one) => one.name === name)?.girth_mm.value ?? 1900;
    switch (place?.reads) {
      case 'pressure':
        return { values: [0, ...points.map((j) => bars[j])], noise: 0.014 };
      case 'girth':
        return { values: [length, ...points.map((j) => length * (1 + path.girths[girth][j]))], noise: 0.035 };
      case 'litres':
        return {
          values: [0, ...points.map((j) => valueAt(path.growth, path.volume, path.growth[j]) / 1e6)],
          noise: 0.0007,
        };
      default:
        return { values: [16, ...points.map(() => 16)], noise: 0.02 };
    }
  };
  return {
    seconds: [0, ...points.map((j) => SECONDS * share(j))],
    columns: Object.fromEntries(Object.entries(names).map(([short, name]) => [short, column(name)])),
  };
}

const child = (task: 'read' | 'send', port: number, record: string, how: string) =>
  fork(process.argv[1], [CHILD, task, String(port), record, how]);

/** 100 lines a second of what the node reads, and strain gauges to make up 12 channels. */
async function send(port: string, record: string, { seconds, columns }: Ride): Promise<void> {
  let n = 0;
  const noise = (i: number): number => Math.sin(12.9898 * n + 78.233 * i) + Math.sin(39.425 * n + 11.135 * i);
  const at = (values: readonly number[], now: number): number => {
    const k = seconds.findIndex((one) => one > now);
    if (k < 1) return values[values.length - 1];
    const f = (now - seconds[k - 1]) / (seconds[k] - seconds[k - 1]);
    return values[k - 1] + f * (values[k] - values[k - 1]);
  };
  const line = (): string => {
    const now = n++ / RATE;
    const figures = Object.entries(columns).map(([name, { values, noise: size }], i) => [
      name,
      at(values, now) + size * noise(i),
    ]);
    const strains = Array.from({ length: 7 }, (_, i) => [`s${i + 1}`, 40 + 3 * noise(20 + i)]);
    return `${JSON.stringify(Object.fromEntries([...figures, ...strains].slice(0, 12)))}\n`;
  };
  async function* lines(): AsyncGenerator<Uint8Array, never> {
    const began = performance.now();
    for (;;) {
      await pause(10);
      const due = Math.floor(((performance.now() - began) / 1000) * RATE);
      let text = '';
      for (let left = due - n; left > 0; left--) text += line();
      yield Buffer.from(text);
    }
  }
  await sendLines(port, record, lines());
}

const [, , word, task, port, record, how] = process.argv;
if (word !== CHILD) {
  await soak();
  process.exit(0);
} else if (task === 'send') await send(port, record, JSON.parse(how));
else await listen(port, record, Number(how));
