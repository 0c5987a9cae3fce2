/**
 * The trace of a day for a screen: lowest and highest of each channel in intervals of time. When the intervals are full,
 * each two become one, so that the whole test fits and the memory stays the same, however long and fast it is.
 */
import type { Trace } from '@hoopwright/wire/day';
import type { Entry } from '@hoopwright/wire/record';

/** Intervals that are kept at most; a screen is about as many pixels wide. */
const MOST = 2048;
/** s of the first interval width. */
const FINEST = 0.1;

interface Strip {
  readonly name: string;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Guards the intervals. */
export class TraceStore {
  private width = FINEST;
  private used = 0;
  private latest = 0;
  private readonly strips: Strip[] = [];
  /** Last entry within each interval. */
  private readonly seqs = new Float64Array(MOST);

  /** @param seconds since the record began; one that goes back counts as the latest */
  take(seconds: number, seq: number, values: Readonly<Record<string, number>>): void {
    this.latest = Math.max(this.latest, seconds);
    let i = Math.floor(this.latest / this.width);
    while (i >= MOST) {
      this.halve();
      i = Math.floor(this.latest / this.width);
    }
    this.used = Math.max(this.used, i + 1);
    this.seqs[i] = seq;
    for (const name in values) {
      if (typeof values[name] !== 'number') continue;
      const { low, high } = this.strip(name);
      const value = values[name];
      if (!(low[i] <= value)) low[i] = value;
      if (!(high[i] >= value)) high[i] = value;
    }
  }

  /** Takes the readings of an entry; other entries have none. */
  takeEntry({ kind, seq, wall_ms, body }: Entry, began_ms: number): void {
    if (kind !== 'reading') return;
    const { values } = body;
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- what is no figure makes no strip below
    this.take((wall_ms - began_ms) / 1000, seq, (values ?? {}) as Record<string, number>);
  }

  /** Intervals in which something was read, after an entry and up to a time. Empty ones between them show as a gap. */
  read(after = 0, until = Infinity): Trace {
    const wanted: number[] = [];
    for (let i = 0; i < this.used; i++) {
      if (this.seqs[i] > after && i * this.width <= until) wanted.push(i);
    }
    const shown = withBreaks(wanted);
    const pick = (of: Float64Array): (number | null)[] =>
      shown.map((i) => (i < 0 || Number.isNaN(of[i]) ? null : of[i]));
    return {
      seconds: shown.map((i) => (Math.abs(i) + 0.5) * this.width),
      channels: this.strips.map(({ name, low, high }) => ({ name, low: pick(low), high: pick(high) })),
    };
  }

  private strip(name: string): Strip {
    const found = this.strips.find((one) => one.name === name);
    if (found !== undefined) return found;
    const empty = (): Float64Array => new Float64Array(MOST).fill(NaN);
    const made = { name, low: empty(), high: empty() };
    this.strips.push(made);
    return made;
  }

  private halve(): void {
    for (const { low, high } of this.strips) {
      merge(low, (a, b) => (a <= b || Number.isNaN(b) ? a : b));
      merge(high, (a, b) => (a >= b || Number.isNaN(b) ? a : b));
    }
    merge(this.seqs, Math.max, 0);
    this.width *= 2;
    this.used = Math.ceil(this.used / 2);
  }
}

function merge(row: Float64Array, of: (a: number, b: number) => number, empty = NaN): void {
  for (let i = 0; 2 * i < row.length; i++) row[i] = of(row[2 * i], row[2 * i + 1]);
  row.fill(empty, row.length / 2);
}

/** An interval with nothing in it, negative, where one or more were passed over. */
const withBreaks = (wanted: readonly number[]): number[] =>
  wanted.flatMap((i, n) => (n > 0 && i > wanted[n - 1] + MISSED ? [-(wanted[n - 1] + 1), i] : [i]));

/** So many intervals without a reading are a gap: readings by hand lie further apart than that, and are drawn as points. */
const MISSED = 1;
