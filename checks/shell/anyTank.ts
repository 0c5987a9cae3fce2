/** Random but buildable tanks, seeded: what a workshop of this trade could weld. */
import type { Dice } from '../../core/math/dice.ts';
import type { FlowLaw } from '../../core/steel/hardening.ts';
import type { Steel } from '../../core/steel/steel.ts';
import type { Baffle, Course, Duty, GirthSeam, Head, HeadShape, Skirt, Tank } from '../../core/tank/tank.ts';
import { fromKgPerM3 } from '../../core/units.ts';

const between = (dice: Dice, low: number, high: number): number => low + (high - low) * dice.uniform();
const pick = <T>(dice: Dice, from: readonly T[]): T => from[dice.below(from.length)];
const chance = (dice: Dice, share: number): boolean => dice.uniform() < share;

export interface AnyTank {
  readonly tank: Tank;
  readonly duty: Duty;
}

export function anyTank(dice: Dice): AnyTank {
  const insideDiameter = between(dice, 120, 1200);
  const wall = between(dice, Math.max(0.8, insideDiameter / 700), Math.max(1.5, insideDiameter / 120));
  const length = insideDiameter * between(dice, 0.4, 3.5);
  const steel = anySteel(dice);
  const heads = {
    top: anyHead(dice, insideDiameter, wall, steel),
    bottom: anyHead(dice, insideDiameter, wall, steel),
  };
  const twins = chance(dice, 0.25);
  const tank: Tank = {
    name: 'any tank',
    insideDiameter,
    length,
    courses: anyCourses(dice, length, wall, steel),
    heads: twins ? { top: heads.bottom, bottom: heads.bottom } : heads,
    girthSeams: chance(dice, 0.3) ? [anySeam(dice, length, steel)] : [],
    ...(chance(dice, 0.5)
      ? { longSeam: { width: between(dice, 4, 20), strength: between(dice, 0.75, 1.1) } }
      : {}),
    baffles: chance(dice, 0.3) ? [anyBaffle(dice, insideDiameter, length, wall, steel)] : [],
    skirts: chance(dice, 0.2) ? [anySkirt(dice, wall, steel)] : [],
    girths: [
      { name: 'middle', at: length / 2 },
      { name: 'somewhere', at: length * between(dice, 0.05, 0.95) },
    ],
    openings: [],
    ...(chance(dice, 0.5)
      ? { stand: { axis: pick(dice, ['upright', 'lying'] as const), gauge: length * dice.uniform() } }
      : {}),
    water: { temperature: between(dice, 4, 30), trappedAir: chance(dice, 0.5) ? between(dice, 0, 2e6) : 0 },
  };
  return { tank, duty: anyDuty(dice, tank, wall) };
}

function anySteel(dice: Dice): Steel {
  return {
    young: between(dice, 185000, 205000),
    poisson: between(dice, 0.27, 0.31),
    density: fromKgPerM3(7900),
    biaxialFactor: between(dice, 0.9, 1.02),
    flow: anyFlow(dice),
    ...(chance(dice, 0.5)
      ? {
          rate: {
            on: pick(dice, ['yield', 'curve'] as const),
            perEfold: between(dice, 1, 6),
            reference: between(dice, 1e-5, 5e-4),
          },
        }
      : {}),
  };
}

function anyFlow(dice: Dice): FlowLaw {
  const yieldStress = between(dice, 190, 380);
  switch (dice.below(5)) {
    case 0: {
      const n = between(dice, 0.2, 0.6);
      const K = between(dice, 1000, 1600);
      return { law: 'swift', K, n, e0: (yieldStress / K) ** (1 / n) };
    }
    case 1:
      return {
        law: 'voce',
        yield: yieldStress,
        rise: between(dice, 500, 1200),
        steepness: between(dice, 1.5, 6),
      };
    case 2:
      return { law: 'ludwik', yield: yieldStress, K: between(dice, 900, 1400), n: between(dice, 0.5, 0.8) };
    case 3:
      return {
        law: 'ludwigson',
        K: between(dice, 1200, 1450),
        n: between(dice, 0.4, 0.55),
        k1: Math.log(yieldStress * 0.75),
        k2: -20,
      };
    default:
      return { law: 'two-slope', Rp02: yieldStress, Rm: between(dice, 520, 700) };
  }
}

function anyHead(dice: Dice, diameter: number, wall: number, steel: Steel): Head {
  const own = chance(dice, 0.5) ? wall : wall * between(dice, 0.8, 1.8);
  return {
    shape: anyShape(dice, diameter, own),
    wall: own,
    straightFlange: chance(dice, 0.4) ? between(dice, 3 * own, 0.06 * diameter + 3 * own) : 0,
    steel,
    ...(chance(dice, 0.4)
      ? { boss: { diameter: diameter * between(dice, 0.08, 0.25), thickness: own * between(dice, 2, 6) } }
      : {}),
  };
}

function anyShape(dice: Dice, diameter: number, wall: number): HeadShape {
  const radius = diameter / 2;
  switch (dice.below(6)) {
    case 0:
    case 1:
      return { kind: 'semi-ellipsoidal', depth: radius / between(dice, 1.2, 2.6) };
    case 2:
    case 3:
      return {
        kind: 'torispherical',
        crownRadius: diameter * between(dice, 0.75, 1),
        knuckleRadius: Math.max(diameter * between(dice, 0.06, 0.18), 3 * wall),
      };
    case 4:
      return { kind: 'hemispherical' };
    default:
      return {
        kind: 'conical',
        halfAngle: between(dice, 0.35, 1),
        knuckleRadius: Math.max(diameter * between(dice, 0.06, 0.12), 4 * wall),
      };
  }
}

function anyCourses(dice: Dice, length: number, wall: number, steel: Steel): Course[] {
  if (chance(dice, 0.7)) return [{ length, wall, steel }];
  const lower = length * between(dice, 0.3, 0.7);
  const factor = between(dice, 0.92, 1.08);
  const other: Steel = { ...steel, biaxialFactor: steel.biaxialFactor * factor };
  return [
    { length: lower, wall, steel },
    { length: length - lower, wall: wall * between(dice, 0.9, 1.15), steel: other },
  ];
}

function anySeam(dice: Dice, length: number, steel: Steel): GirthSeam {
  const strength = between(dice, 0.8, 1.1);
  return {
    at: length * between(dice, 0.3, 0.7),
    width: between(dice, 5, 15),
    steel: { ...steel, biaxialFactor: steel.biaxialFactor * strength },
  };
}

const anyBaffle = (dice: Dice, diameter: number, length: number, wall: number, steel: Steel): Baffle => ({
  at: length * between(dice, 0.2, 0.8),
  width: diameter * between(dice, 0.05, 0.15),
  thickness: wall * between(dice, 0.6, 1.2),
  steel,
});

const anySkirt = (dice: Dice, wall: number, steel: Steel): Skirt => ({
  end: pick(dice, ['top', 'bottom'] as const),
  length: between(dice, 40, 200),
  wall: wall * between(dice, 0.7, 1.3),
  steel,
});

/** Stretch at a nominal hoop stress from just under yield to near the maximum. */
function anyDuty(dice: Dice, tank: Tank, wall: number): Duty {
  const stretch = (between(dice, 250, 520) * 2 * wall) / tank.insideDiameter;
  const stretchFactor = between(dice, 1.25, 1.6);
  return {
    workingPressure: stretch / stretchFactor,
    stretchFactor,
    ...(chance(dice, 0.6) ? { pump: between(dice, 2e3, 5e4) } : {}),
    holds: chance(dice, 0.6)
      ? [
          {
            pressure: stretch * between(dice, 0.75, 0.95),
            time: between(dice, 60, 900),
            valve: pick(dice, ['open', 'shut'] as const),
          },
          { pressure: stretch, time: between(dice, 60, 7200), valve: 'open' },
        ]
      : [],
  };
}
