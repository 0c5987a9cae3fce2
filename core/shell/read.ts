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

/** Present wall of every element, mm, written into `walls`. */
export function writeWalls(shell: Shell, state: State, walls: Float64Array): void {
  for (let i = 0; i < walls.length; i++) walls[i] = thicknessAt(shell, state, i);
}

/**
 * Volume of water the whole tank holds, mm³: what the inside surface encloses, less the metal of baffles.
 * `walls` per element, if they are known.
 */
export function insideVolume(shell: Shell, state: State, walls?: Float64Array): number {
  const copies = shell.mesh.half ? 2 : 1;
  let volume = 0;
  for (let i = 0; i < shell.length.length; i++) {
    if (shell.wet[i] === 0) continue;
    shapeOf(shell, i, state.move, shape);
    const thinning = (walls === undefined ? thicknessAt(shell, state, i) : walls[i]) / shell.wall[i];
    const inside = (shell.offset[i] - 0.5 * shell.wall[i]) * thinning;
    volume += lineVolume(shell, state, i) + offsetVolume(shape, shell.length[i], inside);
  }
  return copies * (volume * (1 + squeeze(shell, state.pressure)) ** 3 - baffleMetal(shell));
}

/** Metal of the baffles inside, mm³: water is not where it is. Plastic strain keeps it; elastic strain moves it by 1e-5. */
function baffleMetal(shell: Shell): number {
  const { layers } = shell.settings;
  let metal = 0;
  shell.mesh.pieces.forEach(({ span }, i) => {
    if (span.part !== 'baffle') return;
    for (let point = i * layers; point < (i + 1) * layers; point++) metal += shell.weight[point];
  });
  return metal;
}

function lineVolume(shell: Shell, state: State, i: number): number {
  const a = shell.from[i];
  const b = shell.to[i];
  const r1 = shell.R[a] + state.move[3 * a];
  const r2 = shell.R[b] + state.move[3 * b];
  const dz = shell.Z[b] + state.move[3 * b + 1] - shell.Z[a] - state.move[3 * a + 1];
  return (Math.PI / 3) * dz * (r1 * r1 + r1 * r2 + r2 * r2);
}

/**
 * Present wall of element i, mm: unformed wall x mean of exp(thickness strain) over the layers. The exponential is taken
 * once, about the mean strain, and to second order from there: layers differ by bending, some 1e-2, which leaves 1e-7.
 */
export function thicknessAt(shell: Shell, state: State, i: number): number {
  const { layers } = shell.settings;
  const { stressM, stressH, plasticM, plasticH } = state;
  const { young, poisson } = shell.metals[shell.metal[i]];
  const elastic = -poisson / young;
  let weights = 0;
  let first = 0;
  let second = 0;
  for (let point = i * layers, end = point + layers; point < end; point++) {
    const w = shell.weight[point];
    const strain = elastic * (stressM[point] + stressH[point]) - plasticM[point] - plasticH[point];
    weights += w;
    first += w * strain;
    second += w * strain * strain;
  }
  const mean = first / weights;
  const spread = Math.max(0, second / weights - mean * mean);
  return shell.wall[i] * Math.exp(mean) * (1 + 0.5 * spread);
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
