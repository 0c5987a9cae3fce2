/**
 * Lowest and highest of every channel over time, in typed arrays: what is drawn never goes through the state of the page.
 * Where it grows long, two neighbours become one, so that memory stays flat however long the day is.
 */
import type { Trace } from '@hoopwright/wire/day';

export interface Track {
  readonly name: string;
  low: Float64Array;
  high: Float64Array;
}

/** Columns that are kept at most: several for each pixel of any screen. */
export const MOST_COLUMNS = 1 << 14;

/** Guards the columns: `length` of them are valid. */
export class LongTrace {
  seconds = new Float64Array(1024);
  length = 0;
  /** Counts changes, so that a chart knows whether to draw again. */
  version = 0;
  readonly tracks: Track[] = [];
  private readonly most: number;

  constructor(most: number = MOST_COLUMNS) {
    this.most = most;
  }

  clear(): void {
    this.length = 0;
    this.tracks.length = 0;
    this.version++;
  }

  track(name: string): Track | undefined {
    return this.tracks.find((one) => one.name === name);
  }

  /** Adds columns at the end. One that begins no later than the last there is takes its place. */
  add(more: Trace): void {
    const [first] = more.seconds;
    if (first === undefined) return;
    while (this.length > 0 && this.seconds[this.length - 1] >= first) this.length--;
    for (const { name } of more.channels) if (this.track(name) === undefined) this.open(name);
    for (let i = 0; i < more.seconds.length; i++) {
      if (this.length >= this.most) this.thin();
      this.makeRoom();
      const at = this.length++;
      this.seconds[at] = more.seconds[i];
      for (const track of this.tracks) track.low[at] = track.high[at] = NaN;
      for (const { name, low, high } of more.channels) {
        const track = this.track(name);
        if (track === undefined) continue;
        track.low[at] = low[i] ?? NaN;
        track.high[at] = high[i] ?? NaN;
      }
    }
    this.version++;
  }

  private open(name: string): void {
    const { length } = this.seconds;
    this.tracks.push({
      name,
      low: new Float64Array(length).fill(NaN),
      high: new Float64Array(length).fill(NaN),
    });
  }

  private makeRoom(): void {
    if (this.length < this.seconds.length) return;
    const larger = (old: Float64Array): Float64Array<ArrayBuffer> => {
      const made = new Float64Array(2 * old.length).fill(NaN);
      made.set(old);
      return made;
    };
    this.seconds = larger(this.seconds);
    for (const track of this.tracks) [track.low, track.high] = [larger(track.low), larger(track.high)];
  }

  private thin(): void {
    const half = this.length >> 1;
    for (let i = 0; i < half; i++) this.seconds[i] = this.seconds[2 * i];
    for (const { low, high } of this.tracks) {
      for (let i = 0; i < half; i++) {
        low[i] = least(low[2 * i], low[2 * i + 1]);
        high[i] = -least(-high[2 * i], -high[2 * i + 1]);
      }
    }
    this.length = half;
  }
}

const least = (a: number, b: number): number => (Number.isNaN(a) ? b : Number.isNaN(b) ? a : Math.min(a, b));

/** The trace of the day that is on the screen. */
export const trace = new LongTrace();
