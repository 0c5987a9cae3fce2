import type { Steel } from '../../core/steel/steel.ts';
import type { Head, HeadShape, Tank } from '../../core/tank/tank.ts';
import { type Forecast, forecast } from '../../core/stretch/forecast.ts';
import type { Moment } from '../../core/stretch/growth.ts';
import { type Check, percent, plusMinus, type Source, type Tolerance } from '../check.ts';
import { CROWN_MM, KNUCKLE_MM, SOLID_HEADS, type SolidHeads } from '../figures/solid-heads.ts';
import { SWIFT_STEEL } from './tankC3.ts';

const OUTSIDE_MM = 251;
const WORTH =
  'the bounds set for this project: 0.2 % of pressure, 0.5 % of litres, 1.5 % of rise above first yield';

/** Pressure above which the barrel of these tanks is plastic or near it, MPa. */
const LOW = 1.9;

function tankOf({ flow, top, bottom, ring, headWall_mm, depth_mm, girths_mm, name }: SolidHeads): Tank {
  const steel: Steel = { ...SWIFT_STEEL, flow };
  const shapes: Readonly<Record<SolidHeads['top'], HeadShape>> = {
    ellipsoid: { kind: 'semi-ellipsoidal', depth: depth_mm },
    torisphere: { kind: 'torispherical', crownRadius: CROWN_MM, knuckleRadius: KNUCKLE_MM },
  };
  const head = (shape: HeadShape): Head => ({ shape, wall: headWall_mm, straightFlange: 0, steel });
  const baffles =
    ring === undefined ? [] : [{ at: ring.at_mm, width: ring.width_mm, thickness: ring.thickness_mm, steel }];
  return {
    name,
    insideDiameter: 498,
    length: 800,
    courses: [{ length: 800, wall: 2, steel }],
    heads: { top: head(shapes[top]), bottom: head(shapes[bottom]) },
    girthSeams: [],
    baffles,
    skirts: [],
    girths: girths_mm.map((at) => ({ name: `${at}`, at })),
    openings: [],
    water: { temperature: 15, trappedAir: 0 },
  };
}

function pathOf(solid: SolidHeads): () => Forecast {
  let known: Forecast | undefined;
  const marks = solid.rows.map((row) => row.p_MPa);
  return () => (known ??= forecast(tankOf(solid), undefined, { marks, until: 0.075 }));
}

function landed(path: Forecast, pressure: number): Moment {
  const found = path.path.find((m) => Math.abs(m.pressure - pressure) < 1e-7);
  if (found === undefined) throw new Error(`the path does not land on ${pressure} MPa`);
  return found;
}

const radius = ({ girths }: Moment, k: number): number => girths[k].girth / (2 * Math.PI);

/** Our pressure where girth k is as large as theirs, along our own slope there. */
function pressureAtRadius({ path }: Forecast, moment: Moment, { k, theirs }: { k: number; theirs: number }) {
  const i = path.indexOf(moment);
  const [a, b] = [path[Math.max(0, i - 1)], path[Math.min(path.length - 1, i + 1)]];
  const slope = (b.pressure - a.pressure) / (radius(b, k) - radius(a, k));
  return moment.pressure - (radius(moment, k) - theirs) * slope;
}

function checksOf(solid: SolidHeads, n: number): Check[] {
  const path = pathOf(solid);
  const one = (id: string, what: string, ours: () => number, of: [number, string, Tolerance]): Check => ({
    id: `solid-heads/${n + 1}-${id}`,
    what: `${solid.name}: ${what}`,
    ours,
    theirs: of[0],
    unit: of[1],
    tolerance: of[2],
    reason: WORTH,
    standing: 'computed for this project',
  });
  const rows = solid.rows.flatMap(({ p_MPa: p, dV_L, radii_mm, rise_mm }): Check[] => {
    const bar = `${p} MPa`;
    const [middle, other] = radii_mm;
    const moment = (): Moment => landed(path(), p);
    const plastic = p > LOW;
    const near: Tolerance = plusMinus(0.1 + 0.005 * (other - OUTSIDE_MM));
    return [
      one(`litres-${p}`, `${bar}: litres grown`, () => moment().growth / 1e6, [
        dV_L,
        'L',
        percent(plastic ? 0.5 : 2),
      ]),
      one(
        `pressure-${p}`,
        `${bar}: pressure at equal radius at ${solid.girths_mm[0]} mm`,
        () => pressureAtRadius(path(), moment(), { k: 0, theirs: middle }),
        [p, 'MPa', percent(plastic ? 0.2 : 0.5)],
      ),
      one(`radius-${p}`, `${bar}: radius at ${solid.girths_mm[1]} mm`, () => radius(moment(), 1), [
        other,
        'mm',
        near,
      ]),
      one(`rise-${p}`, `${bar}: rise pole to pole`, () => moment().rise, [rise_mm, 'mm', percent(1.5)]),
    ];
  });
  // The mesh is a polygon: chords cut 0.011 % off the worst of them.
  const inside = one('inside', 'litres at rest', () => path().datum.volume / 1e6, [
    solid.V0_L,
    'L',
    percent(0.02),
  ]);
  return [inside, ...rows];
}

export const solidHeads: Source = {
  key: 'solid-elements-2',
  citation:
    'Independent axisymmetric solid finite elements, a second program computed for this project: torispherical and thin heads, ring baffles, another steel',
  checks: SOLID_HEADS.flatMap(checksOf),
};
