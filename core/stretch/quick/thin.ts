/** The long cylinder beside the tank: same radius, same drawn steel. The quick tank is a correction of it. */
import { type Cubic, writeCubicIn, writeSlopes } from '../../math/spline.ts';
import { flowOf } from '../../steel/flow.ts';
import { metalOf } from '../../steel/plane.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Tank } from '../../tank/tank.ts';
import { longCylinder, type ThinVessel, thinState, yieldingState } from '../thin/vessel.ts';

export interface ThinTable {
  /** Pressure (MPa) at each growth of girth. */
  readonly pressure: Float64Array;
  /** Volume growth (fraction). */
  readonly volume: Float64Array;
  /** Flow stress (MPa) and equivalent plastic strain there; plastic 0 where elastic. */
  readonly flow: Float64Array;
  readonly plastic: Float64Array;
}

const POINTS = 60;
const LAST = 0.8;
const PLASTIC = Float64Array.from({ length: POINTS }, (_, i) => LAST * (i / (POINTS - 1)) ** 3);

// Written anew by every table: hundreds are made at each forecast of a running day.
const GROWTHS = new Float64Array(POINTS);
const over = (y: Float64Array): Cubic => ({ x: GROWTHS, y, slope: new Float64Array(POINTS) });
const PRESSURE = over(new Float64Array(POINTS));
const VOLUME = over(new Float64Array(POINTS));
const FLOW = over(new Float64Array(POINTS));
const STRAIN = over(PLASTIC);
const CURVES = [PRESSURE, VOLUME, FLOW, STRAIN];

/** Pressure, volume, flow stress of the thin cylinder at the growths of `grid` (fractions, rising). */
export function thinTable(tank: Tank, plate: Steel, draw: SteelDraw, grid: Float64Array): ThinTable {
  const vessel = thinBeside(tank, plate, draw);
  const first = yieldingState(vessel, 0);
  for (let i = 0; i < POINTS; i++) {
    const state = i === 0 ? first : yieldingState(vessel, PLASTIC[i]);
    GROWTHS[i] = Math.expm1(state.hoop);
    if (i > 0 && !(GROWTHS[i] > GROWTHS[i - 1]))
      throw new Error(`growth must rise with plastic strain, but ${GROWTHS[i]} follows ${GROWTHS[i - 1]}`);
    PRESSURE.y[i] = Math.log(state.pressure);
    VOLUME.y[i] = state.volumeGrowth;
    FLOW.y[i] = state.equivalent;
  }
  for (const curve of CURVES) writeSlopes(curve);
  const table = {
    pressure: new Float64Array(grid.length),
    volume: new Float64Array(grid.length),
    flow: new Float64Array(grid.length),
    plastic: new Float64Array(grid.length),
  };
  const out = new Float64Array(2);
  // Growths of the grid rise: the interval is walked along with them.
  let k = 0;
  for (let j = 0; j < grid.length; j++) {
    const growth = grid[j];
    if (growth < GROWTHS[0]) {
      const f = growth / GROWTHS[0];
      const elastic = thinState(vessel, 0, f * first.equivalent);
      table.pressure[j] = elastic.pressure;
      table.volume[j] = elastic.volumeGrowth;
      table.flow[j] = first.equivalent;
      continue;
    }
    while (k < POINTS - 2 && GROWTHS[k + 1] <= growth) k++;
    writeCubicIn(PRESSURE, k, growth, out);
    table.pressure[j] = Math.exp(out[0]);
    writeCubicIn(VOLUME, k, growth, out);
    table.volume[j] = out[0];
    writeCubicIn(FLOW, k, growth, out);
    table.flow[j] = out[0];
    writeCubicIn(STRAIN, k, growth, out);
    table.plastic[j] = out[0];
  }
  return table;
}

/** Pressure at which the long cylinder yields, MPa: there the path bends, and a run must be looked at closely. */
export const thinYield = (tank: Tank, plate: Steel, draw: SteelDraw): number =>
  yieldingState(thinBeside(tank, plate, draw), 0).pressure;

/** Flow of the drawn plate shifted by its rolling, in a cylinder of the longest course. */
function thinBeside(tank: Tank, plate: Steel, draw: SteelDraw): ThinVessel {
  const course = tank.courses.reduce((a, b) => (b.length > a.length ? b : a));
  const flow = flowOf(draw.flow, draw.biaxialFactor);
  const rolled = {
    evidence: flow.evidence,
    at: (ep: number, out: Float64Array) => flow.at(ep + draw.coldWork, out),
  };
  const wall = course.wall * draw.wallFactor;
  return longCylinder(metalOf(plate.young, plate.poisson, rolled), tank.insideDiameter / 2 + wall / 2, wall);
}
