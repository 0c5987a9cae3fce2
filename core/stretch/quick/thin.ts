/** The long cylinder beside the tank: same radius, same drawn steel. The quick tank is a correction of it. */
import { monotoneCubic, writeCubic } from '../../math/spline.ts';
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

/** Pressure, volume, flow stress of the thin cylinder at the growths of `grid` (fractions, rising). */
export function thinTable(tank: Tank, plate: Steel, draw: SteelDraw, grid: Float64Array): ThinTable {
  const vessel = thinBeside(tank, plate, draw);
  const at = Array.from({ length: POINTS }, (_, i) => LAST * (i / (POINTS - 1)) ** 3);
  const states = at.map((ep) => yieldingState(vessel, ep));
  const growths = states.map((s) => Math.expm1(s.hoop));
  const curves = [
    monotoneCubic(
      growths,
      states.map((s) => Math.log(s.pressure)),
    ),
    monotoneCubic(
      growths,
      states.map((s) => s.volumeGrowth),
    ),
    monotoneCubic(
      growths,
      states.map((s) => s.equivalent),
    ),
    monotoneCubic(growths, at),
  ];
  const table = {
    pressure: new Float64Array(grid.length),
    volume: new Float64Array(grid.length),
    flow: new Float64Array(grid.length),
    plastic: new Float64Array(grid.length),
  };
  const out = new Float64Array(2);
  grid.forEach((growth, j) => {
    if (growth < growths[0]) {
      const f = growth / growths[0];
      const elastic = thinState(vessel, 0, f * states[0].equivalent);
      table.pressure[j] = elastic.pressure;
      table.volume[j] = elastic.volumeGrowth;
      table.flow[j] = states[0].equivalent;
      return;
    }
    const [pressure, volume, flow, plastic] = curves.map((curve) => {
      writeCubic(curve, growth, out);
      return out[0];
    });
    table.pressure[j] = Math.exp(pressure);
    table.volume[j] = volume;
    table.flow[j] = flow;
    table.plastic[j] = plastic;
  });
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
