/** Times a piece of work: warmed up, run several times, given as a median with its spread. */

export interface Timing {
  readonly name: string;
  /** Median wall-clock time of one run, ms. */
  readonly median_ms: number;
  /** Distance between the quartiles over the median: 0.04 says that half of the runs lie within 4 %. */
  readonly spread: number;
  /** What the median must not exceed, ms. `npm run bench` fails where it does. */
  readonly limit_ms?: number;
  /** What else the run showed: steps, iterations, nanoseconds a point. */
  readonly note?: string;
}

export interface BenchOptions<T> {
  /** Runs before the clock counts, for the compiler to settle. */
  readonly warm?: number;
  /** At least one. */
  readonly runs?: number;
  readonly limit_ms?: number;
  /** A sentence about the result of the last run and the median, ms. */
  readonly note?: (result: T, median_ms: number) => string;
  /** Milliseconds from any start; the machine's own unless a test hands in another. */
  readonly clock?: () => number;
}

/**
 * Times `work` and tells `npm run bench`, or prints a line where the file is run by itself.
 * Work that gives a promise is awaited. Each bench file runs in a process of its own, one after the other.
 */
export async function bench<T>(
  name: string,
  work: () => T | Promise<T>,
  options: BenchOptions<T> = {},
): Promise<Timing> {
  const { warm = 3, runs = 15, limit_ms, note, clock = () => performance.now() } = options;
  for (let i = 0; i < warm; i++) await work();
  let last = await timed(work, clock);
  const samples = [last.ms];
  while (samples.length < runs) {
    last = await timed(work, clock);
    samples.push(last.ms);
  }
  const { median_ms, spread } = summary(samples);
  const extra = {
    ...(limit_ms !== undefined && { limit_ms }),
    ...(note && { note: note(last.result, median_ms) }),
  };
  const timing = { name, median_ms, spread, ...extra };
  tell(timing);
  return timing;
}

/** Awaiting a plain value would add a turn of the event loop to work of microseconds. */
async function timed<T>(work: () => T | Promise<T>, clock: () => number): Promise<{ ms: number; result: T }> {
  const start = clock();
  const given = work();
  if (!(given instanceof Promise)) return { ms: clock() - start, result: given };
  const result = await given;
  return { ms: clock() - start, result };
}

/** Quartiles by linear interpolation between the ordered samples; a single sample has no spread. */
export function summary(samples: readonly number[]): { median_ms: number; spread: number } {
  const ordered = samples.toSorted((a, b) => a - b);
  const quantile = (share: number): number => {
    const place = share * (ordered.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, ordered.length - 1);
    return ordered[below] + (place - below) * (ordered[above] - ordered[below]);
  };
  const median_ms = quantile(0.5);
  return { median_ms, spread: median_ms > 0 ? (quantile(0.75) - quantile(0.25)) / median_ms : 0 };
}

function tell(timing: Timing): void {
  if (process.send) process.send(timing);
  else console.log(JSON.stringify(timing));
}
