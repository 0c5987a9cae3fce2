/** The wall place by place, for profiles and drawings: where it stands, how thick it is, how far it is strained. */
import { emptyShape, shapeOf } from './element.ts';
import { midPlastic, squeeze, thicknessAt } from './read.ts';
import type { Shell } from './shell.ts';
import type { State } from './state.ts';

const shape = emptyShape();

/** One place along the wall, for profiles and drawings. Strains are logarithmic, of the whole deformation. */
export interface WallPlace {
  readonly part: string;
  /** Unformed and present mid-surface, mm; heights from the bottom tangent line. */
  readonly r0: number;
  readonly z0: number;
  readonly r: number;
  readonly z: number;
  readonly wall: number;
  readonly wall0: number;
  readonly hoop: Through;
  readonly meridional: Through;
  /** Equivalent plastic strain. */
  readonly plastic: Through;
}

/** A quantity at the inside face, the middle and the outside face. */
export interface Through {
  readonly inside: number;
  readonly mid: number;
  readonly outside: number;
}

/** Every element, bottom to top along the meridian (branches left out); a solved half is mirrored to the whole tank. */
export function profileOf(shell: Shell, state: State): WallPlace[] {
  const places: WallPlace[] = [];
  for (let i = 0; i < shell.length.length; i++)
    if (shell.wet[i] === 1) places.push(wallPlace(shell, state, i));
  if (!shell.mesh.half) return places;
  const height = shell.tank.length;
  const upper = places
    .map((p) => ({ ...p, z0: height - p.z0, z: height - p.z, part: p.part.replace('bottom', 'top') }))
    .reverse();
  return [...places, ...upper];
}

function wallPlace(shell: Shell, state: State, i: number): WallPlace {
  shapeOf(shell, i, state.move, shape);
  const a = shell.from[i];
  const b = shell.to[i];
  const { root = 0, part } = shell.mesh.pieces[i].span;
  const thinning = thicknessAt(shell, state, i) / shell.wall[i];
  const scale = 1 + squeeze(shell, state.pressure);
  // Of the wall alone, without the root of a baffle inside it.
  const offset = shell.offset[i] + 0.5 * root;
  const wall0 = shell.wall[i] - root;
  const z = 0.5 * (shell.Z[a] + shell.Z[b] + state.move[3 * a + 1] + state.move[3 * b + 1]);
  return {
    part,
    r0: shell.radius[i] + offset * Math.sin(shell.angle[i]),
    z0: 0.5 * (shell.Z[a] + shell.Z[b]) - offset * Math.cos(shell.angle[i]),
    r: (shape.r + offset * thinning * shape.sine) * scale,
    z: z - offset * thinning * shape.cosine,
    wall: wall0 * thinning,
    wall0,
    hoop: through((face) => {
      const zeta = offset + 0.5 * face * wall0;
      const now = shape.r + zeta * thinning * shape.sine;
      return Math.log((scale * now) / (shell.radius[i] + zeta * Math.sin(shell.angle[i])));
    }),
    meridional: through((face) => {
      const zeta = offset + 0.5 * face * wall0;
      const now = shape.e + zeta * thinning * shape.kappa;
      return Math.log((scale * now) / (1 + zeta * shell.curvature[i]));
    }),
    plastic: plasticThrough(shell, state, i),
  };
}

const depthOf = (shell: Shell, i: number, face: number): number =>
  shell.offset[i] + 0.5 * face * shell.wall[i];

const through = (at: (face: number) => number): Through => ({ inside: at(-1), mid: at(0), outside: at(1) });

/** Faces by straight extrapolation of the two outermost layer points, never under zero; middle by the two around it. */
function plasticThrough(shell: Shell, state: State, i: number): Through {
  const { layers } = shell.settings;
  const first = i * layers;
  const extrapolate = (near: number, far: number, face: number): number => {
    const zeta = depthOf(shell, i, face);
    const f = (zeta - shell.depth[near]) / (shell.depth[far] - shell.depth[near]);
    return Math.max(0, state.plasticEq[near] + f * (state.plasticEq[far] - state.plasticEq[near]));
  };
  return {
    inside: extrapolate(first, first + 1, -1),
    mid: midPlastic(shell, state, i),
    outside: extrapolate(first + layers - 1, first + layers - 2, 1),
  };
}
