/**
 * The shell made ready for solving: struct of arrays, one entry per element or per layer point.
 *
 * Kinematics (geometrically exact, axisymmetric, Reissner-Mindlin): an element keeps its middle point (r, angle), the
 * stretch e and shear of its line and its curvature kappa; a fibre at depth zeta is stretched by (e + zeta kappa) along
 * the meridian and runs at radius r + zeta sin(angle). Strains are natural logarithms against the unformed wall.
 * One point along the element, Gauss points through the wall: neither shear nor membrane locks.
 * Source of the one-point element: Zienkiewicz, Bauer, Morgan & Onate, Int. J. Numer. Meth. Engng 11 (1977) 1545.
 */
import { flowOf } from '../steel/flow.ts';
import { type Metal, metalOf } from '../steel/plane.ts';
import type { Steel } from '../steel/steel.ts';
import { type GaussRule, gaussPoints } from '../math/gauss.ts';
import type { LayerState, Tank } from '../tank/tank.ts';
import { meridianOf } from './meridian/meridian.ts';
import { type Mesh, meshOf, type Piece } from './meridian/mesh.ts';

export interface ShellSettings {
  /** Elements along half the meridian; a tank whose halves differ gets twice as many. */
  readonly elements: number;
  /** Gauss points through the wall. */
  readonly layers: number;
  /** Every element is split so often, along the same density: meshes of a convergence study. */
  readonly split?: number;
}

export const STANDARD: ShellSettings = { elements: 160, layers: 5 };

/** Shear correction of a rectangular section (Reissner). */
const SHEAR_FACTOR = 5 / 6;

export interface Shell {
  readonly tank: Tank;
  readonly mesh: Mesh;
  readonly settings: ShellSettings;
  readonly metals: readonly Metal[];
  readonly steels: readonly Steel[];
  /** Node coordinates before forming, and the parent of each node in the tree (-1: root). */
  readonly R: Float64Array;
  readonly Z: Float64Array;
  readonly parent: Int32Array;
  /** Per element. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly length: Float64Array;
  readonly angle: Float64Array;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
  readonly curvature: Float64Array;
  readonly radius: Float64Array;
  readonly wall: Float64Array;
  readonly offset: Float64Array;
  readonly metal: Int32Array;
  readonly wet: Uint8Array;
  /** 1: the piece only carries the branch to the line, elastic, no hoop. */
  readonly link: Uint8Array;
  readonly shear: Float64Array;
  /** Per layer point, element by element, inside first: depth from the line, weight (2 pi r dA), unformed logarithms. */
  readonly depth: Float64Array;
  readonly weight: Float64Array;
  readonly logM: Float64Array;
  readonly logH: Float64Array;
}

export const shellOf = (tank: Tank, settings: ShellSettings = STANDARD): Shell =>
  shellOn(meshOf(meridianOf(tank), settings.elements, settings.split ?? 1), tank, settings);

/** On a mesh made elsewhere. */
export function shellOn(mesh: Mesh, tank: Tank, settings: ShellSettings): Shell {
  const steels = [...new Set(mesh.pieces.map((p) => p.span.steel))];
  const n = mesh.pieces.length;
  const points = n * settings.layers;
  const shell: Shell = {
    tank,
    mesh,
    settings,
    steels,
    metals: steels.map((s) => metalOf(s.young, s.poisson, flowOf(s.flow, s.biaxialFactor), s.rate)),
    R: new Float64Array(mesh.nodes),
    Z: new Float64Array(mesh.nodes),
    parent: new Int32Array(mesh.nodes).fill(-1),
    from: new Int32Array(n),
    to: new Int32Array(n),
    length: new Float64Array(n),
    angle: new Float64Array(n),
    cosine: new Float64Array(n),
    sine: new Float64Array(n),
    curvature: new Float64Array(n),
    radius: new Float64Array(n),
    wall: new Float64Array(n),
    offset: new Float64Array(n),
    metal: new Int32Array(n),
    wet: new Uint8Array(n),
    link: new Uint8Array(n),
    shear: new Float64Array(n),
    depth: new Float64Array(points),
    weight: new Float64Array(points),
    logM: new Float64Array(points),
    logH: new Float64Array(points),
  };
  const rule = gaussPoints(settings.layers);
  mesh.pieces.forEach((piece, i) => {
    placeElement(shell, piece, i);
    placeLayers(shell, i, rule);
  });
  return shell;
}

function placeElement(shell: Shell, piece: Piece, i: number): void {
  const { a, b, from, to, span, wall, offset } = piece;
  shell.from[i] = from;
  shell.to[i] = to;
  shell.parent[from] = to;
  shell.R[from] = a.r;
  shell.Z[from] = a.z;
  shell.R[to] = b.r;
  shell.Z[to] = b.z;
  const length = Math.hypot(b.r - a.r, b.z - a.z);
  shell.length[i] = length;
  shell.angle[i] = Math.atan2(b.z - a.z, b.r - a.r);
  shell.cosine[i] = (b.r - a.r) / length;
  shell.sine[i] = (b.z - a.z) / length;
  shell.curvature[i] = (b.angle - a.angle) / length;
  shell.radius[i] = 0.5 * (a.r + b.r);
  shell.wall[i] = wall;
  shell.offset[i] = offset;
  shell.metal[i] = shell.steels.indexOf(span.steel);
  shell.wet[i] = span.wet ? 1 : 0;
  shell.link[i] = span.part === 'link' ? 1 : 0;
  const { young, poisson } = span.steel;
  const modulus = young / (2 * (1 + poisson));
  shell.shear[i] = SHEAR_FACTOR * modulus * 2 * Math.PI * shell.radius[i] * length * wall;
}

function placeLayers(shell: Shell, i: number, { at, weight }: GaussRule): void {
  const { layers } = shell.settings;
  const wall = shell.wall[i];
  const sine = shell.sine[i];
  for (let k = 0; k < layers; k++) {
    const point = i * layers + k;
    const zeta = shell.offset[i] + 0.5 * wall * at[k];
    const along = 1 + zeta * shell.curvature[i];
    const around = shell.radius[i] + zeta * sine;
    shell.depth[point] = zeta;
    shell.weight[point] = 2 * Math.PI * shell.length[i] * along * around * 0.5 * wall * weight[k];
    shell.logM[point] = Math.log(along);
    shell.logH[point] = Math.log(around);
  }
}

/** Residual stress and plastic strain of rolling at relative depth -1..1, linear between the given layers. */
export function layerAt(layers: readonly LayerState[], depth: number): LayerState {
  const above = layers.findIndex((layer) => layer.depth >= depth);
  if (above <= 0) return layers[above === 0 ? 0 : layers.length - 1];
  const a = layers[above - 1];
  const b = layers[above];
  const f = (depth - a.depth) / (b.depth - a.depth);
  const mix = (x: number, y: number): number => x + f * (y - x);
  return {
    depth,
    plastic: mix(a.plastic, b.plastic),
    meridional: mix(a.meridional, b.meridional),
    hoop: mix(a.hoop, b.hoop),
  };
}
