/**
 * What one would measure on a solved shell: inside volume, girth, wall, strains, mass.
 *
 * Pressure acts on the mid-surface, which carries the mean radial stress -p/2 through the plastic law. Its elastic part
 * is a uniform strain -(1 - 2 nu) p / 2E of the whole wall (a free contraction that stresses nothing); every length
 * read here has it.
 */
import { emptyShape, offsetVolume, shapeOf } from './element.ts';
import type { Shell } from './shell.ts';
import type { State } from './state.ts';

const shape = emptyShape();

/** Uniform strain of the wall under the mean radial stress -pressure/2. */
export function squeeze(shell: Shell, pressure: number): number {
  const { young, poisson } = shell.steels[0];
  return (-(1 - 2 * poisson) * pressure) / (2 * young);
}

/** Volume enclosed by the inside surface of the whole tank, mm³. `thickness` per element, mm. */
export function insideVolume(shell: Shell, state: State): number {
  const copies = shell.mesh.half ? 2 : 1;
  let volume = 0;
  for (let i = 0; i < shell.length.length; i++) {
    if (shell.wet[i] === 0) continue;
    shapeOf(shell, i, state.move, shape);
    const thinning = thicknessAt(shell, state, i) / shell.wall[i];
    const inside = (shell.offset[i] - 0.5 * shell.wall[i]) * thinning;
    volume += lineVolume(shell, state, i) + offsetVolume(shape, shell.length[i], inside);
  }
  return copies * volume * (1 + squeeze(shell, state.pressure)) ** 3;
}

function lineVolume(shell: Shell, state: State, i: number): number {
  const a = shell.from[i];
  const b = shell.to[i];
  const r1 = shell.R[a] + state.move[3 * a];
  const r2 = shell.R[b] + state.move[3 * b];
  const dz = shell.Z[b] + state.move[3 * b + 1] - shell.Z[a] - state.move[3 * a + 1];
  return (Math.PI / 3) * dz * (r1 * r1 + r1 * r2 + r2 * r2);
}

/** Present wall of element i, mm: unformed wall x mean of exp(thickness strain) over the layers. */
export function thicknessAt(shell: Shell, state: State, i: number): number {
  const { layers } = shell.settings;
  const { young: E, poisson: nu } = shell.steels[shell.metal[i]];
  let sum = 0;
  let weights = 0;
  for (let point = i * layers; point < (i + 1) * layers; point++) {
    const elastic = (-nu / E) * (state.stressM[point] + state.stressH[point]);
    const strain = elastic - state.plasticM[point] - state.plasticH[point];
    sum += shell.weight[point] * Math.exp(strain);
    weights += shell.weight[point];
  }
  return (shell.wall[i] * sum) / weights;
}

/** Outside radius of the barrel at the place that was `height` above the bottom tangent line, mm. */
export function outsideRadius(shell: Shell, state: State, height: number): number {
  const { element, fraction } = placeAt(shell, height);
  const a = shell.from[element];
  const b = shell.to[element];
  const line =
    (1 - fraction) * (shell.R[a] + state.move[3 * a]) + fraction * (shell.R[b] + state.move[3 * b]);
  const thickness = thicknessAt(shell, state, element);
  const outside = (shell.offset[element] / shell.wall[element] + 0.5) * thickness;
  return (line + outside) * (1 + squeeze(shell, state.pressure));
}

interface Place {
  readonly element: number;
  readonly fraction: number;
}

/** Element of the barrel over which a height lies; heights above a solved half are mirrored into it. */
export function placeAt(shell: Shell, height: number): Place {
  const z = shell.mesh.half && height > shell.tank.length / 2 ? shell.tank.length - height : height;
  let best = -1;
  shell.mesh.pieces.forEach(({ span, a, b }, i) => {
    if (span.part === 'barrel' && a.z <= z + 1e-9 && z <= b.z + 1e-9) best = i;
  });
  if (best < 0) throw new Error(`no part of the barrel at ${height} mm over the bottom tangent line`);
  const { a, b } = shell.mesh.pieces[best];
  return { element: best, fraction: (z - a.z) / (b.z - a.z) };
}

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
  const wall = thicknessAt(shell, state, i);
  const scale = 1 + squeeze(shell, state.pressure);
  const o = (shell.offset[i] * wall) / shell.wall[i];
  const z = 0.5 * (shell.Z[a] + shell.Z[b] + state.move[3 * a + 1] + state.move[3 * b + 1]);
  return {
    part: shell.mesh.pieces[i].span.part,
    r0: shell.radius[i] + shell.offset[i] * Math.sin(shell.angle[i]),
    z0: 0.5 * (shell.Z[a] + shell.Z[b]) - shell.offset[i] * Math.cos(shell.angle[i]),
    r: (shape.r + o * shape.sine) * scale,
    z: z - o * shape.cosine,
    wall,
    wall0: shell.wall[i],
    hoop: through((face) => {
      const zeta = depthOf(shell, i, face);
      const now = shape.r + ((zeta * wall) / shell.wall[i]) * shape.sine;
      return Math.log((scale * now) / (shell.radius[i] + zeta * Math.sin(shell.angle[i])));
    }),
    meridional: through((face) => {
      const zeta = depthOf(shell, i, face);
      const now = shape.e + ((zeta * wall) / shell.wall[i]) * shape.kappa;
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

/** Equivalent plastic strain at mid-wall of element i. */
export function midPlastic(shell: Shell, state: State, i: number): number {
  const { layers } = shell.settings;
  const middle = i * layers + (layers - 1) / 2;
  return 0.5 * (state.plasticEq[Math.floor(middle)] + state.plasticEq[Math.ceil(middle)]);
}

/** Whole height pole to pole along the axis, mid-surface, mm. */
export function heightOf(shell: Shell, state: State): number {
  const { spine, half } = shell.mesh;
  const z = (node: number): number => shell.Z[node] + state.move[3 * node + 1];
  const span = z(spine[spine.length - 1]) - z(spine[0]);
  return (half ? 2 : 1) * span * (1 + squeeze(shell, state.pressure));
}

/** Mass of all metal of the shell, t. */
export function massOf(shell: Shell): number {
  let mass = 0;
  for (let i = 0; i < shell.length.length; i++) {
    if (shell.link[i] === 1) continue;
    const { density } = shell.steels[shell.metal[i]];
    for (let k = 0; k < shell.settings.layers; k++)
      mass += density * shell.weight[i * shell.settings.layers + k];
  }
  return (shell.mesh.half ? 2 : 1) * mass;
}
