/** A stored record at any moment: folded once with marks along the way, then from the nearest mark. */
import { type DayPhase, type Fold, fold, type Follows, leftBy, type Snapshot } from '@hoopwright/wire/day';
import type { Records } from '../store/store.ts';
import { emptyFold } from './live/kept.ts';
import { TraceStore } from './live/trace.ts';

interface Mark {
  readonly seq: number;
  readonly wall_ms: number;
  readonly fold: Fold;
}

interface Folded {
  readonly marks: readonly Mark[];
  readonly trace: TraceStore;
  readonly entries: number;
}

/** Entries between two marks, and between two breaths of the event loop. */
const EVERY = 2000;
const BREATH = 200;
/** Entries among which an end stands: nothing but what was in flight comes after it. */
const LAST = 50;
/** Records that are kept folded. */
const MOST = 4;

/** Guards what was folded before. */
export class Past {
  private readonly records: Records;
  private readonly folded = new Map<string, Promise<Folded | undefined>>();
  private readonly phases = new Map<string, DayPhase>();

  constructor(records: Records) {
    this.records = records;
  }

  /** Phase in which the record was left, by its last entries alone. */
  phase(record: string): DayPhase {
    const known = this.phases.get(record);
    if (known !== undefined) return known;
    const line = this.records.find(record);
    const last = [...this.records.entries(record, Math.max(0, (line?.entries ?? 0) - LAST))];
    if (!last.some(({ entry }) => entry.kind === 'end')) return 'broken off';
    this.phases.set(record, 'ended');
    return 'ended';
  }

  /** The state as it stood at a time of the wall clock, or after entry `seq`. */
  async at(record: string, ms: number): Promise<Omit<Snapshot, 'role'> | undefined> {
    const found = await this.foldedAt(record, ms);
    if (found === undefined) return undefined;
    const { now, trace } = found;
    const began = now.state.about.began_ms;
    const now_ms = Number.isFinite(ms) ? Math.max(ms, began) : now.state.wall_ms;
    return { state: now.state, trace: trace.read(0, (now_ms - began) / 1000), now_ms, speed: 1, live: false };
  }

  private async foldedAt(record: string, ms: number): Promise<{ now: Fold; trace: TraceStore } | undefined> {
    const folded = await this.whole(record);
    if (folded === undefined) return undefined;
    const mark = folded.marks.findLast(({ wall_ms, seq }) => wall_ms <= ms || seq === 0);
    let now = mark?.fold ?? folded.marks[0].fold;
    for (const link of this.records.entries(record, mark?.seq ?? 0)) {
      if (link.entry.wall_ms > ms) break;
      now = fold(now, link);
    }
    return { now, trace: folded.trace };
  }

  /** What the last day on the tank left: a test counts, a rehearsal only where a rehearsal asks. */
  async lastOn(project: string, asks: 'test' | 'rehearsal'): Promise<Follows | undefined> {
    const before = this.records
      .list()
      .filter(({ about, entries }) => about.project === project && entries > 0)
      .filter(({ about }) => about.kind === 'test' || about.kind === asks);
    for (const { about } of before) {
      const found = await this.foldedAt(about.record, Infinity);
      const left = found === undefined ? undefined : leftBy(found.now);
      if (left !== undefined) return left;
    }
    return undefined;
  }

  private async whole(record: string): Promise<Folded | undefined> {
    const entries = this.records.find(record)?.entries;
    if (entries === undefined) return undefined;
    const known = await this.folded.get(record);
    if (known?.entries === entries) return known;
    const made = this.foldWhole(record, entries);
    this.folded.delete(record);
    this.folded.set(record, made);
    const [oldest] = this.folded.keys();
    if (this.folded.size > MOST) this.folded.delete(oldest);
    return made;
  }

  private async foldWhole(record: string, entries: number): Promise<Folded | undefined> {
    const line = this.records.find(record);
    if (line === undefined) return undefined;
    let { fold: now } = emptyFold(line.about);
    const trace = new TraceStore();
    const marks: Mark[] = [{ seq: 0, wall_ms: now.state.wall_ms, fold: now }];
    for (const link of this.records.entries(record)) {
      const { entry } = link;
      if (entry.seq > entries) break;
      now = fold(now, link);
      trace.takeEntry(entry, line.about.began_ms);
      if (entry.seq % EVERY === 0) marks.push({ seq: entry.seq, wall_ms: entry.wall_ms, fold: now });
      if (entry.seq % BREATH === 0) await new Promise(setImmediate);
    }
    return { marks, trace, entries };
  }
}
