import { midPlastic, outsideRadius, placeAt, thicknessAt } from '../../core/shell/read.ts';
import { type Forecast, forecast } from '../../core/stretch/forecast.ts';
import type { Moment } from '../../core/stretch/growth.ts';
import { type Check, percent, plusMinus, type Source } from '../check.ts';
import { SOLID_TANK } from '../figures/solid-tank.ts';
import { TANK_C3 } from './tankC3.ts';

const { rows, tank_pressure_maximum: top, after_unloading_from_85_percent_of_p_inst: after } = SOLID_TANK;
const RELEASED_FROM = 0.85 * SOLID_TANK.p_inst_MPa;
const WORTH = 'the shell is right to second order in t/r; the bound is the one set for this project';

let known: Forecast | undefined;
/** The path with the very settings of the bench, landing on the pressures of the reference. */
const path = (): Forecast => {
  known ??= forecast(TANK_C3, undefined, { target: RELEASED_FROM, marks: rows.map((row) => row.p_MPa) });
  return known;
};

const shell = () => path().datum.solver.shell;
const at = (pressure: number): Moment => {
  const found = path().path.find((m) => m.phase === 'stretch' && Math.abs(m.pressure - pressure) < 1e-7);
  if (found === undefined) throw new Error(`the path does not land on ${pressure} MPa`);
  return found;
};

/** Mid-surface radius: outside girth less half the wall there. */
const radius = (moment: Moment, height: number): number =>
  outsideRadius(shell(), moment.state, height) -
  thicknessAt(shell(), moment.state, placeAt(shell(), height).element) / 2;

/** Slope of pressure over mid-barrel radius around a moment, for comparing pressures at equal radius. */
const pressurePerRadius = (moment: Moment): number => {
  const way = path().path.filter((m) => m.phase === 'stretch');
  const i = way.indexOf(moment);
  const [a, b] = [way[Math.max(0, i - 1)], way[Math.min(way.length - 1, i + 1)]];
  return (b.pressure - a.pressure) / (radius(b, 400) - radius(a, 400));
};

/** Our pressure at the mid-barrel radius that the reference has at its pressure. */
const pressureAtRadius = (pressure: number, theirs: number): number => {
  const moment = at(pressure);
  return moment.pressure - (radius(moment, 400) - theirs) * pressurePerRadius(moment);
};

const one = (
  id: string,
  what: string,
  ours: () => number,
  theirs: number,
  unit: string,
  tolerance: Check['tolerance'],
): Check => ({
  id: `solid-fe/${id}`,
  what,
  ours,
  theirs,
  unit,
  tolerance,
  reason: WORTH,
  standing: 'computed for this project',
});

const LOW = 1.9;

const rowChecks = rows.flatMap((row): Check[] => {
  const p = row.p_MPa;
  const name = `${p.toFixed(3)} MPa`;
  const plastic = p > LOW;
  const grown = (r: number, unformed: number) => plusMinus(0.1 + 0.005 * Math.abs(r - unformed));
  return [
    one(
      `pressure-at-${name}`,
      `C3, ${name}: pressure at equal mid-barrel radius`,
      () => pressureAtRadius(p, row.r_midbarrel_mm),
      p,
      'MPa',
      percent(plastic ? 0.2 : 0.5),
    ),
    one(
      `middle-${name}`,
      `C3, ${name}: mid-barrel radius`,
      () => radius(at(p), 400),
      row.r_midbarrel_mm,
      'mm',
      grown(row.r_midbarrel_mm, 250),
    ),
    one(
      `near-head-${name}`,
      `C3, ${name}: radius 100 mm from the tangent line`,
      () => radius(at(p), 100),
      row.r_100mm_from_tangent_mm,
      'mm',
      grown(row.r_100mm_from_tangent_mm, 250),
    ),
    one(
      `litres-${name}`,
      `C3, ${name}: litres grown`,
      () => at(p).growth / 1e6,
      row.dV_tank_litre,
      'L',
      percent(plastic ? 0.5 : 2),
    ),
    one(
      `pole-${name}`,
      `C3, ${name}: rise of a pole`,
      () => at(p).rise / 2,
      row.uz_pole_mm,
      'mm',
      percent(1.5),
    ),
    ...(row.ep_midbarrel_midwall > 0
      ? [
          one(
            `plastic-${name}`,
            `C3, ${name}: plastic strain at mid-barrel, mid-wall`,
            () => midPlastic(shell(), at(p).state, placeAt(shell(), 400).element),
            row.ep_midbarrel_midwall,
            '1',
            percent(1),
          ),
        ]
      : []),
  ];
});

export const solidTank: Source = {
  key: 'solid-elements',
  citation:
    'Independent axisymmetric solid finite elements, computed for this project (8-node elements, 4-6 through the wall, confirmed by a second formulation)',
  checks: [
    ...rowChecks,
    one(
      'maximum',
      'C3: pressure maximum',
      () => path().maximum?.pressure ?? 0,
      top.p_max_MPa,
      'MPa',
      percent(0.3),
    ),
    one(
      'residual-middle',
      'C3, released from 3.754 MPa: mid-barrel radius',
      () => radius(leftover(), 400),
      after.r_midbarrel_mm,
      'mm',
      plusMinus(0.1),
    ),
    one(
      'residual-near-head',
      'C3, released from 3.754 MPa: radius 100 mm from the tangent line',
      () => radius(leftover(), 100),
      after.r_100mm_from_tangent_mm,
      'mm',
      plusMinus(0.1),
    ),
    one(
      'residual-litres',
      'C3, released: litres left',
      () => leftover().growth / 1e6,
      after.dV_tank_litre,
      'L',
      percent(0.5),
    ),
    one(
      'residual-pole',
      'C3, released: rise of a pole left',
      () => leftover().rise / 2,
      after.uz_pole_mm,
      'mm',
      percent(1.5),
    ),
  ],
};

const leftover = (): Moment => {
  const left = path().released?.left;
  if (left === undefined) throw new Error('the tank was not released');
  return left;
};
