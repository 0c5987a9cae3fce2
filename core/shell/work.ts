/** What a solve works with: arrays made once, and the loading of the moment. Types only, so that nobody needs the other. */
import type { TreeMatrix } from '../math/tree.ts';
import type { ElementWork, Shape } from './element.ts';

/** Arrays made once per solve and passed on. */
export interface Work {
  readonly matrix: TreeMatrix;
  /** Inner forces less loads, per degree of freedom, N. */
  readonly residual: Float64Array;
  /** Derivative of the volume by the displacements, mm². */
  readonly area: Float64Array;
  readonly step: Float64Array;
  readonly border: Float64Array;
  /** Thickness over unformed thickness, per element. */
  readonly thinning: Float64Array;
  readonly element: ElementWork;
  readonly shape: Shape;
  /** Volume under the mid-surface at the last assembly, mm³. */
  volume: number;
}

/** Pressure that acts: at the gauge, and the liquid column over or under it. */
export interface Loading {
  readonly pressure: number;
  /** Weight of water per volume, N/mm³; 0: no head. */
  readonly weight: number;
  /** Height of the gauge, mm. */
  readonly gauge: number;
}
