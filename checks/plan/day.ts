/** The figures of a plan, one by one, against sums by hand on a tank whose formulas can be written down. */
import { parseTankFile } from '../../wire/tank/parseTankFile.ts';
import type { Danger } from '../../wire/plan/danger.ts';
import type { LimitKey, Plan } from '../../wire/plan/plan.ts';
import { planFor } from '../../wire/plan/planFor.ts';
import { type Check, percent, plusMinus, type Source, type Tolerance } from '../check.ts';

/**
 * 600 mm inside, 2 mm, 1000 mm between two hemispheres, E 200 GPa, nu 0.3; 12 bar, which it bears elastically; water at
 * 15 °C with 0.2 L of air at filling; gauge to 0.1 bar, one scale to 0.5 mm, thermometer to 0.1 K, supply to 50 g.
 */
export const handTank = (edition: '2008' | 'later') => ({
  hoopwright: 1,
  barrel: { insideDiameter_mm: 600, length_mm: 1000, wall_mm: 2 },
  heads: { top: { shape: 'hemispherical' }, bottom: { shape: 'hemispherical' } },
  girths: [{ name: 'middle', at_mm: 500 }],
  steel: {
    young_MPa: 200000,
    poisson: 0.3,
    density_kg_per_m3: 7900,
    flow: { law: 'ludwik', yield_MPa: 300, K_MPa: 1200, n: 0.7 },
  },
  water: { temperature_C: 15, trappedAir_L: 0.2 },
  duty: { workingPressure_bar: 8, stretchFactor: 1.5 },
  day: {
    standOffEdition: edition,
    gauges: [{ name: 'gauge', range_bar: 25, resolution_bar: 0.1 }],
    readings: [{ girth: 'middle', by: 'taped scale and camera', resolution_mm: 0.5 }],
    supply: { by: 'weighing', resolution_mL: 50 },
    thermometer: { resolution_K: 0.1 },
    plugs: [{ name: 'plug', diameter_mm: 60 }],
  },
});

const plans = new Map<string, Plan>();

function planned(edition: '2008' | 'later' = 'later'): Plan {
  const kept = plans.get(edition);
  if (kept !== undefined) return kept;
  const parsed = parseTankFile(handTank(edition));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const answer = planFor({ ...parsed, program: 'checks', hash: () => '' });
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  plans.set(edition, answer.plan);
  return answer.plan;
}

function danger<K extends Danger['kind']>(
  kind: K,
  edition: '2008' | 'later' = 'later',
): Extract<Danger, { kind: K }> {
  const found = planned(edition).dangers.find((d): d is Extract<Danger, { kind: K }> => d.kind === kind);
  if (found === undefined) throw new Error(`the plan has no danger "${kind}"`);
  return found;
}

const energy = (of: 'wall' | 'water' | 'air'): number =>
  planned().dangers.flatMap((d) => (d.kind === 'energy' && d.of === of ? [d.energy_J] : []))[0] ?? NaN;

const limit = (key: LimitKey): number => planned().limits.find((l) => l.limit === key)?.value ?? NaN;

const one = (
  id: string,
  what: string,
  ours: () => number,
  theirs: number,
  unit: string,
  tolerance: Tolerance,
  reason: string,
): Check => ({
  id: `plan-by-hand/${id}`,
  what,
  ours,
  theirs,
  unit,
  tolerance,
  reason,
  standing: 'computed from published',
});

const MEMBRANE = 'membranes on the mid-surface: r/t 150, and the edges between barrel and heads bend';
const HANDBOOK = 'K 2.15 GPa from a handbook, a unit of its last digit';
const DIGITS = 'printed digits of the sum';

export const planByHand: Source = {
  key: 'plan-by-hand',
  citation:
    'Sums by hand for the plan of one tank (600 x 2 mm, 1 m between hemispheres, 12 bar): thin membranes V r (2.5 - 2 nu)/(E t) and 3 V r (1 - nu)/(2 E t), water p²V/2K, ASME PCC-2, Windenburg & Trilling, JCGM 100:2008, Currie 1968',
  checks: [
    one(
      'fill',
      'litres to fill: cylinder, sphere, less the air',
      () => planned().water.fill_L,
      395.64,
      'L',
      plusMinus(0.02),
      `${DIGITS}; the mesh is a polygon`,
    ),
    one(
      'hoop',
      'hoop stress p r/t at 12 bar',
      () => planned().target.hoopStress_MPa,
      180.6,
      'MPa',
      plusMinus(0.05),
      DIGITS,
    ),
    one(
      'wall-per-bar',
      'share of the wall, per bar',
      () => planned().water.perBar_mL.growth,
      49.36,
      'mL/bar',
      percent(1),
      MEMBRANE,
    ),
    one(
      'water-per-bar',
      'share of the water, per bar',
      () => planned().water.perBar_mL.compression,
      18.41,
      'mL/bar',
      percent(0.6),
      HANDBOOK,
    ),
    one(
      'pumped',
      'litres to pump to 12 bar: wall, water, air',
      () => planned().water.pump_L.value,
      12 * (0.04936 + 0.01841) + 0.1844,
      'L',
      percent(1),
      MEMBRANE,
    ),
    one(
      'girth',
      'elastic girth per bar at mid-barrel, outside',
      () => planned().firstStep.slopes[0].mm_per_bar,
      0.12057,
      'mm/bar',
      percent(0.2),
      'thin wall, outside face: 2π[r²(1 - nu/2)/(Et) less half the thinning]; next order in the strain',
    ),
    one('wall-energy', 'energy of the wall, p²C/2', () => energy('wall'), 355.4, 'J', percent(1), MEMBRANE),
    one(
      'water-energy',
      'energy of the water, p²V/2K',
      () => energy('water'),
      132.6,
      'J',
      percent(0.6),
      HANDBOOK,
    ),
    one(
      'air-energy',
      'energy of 0.2 L of air at filling (PCC-2)',
      () => energy('air'),
      26.25,
      'J',
      plusMinus(0.005),
      DIGITS,
    ),
    one('plug', 'force on a 60 mm plug', () => danger('plug').force_kN, 3.393, 'kN', plusMinus(5e-4), DIGITS),
    one(
      'distance-2008',
      'stand-off for the air, edition 2008, by the cube root',
      () => danger('stand-off', '2008').air.byEnergy_m,
      0.3665,
      'm',
      plusMinus(1e-4),
      DIGITS,
    ),
    one(
      'distance-later',
      'the same, later editions',
      () => danger('stand-off').air.byEnergy_m,
      0.4617,
      'm',
      plusMinus(1e-4),
      DIGITS,
    ),
    one(
      'distance-all',
      'for all the energy as if it were gas, later editions',
      () => danger('stand-off').all.byEnergy_m,
      1.245,
      'm',
      percent(0.4),
      MEMBRANE,
    ),
    one(
      'distance-kept',
      'distance to keep: the floor governs',
      () => danger('stand-off').all.distance_m,
      30,
      'm',
      plusMinus(0),
      'the floor of the method',
    ),
    one(
      'collapse',
      'suction that crushes it, heads a third of their depth each',
      () => danger('collapse').pressure_bar ?? NaN,
      1.687,
      'bar',
      percent(0.2),
      'the barrel under 12 bar left a hair of growth',
    ),
    one(
      'water-mass',
      'mass of the water, filled and pumped',
      () => danger('mass').water_kg,
      396.3,
      'kg',
      percent(0.05),
      'litres pumped are good to 1 %',
    ),
    one(
      'tank-mass',
      'mass of the tank',
      () => danger('mass').tank_kg,
      47.87,
      'kg',
      percent(0.1),
      'mid-surface',
    ),
    one(
      'air-limit',
      'air allowed: a tenth of the energy of wall and water',
      () => limit('trappedAir_L'),
      0.3718,
      'L',
      percent(1),
      MEMBRANE,
    ),
    one(
      'uptake',
      'what the wall takes up at 0.1 %/h: 2 V rate',
      () => planned().leak.uptake_mL_per_min,
      13.19,
      'mL/min',
      percent(0.1),
      DIGITS,
    ),
    one(
      'leak-shut',
      'smallest loss in 10 min, valve shut: girth, gauge, thermometer',
      () => planned().leak.shut_mL_per_min,
      28.03,
      'mL/min',
      percent(0.2),
      DIGITS,
    ),
    one(
      'leak-open',
      'the same, valve open: with the supply',
      () => planned().leak.open_mL_per_min,
      28.82,
      'mL/min',
      percent(0.2),
      DIGITS,
    ),
    one(
      'rate',
      'growth rate over the last half hour, half of its 90 % range',
      () => planned().leak.rate_percent_per_h,
      0.03539,
      '%/h',
      percent(0.1),
      DIGITS,
    ),
  ],
};
