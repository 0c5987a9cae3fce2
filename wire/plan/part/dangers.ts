/** What can hurt somebody on the day, with its figures; what can be compared stands largest first. */
import {
  airVolume,
  draining,
  plugForce,
  type StandOff,
  standOff,
  type Stored,
  waterDensity,
} from '@hoopwright/core/stretch';
import { flowOf, type Steel } from '@hoopwright/core/steel';
import { knuckleVerdict, type Head, type Tank } from '@hoopwright/core/tank';
import { toBar, toKilogram, toLitre } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import type { Danger, StandOffFigures } from '../danger.ts';
import { inBar, perMinute } from '../inBar.ts';
import type { SetUp } from '../setup/setUp.ts';

export interface DangerGivens {
  readonly tank: Tank;
  readonly foreseen: Foreseen;
  readonly setUp: SetUp;
  readonly stored: Stored;
}

export function dangersOf(givens: DangerGivens): Danger[] {
  return [
    ...energies(givens),
    standOffDanger(givens),
    ...forces(givens),
    releaseDanger(givens.setUp),
    reliefDanger(givens),
    massDanger(givens),
    collapseDanger(givens),
    ...knuckles(givens),
    waterDanger(givens.setUp),
    coldDanger(givens),
  ];
}

/** N mm to J. */
const joule = (energy: number): number => energy / 1e3;

function energies({ tank, foreseen, stored }: DangerGivens): Danger[] {
  const { trappedAir } = tank.water;
  const { target } = foreseen.ladder;
  const list: Extract<Danger, { kind: 'energy' }>[] = [
    { kind: 'energy', of: 'wall', energy_J: joule(stored.wall) },
    {
      kind: 'energy',
      of: 'water',
      energy_J: joule(stored.water),
      volume_L: toLitre(foreseen.forecast.datum.volume),
    },
    {
      kind: 'energy',
      of: 'air',
      energy_J: joule(stored.air),
      filling_L: toLitre(trappedAir),
      underPressure_L: toLitre(airVolume(trappedAir, target)),
      perLitre_J: joule(stored.perLitreOfAir),
    },
  ];
  return list.sort((a, b) => b.energy_J - a.energy_J);
}

function standOffDanger({ setUp, stored }: DangerGivens): Danger {
  return {
    kind: 'stand-off',
    edition: setUp.edition,
    air: distances(standOff(stored.air, setUp.edition), stored.air),
    all: distances(standOff(stored.all, setUp.edition), stored.all),
    ...(setUp.distance === undefined ? {} : { stated_m: setUp.distance / 1e3 }),
  };
}

const distances = (off: StandOff, energy: number): StandOffFigures => ({
  energy_J: joule(energy),
  tnt_kg: off.tnt,
  byEnergy_m: off.byEnergy / 1e3,
  distance_m: off.distance / 1e3,
  floorGoverns: off.floorGoverns,
});

/** Plugs and hose, largest force first. */
function forces({ setUp, foreseen }: DangerGivens): Danger[] {
  const { target } = foreseen.ladder;
  const plugs = setUp.plugs
    .map(
      ({ name, diameter }): Extract<Danger, { kind: 'plug' }> => ({
        kind: 'plug',
        name,
        diameter_mm: diameter,
        force_kN: plugForce(diameter, target) / 1e3,
      }),
    )
    .sort((a, b) => b.force_kN - a.force_kN);
  const hose =
    setUp.hose === undefined
      ? {}
      : { diameter_mm: setUp.hose, force_kN: plugForce(setUp.hose, target) / 1e3 };
  return [...plugs, { kind: 'hose', ...hose }];
}

const releaseDanger = ({ release }: SetUp): Danger => ({ kind: 'release', ...release });

function reliefDanger({ setUp, foreseen }: DangerGivens): Danger {
  const { relief, pump } = setUp;
  return {
    kind: 'relief',
    ...(relief === undefined
      ? {}
      : { opens_bar: inBar(relief.opens), over_percent: 100 * (relief.opens / foreseen.ladder.target - 1) }),
    ...(relief?.flow === undefined ? {} : { flow_L_per_min: perMinute(relief.flow) }),
    ...(pump.flow === undefined ? {} : { pump_L_per_min: perMinute(pump.flow) }),
  };
}

function massDanger({ tank, foreseen, setUp }: DangerGivens): Danger {
  const { forecast } = foreseen;
  const end = forecast.held ?? forecast.arrived;
  const volume = forecast.datum.volume + (end?.pumped.all ?? 0);
  const water = toKilogram(waterDensity(tank.water.temperature) * volume);
  const metal = toKilogram(forecast.mass);
  return {
    kind: 'mass',
    tank_kg: metal,
    water_kg: water,
    all_kg: water + metal,
    ...(setUp.floor === undefined ? {} : { carries_kg: setUp.floor }),
  };
}

/** After the stretch the barrel is wider and thinner: that one is drained. Heads count as a third of their depth each. */
function collapseDanger({ tank, foreseen }: DangerGivens): Danger {
  const { released, datum } = foreseen.forecast;
  const growth = released?.left.largest.growth ?? 0;
  const steel = tank.courses[0].steel;
  const diameter = tank.insideDiameter * (1 + growth);
  const wall = released?.wall.thinnest ?? Math.min(...tank.courses.map((c) => c.wall));
  const depth = Math.max(0, datum.height - tank.length) / 2;
  const length = tank.length + (2 / 3) * depth;
  // A ring shorter than this is stiffer than the formula can say.
  if (length / diameter <= 0.45 * Math.sqrt(wall / diameter) + 0.05)
    return { kind: 'collapse', ventMustBeOpen: false };
  const { collapse, margin, ventMustBeOpen } = draining({
    diameter,
    length,
    wall,
    young: steel.young,
    poisson: steel.poisson,
  });
  return { kind: 'collapse', pressure_bar: toBar(collapse), margin, ventMustBeOpen };
}

function knuckles({ tank, foreseen }: DangerGivens): Danger[] {
  return (['top', 'bottom'] as const).flatMap((end): Danger[] => {
    const head = tank.heads[end];
    const { verdict, because, pressures } = knuckleVerdict(head, {
      pressure: foreseen.ladder.target,
      proof: proofOf(head.steel, head),
      insideDiameter: tank.insideDiameter,
    });
    if (verdict === 'no knuckle') return [];
    const [lowest] = pressures
      .filter((one) => one.outside.length === 0 && one.says !== 'knuckle yields through')
      .sort((a, b) => a.pressure - b.pressure);
    const published =
      lowest === undefined ? {} : { lowest: { name: lowest.name, pressure_bar: toBar(lowest.pressure) } };
    return [
      { kind: 'knuckle', head: end, verdict, because, at_bar: inBar(foreseen.ladder.target), ...published },
    ];
  });
}

/** Rp0.2 of the head as it stands: spinning and pressing have moved it along its curve. */
function proofOf(steel: Steel, { formingStrain = 0 }: Head): number {
  const flow = new Float64Array(2);
  flowOf(steel.flow, 1).at(formingStrain + 0.002, flow);
  return flow[0];
}

/** Usual limit for test water in austenitic steel, ppm (from memory, high confidence). */
const CHLORIDE_LIMIT = 50;

const waterDanger = ({ chloride }: SetUp): Danger => ({
  kind: 'water',
  ...(chloride === undefined ? {} : { chloride_ppm: chloride }),
  limit_ppm: CHLORIDE_LIMIT,
});

/** Metal of a cold-stretched vessel between about 7 and 48 °C (from memory, medium confidence). */
export const METAL_FROM = 7;

const coldDanger = ({ tank, setUp }: DangerGivens): Danger => ({
  kind: 'cold',
  ...(setUp.site === undefined ? {} : { site_C: setUp.site }),
  water_C: tank.water.temperature,
  metalFrom_C: METAL_FROM,
});
