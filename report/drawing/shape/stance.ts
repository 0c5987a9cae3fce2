/** How the tank stands at one moment, as plain values: what the drawing needs of a forecast, and no more. */
import { profileOf, type WallPlace } from '@hoopwright/core/shell';
import type { Forecast, Moment, Phase } from '@hoopwright/core/stretch';

/** One point of a baffle or skirt, before and now, mm. */
export interface BranchPlace {
  readonly r0: number;
  readonly z0: number;
  readonly r: number;
  readonly z: number;
}

export interface Stance {
  /** MPa gauge. */
  readonly pressure: number;
  readonly phase: Phase;
  readonly profile: readonly WallPlace[];
  readonly branches: readonly BranchPlace[];
  /** Girths of the tank, in its order: outside girth (mm) and growth (a fraction). */
  readonly girths: Moment['girths'];
  readonly largest: Moment['largest'];
  /** Growth of the inside volume, mm³. */
  readonly growth: number;
  readonly thinnest: number;
}

export function stanceOf(forecast: Forecast, moment: Moment): Stance {
  const { shell } = forecast.datum.solver;
  const { pressure, phase, girths, largest, growth, thinnest } = moment;
  const { move } = moment.state;
  const place = (node: number): BranchPlace => ({
    r0: shell.R[node],
    z0: shell.Z[node],
    r: shell.R[node] + move[3 * node],
    z: shell.Z[node] + move[3 * node + 1],
  });
  const branches = shell.mesh.pieces.flatMap((piece) =>
    piece.span.part === 'baffle' || piece.span.part === 'skirt' ? [place(piece.from), place(piece.to)] : [],
  );
  return {
    pressure,
    phase,
    profile: profileOf(shell, moment.state),
    branches,
    girths,
    largest,
    growth,
    thinnest,
  };
}
