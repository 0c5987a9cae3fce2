/** What one sees of the tank at one moment of its stretch: pressure, litres, girths, wall, against the filled tank at zero gauge. */
import { heightOf, insideVolume, midPlastic, outsideRadius, thicknessAt, writeWalls } from '../shell/read.ts';
import type { Shell } from '../shell/shell.ts';
import type { Solver } from '../shell/solve.ts';
import type { State } from '../shell/state.ts';
import { airSwallows, waterCompression } from './water.ts';

export type Phase = 'stretch' | 'hold' | 'release';

/** Water drawn at atmospheric pressure since filling, mm³, share by share. */
export interface Pumped {
  readonly all: number;
  /** Growth of the inside of the tank. */
  readonly wall: number;
  /** Compression of the water. */
  readonly water: number;
  /** Compression of the trapped air. */
  readonly air: number;
}

/** One moment of the path. Inside units. */
export interface Moment {
  readonly phase: Phase;
  /** s since the pump started; 0 throughout where no pump is stated. */
  readonly time: number;
  readonly pressure: number;
  /** Growth of the inside volume, mm³. */
  readonly growth: number;
  readonly pumped: Pumped;
  /** Outside girth (mm) of each girth of the tank, and its growth as a fraction. */
  readonly girths: readonly { readonly girth: number; readonly growth: number }[];
  /** Largest growth of any girth of the barrel, as a fraction, and where it stood above the bottom tangent line. */
  readonly largest: { readonly growth: number; readonly at: number };
  /** Rise of the height pole to pole, mm. */
  readonly rise: number;
  /** Thinnest wall anywhere in the barrel, mm. */
  readonly thinnest: number;
  /** Largest equivalent plastic strain at mid-wall in the barrel, and in any layer anywhere. */
  readonly plastic: { readonly barrel: number; readonly anywhere: number };
  /** Where the shell stands, for profiles, releases and drawings. */
  readonly state: State;
}

/** The filled tank at zero gauge pressure. */
export interface Datum {
  readonly solver: Solver;
  readonly state: State;
  readonly volume: number;
  readonly height: number;
  readonly girths: readonly number[];
  /** Elements of rolled plate in the barrel: neither the flanges of formed heads nor the roots of baffles. */
  readonly barrel: readonly number[];
  /** Outside radius of each of them. */
  readonly radii: readonly number[];
  /** Present walls, written over at every look. */
  readonly walls: Float64Array;
}

export function datumOf(solver: Solver, state: State): Datum {
  const { shell } = solver;
  const walls = new Float64Array(shell.length.length);
  writeWalls(shell, state, walls);
  const barrel = barrelOf(shell);
  return {
    solver,
    state,
    volume: insideVolume(shell, state, walls),
    height: heightOf(shell, state),
    girths: shell.tank.girths.map(({ at }) => 2 * Math.PI * outsideRadius(shell, state, at)),
    barrel,
    radii: barrel.map((i) => elementOutside(shell, state, i, walls[i])),
    walls,
  };
}

function barrelOf({ mesh }: Shell): number[] {
  const all = mesh.pieces.flatMap(({ span }, i) => (span.part === 'barrel' ? [i] : []));
  const plate = all.filter((i) => {
    const { root, formed } = mesh.pieces[i].span;
    return root === undefined && formed === undefined;
  });
  return plate.length > 0 ? plate : all;
}

/** Outside radius at the middle of element i, without the uniform squeeze (it cancels in growth to 1e-5). */
function elementOutside(shell: Shell, state: State, i: number, wall: number): number {
  const line = shell.radius[i] + 0.5 * (state.move[3 * shell.from[i]] + state.move[3 * shell.to[i]]);
  return line + (shell.offset[i] / shell.wall[i] + 0.5) * wall;
}

/** Water drawn so far for a growth and a pressure. */
export function pumpedFor(datum: Datum, growth: number, pressure: number): Pumped {
  const { temperature, trappedAir } = datum.solver.shell.tank.water;
  const air = airSwallows(trappedAir, pressure);
  const liquid = datum.volume + growth - (trappedAir - air);
  const water = waterCompression(liquid, pressure, temperature);
  return { all: growth + water + air, wall: growth, water, air };
}

/** Keeps `state` in the moment: hand in one that nobody writes over. */
export function momentAt(datum: Datum, state: State, phase: Phase, time: number): Moment {
  const { walls } = datum;
  const { shell } = datum.solver;
  writeWalls(shell, state, walls);
  const growth = insideVolume(shell, state, walls) - datum.volume;
  return {
    phase,
    time,
    pressure: state.pressure,
    growth,
    pumped: pumpedFor(datum, growth, state.pressure),
    girths: shell.tank.girths.map(({ at }, k) => {
      const girth = 2 * Math.PI * outsideRadius(shell, state, at);
      return { girth, growth: girth / datum.girths[k] - 1 };
    }),
    largest: largestOf(datum, state, (i) => walls[i]),
    rise: heightOf(shell, state) - datum.height,
    thinnest: datum.barrel.reduce((least, i) => Math.min(least, walls[i]), Infinity),
    plastic: {
      barrel: datum.barrel.reduce((most, i) => Math.max(most, midPlastic(shell, state, i)), 0),
      anywhere: largestEntry(state.plasticEq),
    },
    state,
  };
}

function largestEntry(x: Float64Array): number {
  let most = 0;
  for (let i = 0; i < x.length; i++) if (x[i] > most) most = x[i];
  return most;
}

/** Girth of the barrel that has grown most. Cheap enough to ask after every step. */
export const largestGrowth = (datum: Datum, state: State): Moment['largest'] =>
  largestOf(datum, state, (i) => thicknessAt(datum.solver.shell, state, i));

function largestOf(datum: Datum, state: State, wallOf: (i: number) => number): Moment['largest'] {
  const { shell } = datum.solver;
  let growth = -Infinity;
  let where = datum.barrel[0];
  datum.barrel.forEach((i, k) => {
    const grown = elementOutside(shell, state, i, wallOf(i)) / datum.radii[k] - 1;
    if (grown <= growth) return;
    growth = grown;
    where = i;
  });
  const { a, b } = shell.mesh.pieces[where];
  return { growth, at: 0.5 * (a.z + b.z) };
}
