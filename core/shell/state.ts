/** Where the shell is: displacements and what the metal remembers. Arrays are written in place by the solver. */
import type { LayerState } from '../tank/tank.ts';
import { layerAt, type Shell } from './shell.ts';

export interface State {
  /** Per node: radial displacement, axial displacement (mm), turn of the normal (rad). */
  readonly move: Float64Array;
  /** Gauge pressure at the gauge, MPa. */
  pressure: number;
  /** Volume under the line of the wetted part, mm³; of the half tank where only that is solved. */
  volume: number;
  /** Per layer point: plastic strain along the meridian and the hoop, equivalent plastic strain. */
  readonly plasticM: Float64Array;
  readonly plasticH: Float64Array;
  readonly plasticEq: Float64Array;
  /** Per layer point: Kirchhoff stress along the meridian and the hoop, MPa. */
  readonly stressM: Float64Array;
  readonly stressH: Float64Array;
}

export function unformed(shell: Shell): State {
  const points = shell.depth.length;
  const state: State = {
    move: new Float64Array(3 * shell.mesh.nodes),
    pressure: 0,
    volume: 0,
    plasticM: new Float64Array(points),
    plasticH: new Float64Array(points),
    plasticEq: new Float64Array(points),
    stressM: new Float64Array(points),
    stressH: new Float64Array(points),
  };
  shell.mesh.pieces.forEach(({ span }, i) => {
    if (span.formed !== undefined) harden(shell, state, i, span.formed);
    if (span.layers !== undefined) rollIn(shell, state, i, span.layers);
  });
  return state;
}

/** Spinning and pressing leave the same plastic strain in every layer; their residual stress is not known. */
function harden(shell: Shell, state: State, i: number, formed: number): void {
  const { layers } = shell.settings;
  state.plasticEq.fill(formed, i * layers, (i + 1) * layers);
}

/** Residual stress stands as the elastic strain it needs at rest, written as plastic strain of the other sign. */
function rollIn(shell: Shell, state: State, i: number, layers: readonly LayerState[]): void {
  const { young: E, poisson: nu } = shell.mesh.pieces[i].span.steel;
  for (let k = 0; k < shell.settings.layers; k++) {
    const point = i * shell.settings.layers + k;
    const depth = (2 * (shell.depth[point] - shell.offset[i])) / shell.wall[i];
    const { plastic, meridional, hoop } = layerAt(layers, depth);
    state.plasticEq[point] = plastic;
    state.plasticM[point] = -(meridional - nu * hoop) / E;
    state.plasticH[point] = -(hoop - nu * meridional) / E;
  }
}

/** Copies `from` into `to`; both of the same shell. */
export function copyState(from: State, to: State): void {
  to.move.set(from.move);
  to.pressure = from.pressure;
  to.volume = from.volume;
  to.plasticM.set(from.plasticM);
  to.plasticH.set(from.plasticH);
  to.plasticEq.set(from.plasticEq);
  to.stressM.set(from.stressM);
  to.stressH.set(from.stressH);
}

export function cloneState(state: State): State {
  return {
    move: state.move.slice(),
    pressure: state.pressure,
    volume: state.volume,
    plasticM: state.plasticM.slice(),
    plasticH: state.plasticH.slice(),
    plasticEq: state.plasticEq.slice(),
    stressM: state.stressM.slice(),
    stressH: state.stressH.slice(),
  };
}
