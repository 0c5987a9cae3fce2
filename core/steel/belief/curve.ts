/** The flow curve with its range: what the tests say of the steel. */
import { type Range, rangeOf } from '../../stats/range.ts';
import { REFERENCE_RATE } from '../prior/shape.ts';
import { drawnStress, drawOf, inputsOf, type SteelDraw } from './draw.ts';

export interface CurvePoint {
  /** True plastic strain. */
  readonly plastic: number;
  /** Uniaxial true stress, MPa, at the rate asked for. */
  readonly stress: Range;
}

/** Range of the uniaxial true stress at true plastic strains above 0.2 %, at a strain rate (1/s). */
export const curveRange = (
  draws: readonly SteelDraw[],
  plastic: readonly number[],
  rate = REFERENCE_RATE,
): CurvePoint[] =>
  plastic.map((ep) => ({ plastic: ep, stress: rangeOf(draws.map((draw) => drawnStress(draw, ep, rate))) }));

/** The steel in the middle of the range: each input at its median. It is nobody's steel, but a curve to draw. */
export const middleDraw = (draws: readonly SteelDraw[]): SteelDraw => {
  const rows = draws.map(inputsOf);
  return drawOf(rows[0].map((_, k) => rangeOf(rows.map((row) => row[k])).median));
};
