/**
 * A day as it runs: it takes readings and orders, writes them into the record, folds the record, watches the plan's
 * limits, and tells whoever listens. The state is the fold of what is durable; only while the disk is full or the base is
 * locked what waits in memory is folded on top, so that the screens go on.
 */
import { deedOf, type Fold, type Order, type TroubleBody, type Written } from '@hoopwright/wire/day';
import type { WatchedLimit } from '@hoopwright/wire/plan';
import { calibrated, type Raw } from '@hoopwright/wire/reading';
import type { Body, Draft, EntryKind, Link } from '@hoopwright/wire/record';
import type { Running, SourceState } from '../../instrument/source.ts';
import { type Clocks, openRecorder, type Recorder, type RecorderState } from '../../store/recorder.ts';
import { Kept } from './kept.ts';
import { NEARLY_FULL_MB } from '../surroundings.ts';
import { ENDING, LATE_MS, type LiveParts, type Ordered, ROUND_MS, STARTED_ANEW } from './parts.ts';
import { Ticker } from './ticker.ts';
import { TraceStore } from './trace.ts';
import { UNWRITTEN, unwritten } from './unwritten.ts';
import { crossed, notBelieved } from './watcher.ts';

/** Guards the running day. */
export class LiveDay {
  readonly parts: LiveParts;
  readonly trace = new TraceStore();
  readonly ticker: Ticker;
  private recorder: Recorder;
  private readonly kept: Kept;
  private readonly latched = new Set<WatchedLimit>();
  private readonly asides = new Set<string>();
  private readonly told = new Set<string>();
  private running: { readonly name: string; readonly source: Running }[] = [];
  private awake: (() => void) | undefined;
  private callOff: (() => void) | undefined;
  private closed = false;
  private paused = false;
  private ending = false;

  /** Begins a run of the record; `before` is the fold of what stands in it. */
  constructor(parts: LiveParts, before: Fold, digest: string) {
    this.parts = parts;
    this.kept = new Kept(before, digest);
    this.ticker = new Ticker({
      later: parts.later,
      now: () => parts.clock.now().wall_ms,
      state: () => this.state.state,
      ...(parts.shows === undefined ? {} : { shows: parts.shows }),
    });
    this.recorder = this.open();
  }

  get state(): Fold {
    return this.kept.now;
  }

  get isLive(): boolean {
    return !this.closed && this.kept.durable.state.phase !== 'ended';
  }

  /** Takes entries at this moment. */
  get takes(): boolean {
    return this.isLive && !this.paused;
  }

  now(): Clocks {
    return this.parts.clock.now();
  }

  private open(): Recorder {
    const { records, about, clock, later } = this.parts;
    return openRecorder({
      records,
      to: { record: about.record, kind: about.kind },
      now: clock.now,
      later,
      told: (state) => this.onRecorder(state),
      queued: (draft) => this.onQueued(draft),
      wrote: (link) => this.onWrote(link),
    });
  }

  /** Starts sources and rounds. */
  start(): void {
    this.keepAwake();
    this.startSources();
    this.ticker.start();
    this.round();
  }

  /** Before the first entry, which says whether it could be done. */
  keepAwake(): void {
    this.awake ??= this.parts.laptop.stayAwake();
  }

  get keptAwake(): boolean {
    return this.awake !== undefined;
  }

  private startSources(): void {
    this.running = this.parts.sources.map((source) => ({
      name: source.name,
      source: source.start({
        reading: (raw) => this.onReading(source.name, raw),
        state: (state) => this.onSource(source.name, state),
        bad: () => {},
      }),
    }));
  }

  /** An entry of the program itself. */
  write(kind: EntryKind, body: Body, at?: Clocks): Promise<Link> {
    return this.recorder.write(kind, body, at);
  }

  /** What nobody waits for; a recorder that was closed meanwhile is no mistake. */
  private put({ kind, body }: Written): void {
    if (this.closed || this.paused || this.ending) return;
    this.write(kind, body).catch(this.parts.log);
  }

  private onReading(source: string, raw: Raw): void {
    if (this.paused || this.closed || this.ending) return;
    const { state } = this.state;
    const values: Record<string, number> = {};
    for (const name in raw) {
      const channel = state.channels.find((one) => one.channel.name === name)?.channel;
      values[name] = channel === undefined ? raw[name] : calibrated(channel, raw[name]);
    }
    const how = this.parts.about.kind === 'rehearsal' ? 'rig' : 'by wire';
    this.put({ kind: 'reading', body: { values, step: state.step?.number ?? '', how, source } });
  }

  private onSource(source: string, state: SourceState): void {
    const channels = this.channelsOf(source);
    const known = this.told.has(`source ${source}`);
    if (state.kind === 'open') {
      if (!known) return;
      this.told.delete(`source ${source}`);
      return this.trouble(
        { what: 'source lost', says: `${source} is there again.`, over: true, source },
        channels,
      );
    }
    this.told.add(`source ${source}`);
    const what = state.kind === 'lost' ? 'source lost' : 'source unproved';
    const says =
      state.kind === 'lost'
        ? `${source} is lost: ${state.why}.`
        : `${source} came back, but ${state.why}; it waits for a person.`;
    this.trouble({ what, says, source }, channels);
  }

  private channelsOf(source: string): string[] {
    return this.state.state.channels.flatMap(({ channel }) =>
      this.sourceChannels.get(source)?.includes(channel.name) === true ? [channel.name] : [],
    );
  }

  /** Channels that each source gives, as the set-up has them. */
  readonly sourceChannels = new Map<string, readonly string[]>();

  private trouble(body: TroubleBody, channels: readonly string[] = []): void {
    this.put({
      kind: 'trouble',
      body: { ...body, ...(channels.length === 0 ? {} : { channels: [...channels] }) },
    });
  }

  private onRecorder({ trouble }: RecorderState): void {
    if (trouble === undefined) {
      this.kept.cleared();
      for (const what of ['disk full', 'base locked'] as const) {
        if (!this.told.delete(what)) continue;
        this.trouble({ what, says: 'The record is written again; nothing is missing.', over: true });
      }
      return;
    }
    const what = unwritten(trouble.kind);
    this.kept.goAhead();
    this.told.add(what);
    this.trouble({ what, says: UNWRITTEN[what] });
  }

  private onQueued(draft: Draft): void {
    this.kept.queued(draft);
    if (this.kept.isAhead) this.ticker.changed(draft, this.parts.about.began_ms);
  }

  private onWrote(link: Link): void {
    const { before, after } = this.kept.wrote(link);
    const { entry } = link;
    const { began_ms } = this.parts.about;
    this.parts.mirror?.wrote(link);
    if (!this.kept.isAhead) this.ticker.changed(entry, began_ms);
    this.trace.takeEntry(entry, began_ms);
    this.look(before, after);
    if (after.state.phase === 'ended' && before.state.phase !== 'ended') void this.close();
  }

  /** Judges the new state. Runs within the commit, so that nothing is judged twice or passed over. */
  private look(before: Fold, durable: Fold): void {
    if (durable.inside.bled === true && before.inside.bled !== true) this.latched.clear();
    if (durable.inside.rows !== before.inside.rows) {
      for (const entry of crossed(durable, this.latched)) {
        // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- a crossing has its limit
        this.latched.add(entry.body['limit'] as WatchedLimit);
        this.put(entry);
      }
    }
    if (durable.state.channels !== before.state.channels) this.setAside();
    this.parts.adviser?.heard(durable, (kind, body) => this.put({ kind, body }));
  }

  private setAside(): void {
    for (const entry of notBelieved(this.kept.durable, this.now().mono_ms / 1000)) {
      const { channel: name } = entry.body;
      if (typeof name !== 'string' || this.asides.has(name)) continue;
      this.asides.add(name);
      this.put(entry);
    }
    for (const name of this.asides) {
      const one = this.kept.durable.state.channels.find(({ channel }) => channel.name === name);
      if (one?.aside === undefined && !this.kept.waits(name)) this.asides.delete(name);
    }
  }

  /** Once a second: what does not tell by itself. */
  private round(): void {
    if (this.closed) return;
    this.callOff = this.parts.later(ROUND_MS, () => this.round());
    if (this.paused) return;
    this.setAside();
    const { laptop, mirror } = this.parts;
    const free = laptop.free_MB();
    const little = free !== undefined && free < NEARLY_FULL_MB;
    this.tellOnce('disk nearly full', little, `${free} MB are free on the disk; make room.`);
    this.tellOnce('on battery', laptop.power() === 'battery', 'The laptop runs on its battery; plug it in.');
    const why = mirror?.flush();
    this.tellOnce('mirror gone', why !== undefined, `The second folder cannot be written: ${why}.`);
  }

  private tellOnce(what: TroubleBody['what'], stands: boolean, says: string): void {
    if (stands === this.told.has(what)) return;
    if (stands) this.told.add(what);
    else this.told.delete(what);
    this.trouble(stands ? { what, says } : { what, says: 'It has cleared.', over: true });
  }

  /** What the order became. Who may give it is for the caller to see to. */
  async order(order: Order, more: Body = {}): Promise<Ordered> {
    if (this.paused) return { kind: 'refused', issue: STARTED_ANEW };
    const deed = deedOf(order, { now: this.state, now_ms: this.now().wall_ms });
    if (!deed.ok) return { kind: 'refused', issue: deed.issue };
    if (this.ending) return { kind: 'refused', issue: ENDING };
    if (order.order === 'accept source')
      this.running.find(({ name }) => name === order.source)?.source.accept();
    const entries = deed.entries.map((one, i) => (i > 0 ? one : { ...one, body: { ...one.body, ...more } }));
    this.ending ||= order.order === 'end';
    const links = entries.map(({ kind, body, at_ms }) => this.write(kind, body, this.clocksAt(at_ms)));
    const done = Promise.all(links).then(([link]): Ordered => ({ kind: 'done', seq: link.entry.seq }));
    const seq = this.state.state.seq + 1;
    const late = new Promise<Ordered>((resolve) => {
      this.parts.later(LATE_MS, () => resolve({ kind: 'waits', seq }));
    });
    return Promise.race([done, late]);
  }

  /** Commits what was taken so far; false: it cannot be, and waits in memory. */
  settled(): boolean {
    return this.closed || this.recorder.flush();
  }

  private clocksAt(wall_ms: number | undefined): Clocks {
    const now = this.now();
    return wall_ms === undefined ? now : { wall_ms, mono_ms: now.mono_ms + wall_ms - now.wall_ms };
  }

  /** As if the program had been started anew: another run of the record. A fault of rehearsals. */
  restart(pause_ms: number, program: string): void {
    this.recorder.close();
    this.paused = true;
    this.parts.later(pause_ms, () => {
      if (this.closed) return;
      this.recorder = this.open();
      this.paused = false;
      this.put({ kind: 'start', body: { program, again: true } });
    });
  }

  async close(): Promise<void> {
    if (this.closed) return;
    this.closed = true;
    this.callOff?.();
    await Promise.all(this.running.map(({ source }) => source.stop()));
    this.recorder.close();
    this.parts.mirror?.flush();
    this.parts.adviser?.close();
    this.ticker.stop();
    this.awake?.();
  }
}
