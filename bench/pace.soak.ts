/**
 * A whole test by wires: 12 channels at 100 Hz for 30 minutes of record, sent by HTTP as a node in the workshop would, with
 * six screens that listen. The day's clock runs FAST times faster, so that half an hour takes minutes; every reading is
 * taken, judged, chained and committed as on the day. Memory must stay flat within 50 MB. Then at the true pace the event
 * loop must not be held up: p99 under 50 ms. Last, the ceiling: how many readings a second go in when nothing paces them;
 * it is told, and shapes nothing.
 * FAST=n (usual 10), MINUTES=n (usual 30).
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay, performance } from 'node:perf_hooks';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { openPaceDay, paceLine } from '@hoopwright/station/day';
import { serve } from '@hoopwright/station/server';
import { openStore } from '@hoopwright/station/store';
import { listen, pause, sendLines } from './node.ts';

const CHILD = 'child';
const RATE = 100;
const FAST = Number(process.env['FAST'] ?? 10);
const MINUTES = Number(process.env['MINUTES'] ?? 30);
const SCREENS = 6;
const FLAT_MB = 50;
const P99_MS = 50;
const TRUE_PACE_S = 60;

const say = (text: string): void => void process.stdout.write(`${text}\n`);

const soak = async (): Promise<void> => {
  const dir = mkdtempSync(join(tmpdir(), 'hoopwright-pace-'));
  try {
    const failed = [
      ...(await atPace(join(dir, 'fast'), {
        fast: FAST,
        seconds: (60 * MINUTES) / FAST,
        name: 'half an hour',
      })),
      ...(await atPace(join(dir, 'true'), { fast: 1, seconds: TRUE_PACE_S, name: 'true pace' })),
    ];
    await ceiling(join(dir, 'ceiling'));
    if (failed.length > 0) throw new Error(failed.join('; '));
  } finally {
    rmSync(dir, { recursive: true });
  }
};

interface Pace {
  readonly fast: number;
  /** s of real time. */
  readonly seconds: number;
  readonly name: string;
}

/** What was not reached. */
async function atPace(dir: string, { fast, seconds, name }: Pace): Promise<string[]> {
  const { day, record, close, port } = await opened(dir, fast);
  const bystander = child('idle', port, record, 0);
  const readers = child('read', port, record, SCREENS);
  const sender = child('send', port, record, RATE * fast);
  await pause(5000);
  const [before, memories] = [day.state.state.seq, [memoryNow()]];
  const loop = monitorEventLoopDelay({ resolution: 5 });
  loop.enable();
  const until = performance.now() + 1000 * seconds;
  while (performance.now() < until) {
    await pause(Math.min((1000 * seconds) / 6, 30_000));
    loop.disable();
    memories.push(memoryNow());
    loop.enable();
  }
  loop.disable();
  const taken = day.state.state.seq - before;
  const told = once(bystander, 'message');
  bystander.send('end');
  const [still] = await told;
  for (const one of [readers, sender]) one.kill();
  await close();
  const p99 = loop.percentile(99) / 1e6;
  const grown = memories[memories.length - 1] - memories[1];
  say(
    `${name}: ${taken} entries of 12 channels in ${seconds.toFixed(0)} s with ${SCREENS} screens; heap after clearing ${memories.map((mb) => mb.toFixed(0)).join(', ')} MB; event loop p50 ${(loop.percentile(50) / 1e6).toFixed(1)} ms, p99 ${p99.toFixed(1)} ms, longest ${(loop.max / 1e6).toFixed(0)} ms; of a process that does nothing on this machine meanwhile p99 ${Number(still).toFixed(1)} ms`,
  );
  const wanted = RATE * fast * seconds;
  return [
    ...(taken < 0.9 * wanted ? [`${name}: ${taken} entries came in, ${wanted} were sent`] : []),
    ...(grown > FLAT_MB ? [`${name}: the heap grew by ${grown.toFixed(0)} MB`] : []),
    ...(fast === 1 && p99 >= P99_MS ? [`${name}: event loop p99 ${p99.toFixed(1)} ms`] : []),
  ];
}

/** As many as go in, nothing pacing them, for some seconds. */
async function ceiling(dir: string): Promise<void> {
  const { day, record, close, port } = await opened(dir, 1);
  const sender = child('send', port, record, Infinity);
  await pause(3000);
  const [from, at] = [day.state.state.seq, performance.now()];
  await pause(10_000);
  const perSecond = (1000 * (day.state.state.seq - from)) / (performance.now() - at);
  sender.kill();
  await close();
  say(
    `ceiling: ${(12 * perSecond).toFixed(0)} readings a second (${perSecond.toFixed(0)} entries of 12 channels)`,
  );
}

async function opened(dir: string, fast: number) {
  const store = openStore(dir);
  const day = await openPaceDay(store, { fast });
  const serving = await serve({ store, days: day.days, port: 0, log: (error) => console.error(error) });
  const close = async (): Promise<void> => {
    await day.days.close();
    await serving.close();
    store.close();
  };
  return { day: day.live, record: day.record, port: serving.port, close };
}

setFlagsFromString('--expose-gc');
const clear: unknown = runInNewContext('gc');

/** MB on the heap and in buffers once what nobody holds is cleared away. */
function memoryNow(): number {
  if (typeof clear === 'function') clear();
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 1e6;
}

const child = (task: 'read' | 'send' | 'idle', port: number, record: string, how: number) =>
  fork(process.argv[1], [CHILD, task, String(port), record, String(how)]);

/** What the machine itself holds a process up by, for whoever reads the figures. */
function idle(): void {
  const loop = monitorEventLoopDelay({ resolution: 5 });
  loop.enable();
  process.once('message', () => process.send?.(loop.percentile(99) / 1e6, () => process.exit(0)));
}

/** Lines of 12 channels, so many a second. */
async function send(port: string, record: string, perSecond: number): Promise<void> {
  const EVERY_MS = 10;
  async function* lines(): AsyncGenerator<Uint8Array, never> {
    let count = 0;
    const began = performance.now();
    for (;;) {
      await pause(EVERY_MS);
      const due = Number.isFinite(perSecond)
        ? Math.floor(((performance.now() - began) / 1000) * perSecond)
        : count + 500;
      let text = '';
      while (count < due) text += paceLine(++count);
      yield Buffer.from(text);
    }
  }
  await sendLines(port, record, lines());
}

const [, , word, task, port, record, how] = process.argv;
if (word !== CHILD) await soak();
else if (task === 'idle') idle();
else if (task === 'send') await send(port, record, Number(how));
else await listen(port, record, Number(how));
