/** The days of a laptop: those that run, and those that stand in the store. */
import {
  type Begin,
  type DayLine,
  type DayState,
  type Fold,
  fold,
  type Snapshot,
  type Trace,
} from '@hoopwright/wire/day';
import type { Issue } from '@hoopwright/wire/issue';
import { type FrozenPlan } from '@hoopwright/wire/plan';
import { channelsFrom } from '@hoopwright/wire/reading';
import type { Link } from '@hoopwright/wire/record';
import type { HttpSource } from '../instrument/http.ts';
import type { Later, Source } from '../instrument/source.ts';
import { PROGRAM } from '../plan/version.ts';
import type { FaultName } from '../rig/fault.ts';
import type { RecordLine, Store } from '../store/store.ts';
import { begunWith, channelsFor, openingOf } from './begin.ts';
import { type DayClock, fastClock } from './live/clock.ts';
import { emptyFold } from './live/kept.ts';
import { LiveDay } from './live/live.ts';
import type { Adviser } from './live/parts.ts';
import { openMirror } from './live/mirror.ts';
import { Past } from './past.ts';
import type { RigDay } from './simulated/rigDay.ts';
import { rigFor, type RigParts } from './simulated/rigFor.ts';
import { sourceFrom } from './sources.ts';
import type { Laptop } from './surroundings.ts';

export interface DaysParts {
  readonly store: Store;
  readonly laptop: Laptop;
  readonly later: Later;
  /** Real ms that only go forward, and the wall clock. */
  readonly real: () => number;
  readonly wall: () => number;
  /** Made for each day; absent: nothing is foreseen or advised. */
  readonly adviser?: (frozen: FrozenPlan, project: string, clock: DayClock) => Adviser;
  readonly log: (error: unknown) => void;
  /** Of the shell behind a simulated tank; tests take a coarse one. */
  readonly mesh?: { readonly elements: number; readonly layers: number };
}

export type Begun =
  | { readonly kind: 'done'; readonly day: LiveDay }
  | { readonly kind: 'refused'; readonly issue: Issue };

/** A running day, with what only a rehearsal or a wire has. */
export interface Running {
  readonly day: LiveDay;
  readonly rig?: RigDay;
  readonly http: ReadonlyMap<string, HttpSource>;
}

/** s of the day from a restart of the program until it listens again. */
const RESTART_TAKES = 90;

/** Guards the days that run. */
export class Days {
  readonly parts: DaysParts;
  readonly past: Past;
  private readonly running = new Map<string, Running>();

  constructor(parts: DaysParts) {
    this.parts = parts;
    this.past = new Past(parts.store.records);
  }

  list(): DayLine[] {
    return this.parts.store.records.list().map((line) => this.lineOf(line));
  }

  line(record: string): DayLine | undefined {
    const line = this.parts.store.records.find(record);
    return line === undefined ? undefined : this.lineOf(line);
  }

  private lineOf({ about, entries }: RecordLine): DayLine {
    const day = this.running.get(about.record)?.day;
    const { record, kind, title, began_ms, project } = about;
    return {
      record,
      kind,
      title,
      began_ms,
      entries,
      phase: day?.state.state.phase ?? this.past.phase(record),
      live: day?.isLive ?? false,
      ...(project === undefined ? {} : { project }),
    };
  }

  find(record: string): Running | undefined {
    return this.running.get(record);
  }

  /** The state now; of a record that does not run, as it was left. */
  async snapshot(record: string): Promise<Omit<Snapshot, 'role'> | undefined> {
    const running = this.running.get(record);
    if (running === undefined) return this.past.at(record, Infinity);
    const { day, rig } = running;
    const now_ms = day.now().wall_ms;
    const { state } = day.state;
    return {
      state,
      trace: day.trace.read(),
      now_ms,
      speed: day.parts.clock.speed,
      live: day.isLive,
      ...(rig?.parts.readings === 'by hand' ? { shows: rig.shows(state, now_ms) } : {}),
    };
  }

  async begin(begin: Begin): Promise<Begun> {
    const { store } = this.parts;
    const project = store.projects.find(begin.project);
    const frozen = store.plans.find(begin.project, begin.plan);
    if (project === undefined || frozen === undefined)
      return refused('plan', 'a frozen plan of the project', begin.plan, 'freeze the plan first');
    const test = [...this.running.values()].some(({ day }) => day.isLive && day.parts.about.kind === 'test');
    // A rehearsal works the laptop hard: while a tank is under pressure, the laptop is the test's.
    if (test) return refused('kind', 'no test under way', 'one that runs', 'name the end of that test first');
    if ((begin.kind === 'rehearsal') !== (begin.rehearsal !== undefined))
      return refused(
        'rehearsal',
        `what a ${begin.kind} needs`,
        'the other',
        'a rehearsal has seed and speed',
      );
    const channels = channelsFor(frozen, begin);
    const follows =
      begin.kind === 'test' || begin.rehearsal?.tank === 'as left'
        ? await this.past.lastOn(begin.project, begin.kind)
        : undefined;
    const rig = rigFor(this.rigParts(begin), { begin, frozen, follows });
    if ('path' in rig) return { kind: 'refused', issue: rig };
    const { plan, frozen: seal } = frozen;
    const title = `${plan.tank.name}, plan ${seal.name}, revision ${seal.revision}`;
    const { about } = store.records.begin({ kind: begin.kind, title, project: begin.project });
    const { fold: before, digest } = emptyFold(about);
    const running = this.open(about.record, { begin, before, digest, frozen, ...rig });
    running.day.keepAwake();
    await openingOf(running.day, { begin, frozen, channels, ...(follows === undefined ? {} : { follows }) });
    running.day.start();
    return { kind: 'done', day: running.day };
  }

  private rigParts({ project, plan }: Begin): RigParts {
    return {
      attachments: this.parts.store.attachments,
      mesh: this.parts.mesh,
      file: () => this.tankFile(project, plan) ?? '',
    };
  }

  /** Text of the tank file that a frozen plan was made from. */
  tankFile(project: string, plan: string): string | undefined {
    const { plans, projects } = this.parts.store;
    const version = plans.list(project).find(({ digest }) => digest === plan)?.version;
    return version === undefined ? undefined : projects.version(project, version)?.file;
  }

  private open(record: string, opening: DayOpening): Running {
    const { store, later, laptop, log } = this.parts;
    const { begin, before, digest, frozen, rig } = opening;
    const { about } = before.state;
    const clock = this.clockFor(begin, before.state);
    const http = new Map<string, HttpSource>();
    let day: LiveDay | undefined;
    const stateNow = (): DayState => (day?.state ?? before).state;
    const sources: Source[] = rig === undefined ? [] : [rig.source(stateNow, later)];
    for (const setUp of begin.sources ?? []) sources.push(sourceFrom(setUp, { later, http }));
    const shows =
      rig?.parts.readings === 'by hand' ? { shows: () => rig.shows(stateNow(), clock.now().wall_ms) } : {};
    day = new LiveDay(
      {
        records: store.records,
        about,
        clock,
        later,
        laptop,
        sources,
        log,
        ...shows,
        ...(begin.mirror === undefined ? {} : { mirror: openMirror(store.records, record, begin.mirror) }),
        ...(this.parts.adviser === undefined
          ? {}
          : { adviser: this.parts.adviser(frozen, begin.project, clock) }),
      },
      before,
      digest,
    );
    for (const setUp of begin.sources ?? []) day.sourceChannels.set(setUp.name, channelsFrom(setUp));
    const running: Running = { day, http, ...(rig === undefined ? {} : { rig }) };
    this.running.set(record, running);
    if (rig !== undefined) this.planRestart(running, rig);
    return running;
  }

  private clockFor({ rehearsal }: Begin, { wall_ms }: DayState): DayClock {
    const { real, wall } = this.parts;
    if (rehearsal !== undefined) return fastClock(rehearsal.speed, Math.max(wall(), wall_ms), real);
    return { now: () => ({ mono_ms: real(), wall_ms: wall() }), speed: 1 };
  }

  private planRestart({ day }: Running, rig: RigDay): void {
    const at = rig.parts.faults.find(({ name }) => name === 'server-restart')?.at;
    if (at === undefined || rig.seconds >= at) return;
    const look = (): void => {
      if (!day.isLive) return;
      if (rig.seconds < at) return void this.parts.later(100, look);
      day.restart((1000 * RESTART_TAKES) / day.parts.clock.speed, PROGRAM);
    };
    look();
  }

  /** A fault of a rehearsal, now. `false`: there is none of that name, or it is there from the start only. */
  befall(record: string, name: FaultName): boolean {
    const running = this.running.get(record);
    if (running?.rig === undefined) return false;
    if (name !== 'server-restart') return running.rig.befall(name);
    running.day.restart((1000 * RESTART_TAKES) / running.day.parts.clock.speed, PROGRAM);
    return true;
  }

  /** After a start of the program: the newest test and the newest rehearsal that have no end go on where they stand. */
  async resume(): Promise<void> {
    for (const kind of ['test', 'rehearsal'] as const) {
      const line = this.parts.store.records
        .list()
        .find(({ about, origin }) => about.kind === kind && origin === 'here');
      if (line !== undefined) await this.resumeOne(line);
    }
  }

  private async resumeOne(line: RecordLine): Promise<void> {
    const { records } = this.parts.store;
    const { record } = line.about;
    const { fold: start, digest: none } = emptyFold(line.about);
    const found = begunWith(records.entries(record), line.about);
    if (found === undefined) return;
    const rig = rigFor(this.rigParts(found.begin), found);
    if ('path' in rig) return;
    let digest = none;
    let before: Fold = start;
    const all = function* (): Generator<Link> {
      for (const link of records.entries(record)) {
        digest = link.digest;
        yield link;
      }
    };
    if ('rig' in rig && rig.rig !== undefined) before = rig.rig.follow(start, all());
    else for (const link of all()) before = fold(before, link);
    if (before.state.phase === 'ended') return;
    const running = this.open(record, { ...found, before, digest, ...rig });
    for (const { entry } of records.entries(record)) running.day.trace.takeEntry(entry, line.about.began_ms);
    await running.day.write('start', { program: PROGRAM, again: true });
    running.day.start();
  }

  /** The trace of a day that runs, or as it was left. */
  async trace(record: string): Promise<Trace | undefined> {
    return (await this.snapshot(record))?.trace;
  }

  async close(): Promise<void> {
    await Promise.all([...this.running.values()].map(({ day }) => day.close()));
    this.running.clear();
  }
}

interface DayOpening {
  readonly begin: Begin;
  readonly before: Fold;
  readonly digest: string;
  readonly frozen: FrozenPlan;
  readonly rig?: RigDay;
}

const refused = (path: string, expected: string, received: string, suggestion?: string): Begun => ({
  kind: 'refused',
  issue: { path, expected, received, ...(suggestion === undefined ? {} : { suggestion }) },
});
