import type { Link } from '@hoopwright/wire/record';
import { beforeEach, describe, expect, it } from 'vitest';
import { Trouble } from '../driver/base.ts';
import { openMemoryStore } from './memory/open.ts';
import { recordLines, verifyRecord } from './recordFile.ts';
import { COMMIT_MS, RETRY_MS, type Recorder, type RecorderState, openRecorder } from './recorder.ts';
import type { Records, Store } from './store.ts';

let store: Store;
let record: string;
let clock: { mono_ms: number; wall_ms: number };
let timers: { ms: number; work: () => void }[];
let told: RecorderState[];
let commits: number;
let failing: Error | undefined;

beforeEach(() => {
  let id = 0;
  store = openMemoryStore({ clock: () => 7, dice: (bytes) => new Uint8Array(bytes).fill(++id) });
  record = store.records.begin({ kind: 'test', title: 'Dunlin, invented' }).about.record;
  clock = { mono_ms: 100.5, wall_ms: 1_790_000_000_000 };
  [timers, told, commits, failing] = [[], [], 0, undefined];
});

const watched = (records: Records): Records => ({
  ...records,
  append: (to, drafts) => {
    if (drafts.length > 0) commits += 1;
    if (failing) throw failing;
    return records.append(to, drafts);
  },
});

const open = (kind: 'test' | 'rehearsal' = 'test'): Recorder =>
  openRecorder({
    records: watched(store.records),
    to: { record, kind },
    now: () => clock,
    later: (ms, work) => {
      const timer = { ms, work };
      timers.push(timer);
      return () => void (timers = timers.filter((one) => one !== timer));
    },
    told: (state) => told.push(state),
  });

const pass = (ms: number): void => {
  clock = { mono_ms: clock.mono_ms + ms, wall_ms: clock.wall_ms + ms };
};
const ring = (): void => timers.shift()?.work();
const entries = () => [...store.records.entries(record)].map(({ entry }) => entry);
const kinds = () => entries().map(({ kind, run }) => `${kind} ${run}`);

describe('a recorder', () => {
  it('puts what comes within one interval into one commit, and acknowledges none before it', async () => {
    const recorder = open();
    const acknowledged: Link[] = [];
    for (let i = 0; i < 30; i += 1) {
      void recorder.write('reading', { values: { P1: i / 3 } }).then((link) => acknowledged.push(link));
      pass(0.5);
    }
    await Promise.resolve();
    expect([commits, acknowledged.length, recorder.state().waiting]).toEqual([0, 0, 30]);
    expect(timers.map(({ ms }) => ms)).toEqual([COMMIT_MS]);
    ring();
    await Promise.resolve();
    expect([commits, acknowledged.length, recorder.state().waiting]).toEqual([1, 30, 0]);
    expect(acknowledged[29]).toEqual([...store.records.entries(record)][29]);
  });

  it('keeps entries while the disk is full, says so once, and writes them in order when it clears', async () => {
    const recorder = open();
    const first = recorder.write('reading', { values: { P1: 1.5 } });
    failing = new Trouble('full', undefined);
    ring();
    const second = recorder.write('remark', { text: 'still pumping' });
    expect(timers.map(({ ms }) => ms)).toEqual([RETRY_MS]);
    ring();
    expect(told.map(({ trouble, waiting }) => [trouble?.kind, waiting])).toEqual([['full', 1]]);
    failing = undefined;
    ring();
    expect((await first).entry.seq).toBe(1);
    expect((await second).entry).toMatchObject({ seq: 2, kind: 'remark' });
    expect(told.at(-1)).toEqual({ waiting: 0 });
  });

  it('rejects what waits when the mistake is in the program', async () => {
    const recorder = open();
    const write = recorder.write('reading', { values: {} });
    failing = new Error('our mistake');
    expect(recorder.flush()).toBe(false);
    await expect(write).rejects.toThrow('our mistake');
    expect(recorder.state().waiting).toBe(0);
  });

  it('refuses a reading that is no number at once, and the others are written', () => {
    const recorder = open();
    void recorder.write('reading', { values: { P1: 2.5 } });
    expect(() => recorder.write('reading', { values: { P1: Number.NaN } })).toThrow(/NaN/);
    recorder.flush();
    expect(kinds()).toEqual(['reading 1']);
  });

  it('writes a gap where the laptop slept', () => {
    const recorder = open();
    void recorder.write('reading', { values: { P1: 2.5 } });
    clock = { ...clock, wall_ms: clock.wall_ms + 60_000 };
    void recorder.write('reading', { values: { P1: 2.25 } });
    recorder.flush();
    expect(kinds()).toEqual(['reading 1', 'gap 1', 'reading 1']);
    expect(entries()[1].body).toEqual({ cause: 'parted', parted_ms: 60_000 });
  });

  it('begins a new run after a restart, with a gap, and the chain goes on', () => {
    const before = open();
    void before.write('start', {});
    before.close();
    clock = { mono_ms: 3.5, wall_ms: clock.wall_ms + 90_000 };
    const after = open();
    void after.write('reading', { values: { P1: 2.5 } });
    after.close();
    expect(kinds()).toEqual(['start 1', 'gap 2', 'reading 2']);
    expect(verifyRecord(recordLines(store.records, record))).toMatchObject({ kind: 'whole', entries: 3 });
  });

  it('takes the time at which a reading was taken, if it is told', () => {
    const recorder = open();
    void recorder.write('reading', { values: { G1: 3.25 } }, { mono_ms: 88, wall_ms: clock.wall_ms - 12.5 });
    recorder.flush();
    expect(entries()[0]).toMatchObject({ mono_ms: 88, wall_ms: clock.wall_ms - 12.5 });
  });

  it('commits what waits when it is closed, and takes nothing more', () => {
    const recorder = open();
    void recorder.write('end', { how: 'done' });
    expect(recorder.close()).toBe(true);
    expect([kinds(), timers]).toEqual([['end 1'], []]);
    expect(() => recorder.write('remark', {})).toThrow(/is closed; a remark came/);
  });

  it('does not open a record of another kind', () => {
    expect(() => open('rehearsal')).toThrow(/is a test; a rehearsal must not/);
  });
});
