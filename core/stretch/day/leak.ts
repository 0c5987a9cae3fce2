/**
 * The balance of water in a hold: what is pumped goes into growth of the wall, compression, warming and loss. Each is read
 * with some blur; together they say how small a loss can be told from none. Volumes mm³, rates mm³/s.
 */

/** What an instrument fakes, as the standard deviation of a rate of loss. */
export interface Blur {
  readonly of: 'litres' | 'girth' | 'pressure' | 'temperature';
  readonly rate: number;
}

export interface SmallestLeak {
  readonly rate: number;
  /** Largest contribution first. */
  readonly blurs: readonly Blur[];
}

/** @param detection smallest visible value over the standard deviation */
export function smallestLeak(blurs: readonly Blur[], detection: number): SmallestLeak {
  const all = Math.hypot(...blurs.map((blur) => blur.rate));
  return { rate: detection * all, blurs: [...blurs].sort((a, b) => b.rate - a.rate) };
}
