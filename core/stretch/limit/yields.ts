/** Where and when the tank yields: first layer anywhere, and the barrel as a whole. */
import type { Datum, Moment } from '../growth.ts';
import type { YieldPoint } from '../rise.ts';

export interface Place {
  readonly part: string;
  /** Height over the bottom tangent line, mm. */
  readonly z: number;
  readonly r: number;
  readonly face: 'inside' | 'middle' | 'outside';
}

/** Place of a layer, as the part and the face of its wall. */
export function placeOf({ solver: { shell } }: Datum, point: YieldPoint): Place {
  const piece = shell.mesh.pieces[point.element];
  const third = (3 * point.layer) / shell.settings.layers;
  return {
    part: piece.span.part,
    z: 0.5 * (piece.a.z + piece.b.z),
    r: shell.radius[point.element],
    face: third < 1 ? 'inside' : third < 2 ? 'middle' : 'outside',
  };
}

/** True where the metal that yields first is stated as a pure power law, which says nothing about first yield. */
export const byPowerLaw = ({ solver: { shell } }: Datum, { element }: YieldPoint): boolean =>
  shell.steels[shell.metal[element]].flow.law === 'hollomon';

/** Proof strain. */
const PROOF = 0.002;

/**
 * Pressure at which the barrel has gained 0.2 % plastic strain at mid-wall, straight between moments; undefined before.
 * What rolling or forming left counts from `start`: rolled plate brings some along and does not yield at zero pressure.
 */
export function proofPressure(start: Moment, moments: readonly Moment[]): number | undefined {
  const gained = (m: Moment): number => m.plastic.barrel - start.plastic.barrel;
  const past = moments.findIndex((m) => gained(m) >= PROOF);
  if (past < 0) return undefined;
  const b = moments[past];
  const a = past === 0 ? start : moments[past - 1];
  const f = (PROOF - gained(a)) / (gained(b) - gained(a));
  return a.pressure + f * (b.pressure - a.pressure);
}
