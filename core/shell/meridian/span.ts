/** A stretch of meridian, and the branches that hang on it. */
import type { Steel } from '../../steel/steel.ts';
import type { LayerState } from '../../tank/tank.ts';
import type { Curve } from './curve.ts';

export type Part = 'bottom head' | 'barrel' | 'top head' | 'baffle' | 'skirt' | 'link';

/** A stretch of meridian of one steel, one curve. */
export interface Span {
  readonly part: Part;
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
  readonly wall: number;
  /** Mid-surface outside the line, mm. */
  readonly offset: number;
  /** Wall beyond `wall` at arc length s, mm, all of it outside; absent: none. */
  readonly extra?: (s: number) => number;
  readonly steel: Steel;
  readonly layers?: readonly LayerState[];
  /** Equivalent plastic strain that forming left in every layer. */
  readonly formed?: number;
  /** True where water presses on the inside. */
  readonly wet: boolean;
  /** Girth seam of this index, if the span is weld metal. */
  readonly seam?: number;
  /** Depth of baffle metal inside that `wall` includes, mm. */
  readonly root?: number;
}

/** Spans that hang on the meridian at height z, run from their free edge to the line. */
export interface Branch {
  readonly at: number;
  readonly spans: readonly Span[];
}
