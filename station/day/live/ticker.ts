/** Tells the screens what changed: at most ten times a second, and once a second though nothing did. Made once for all screens. */
import type { DayState, Tick, Trace } from '@hoopwright/wire/day';
import type { Draft } from '@hoopwright/wire/record';
import type { Later } from '../../instrument/source.ts';

const TICK_MS = 100;
const BEAT_MS = 1000;

export interface TickerParts {
  readonly later: Later;
  /** The day's wall clock. */
  readonly now: () => number;
  readonly state: () => DayState;
  readonly shows?: () => Readonly<Record<string, number>>;
}

type Range = { low: number; high: number };

/** Guards what was told last and what has come since. */
export class Ticker {
  private readonly parts: TickerParts;
  private readonly listeners = new Set<(text: string | undefined) => void>();
  private told: DayState | undefined;
  private since = 0;
  private ranges = new Map<string, Range>();
  private seconds = 0;
  private callOff: (() => void) | undefined;
  private stopped = false;

  constructor(parts: TickerParts) {
    this.parts = parts;
  }

  start(): void {
    this.told = this.parts.state();
    this.callOff = this.parts.later(TICK_MS, () => this.tick());
  }

  stop(): void {
    if (this.stopped) return;
    this.callOff?.();
    this.send();
    this.stopped = true;
    for (const listener of this.listeners) listener(undefined);
    this.listeners.clear();
  }

  /** Called with each Tick as JSON, and with nothing at the end. The answer ends it. */
  listen(listener: (text: string | undefined) => void): () => void {
    if (this.stopped) listener(undefined);
    else this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** An entry has come. */
  changed({ kind, body, wall_ms }: Draft, began_ms: number): void {
    if (kind !== 'reading' || this.listeners.size === 0) return;
    const { values } = body;
    if (typeof values !== 'object' || values === null) return;
    this.seconds = Math.max(this.seconds, (wall_ms - began_ms) / 1000);
    for (const [name, value] of Object.entries(values)) {
      if (typeof value !== 'number') continue;
      const range = this.ranges.get(name);
      if (range === undefined) this.ranges.set(name, { low: value, high: value });
      else {
        range.low = Math.min(range.low, value);
        range.high = Math.max(range.high, value);
      }
    }
  }

  private tick(): void {
    if (this.stopped) return;
    this.callOff = this.parts.later(TICK_MS, () => this.tick());
    this.since += TICK_MS;
    if (this.parts.state() === this.told && this.since < BEAT_MS) return;
    this.send();
  }

  private send(): void {
    this.since = 0;
    const state = this.parts.state();
    const before = this.told ?? state;
    this.told = state;
    const more = this.more();
    if (this.listeners.size === 0) return;
    const text = JSON.stringify(tickOf({ now_ms: this.parts.now(), before, state, more, ...this.shown() }));
    for (const listener of this.listeners) listener(text);
  }

  private shown(): Pick<Tick, 'shows'> {
    return this.parts.shows === undefined ? {} : { shows: this.parts.shows() };
  }

  private more(): Trace {
    const { ranges, seconds } = this;
    if (ranges.size === 0) return { seconds: [], channels: [] };
    this.ranges = new Map();
    return {
      seconds: [seconds],
      channels: [...ranges].map(([name, { low, high }]) => ({ name, low: [low], high: [high] })),
    };
  }
}

interface Change {
  readonly now_ms: number;
  readonly before: DayState;
  readonly state: DayState;
  readonly more: Trace;
  readonly shows?: Readonly<Record<string, number>>;
}

function tickOf({ now_ms, before, state, more, shows }: Change): Tick {
  const keys = keysOf(state);
  const entries = keys.filter((key) => before[key] !== state[key]).map((key) => [key, state[key]] as const);
  const gone = keysOf(before).filter((key) => !(key in state));
  return {
    now_ms,
    seq: state.seq,
    changed: Object.fromEntries(entries),
    ...(gone.length === 0 ? {} : { gone }),
    more,
    ...(shows === undefined ? {} : { shows }),
  };
}

// oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the state has no other keys
const keysOf = (state: DayState) => Object.keys(state) as (keyof DayState)[];

/** The first tick of a screen: all of the state. */
export const wholeTick = (now_ms: number, state: DayState, more: Trace): Tick => ({
  now_ms,
  seq: state.seq,
  changed: state,
  more,
});
