import {
  clampedMoment,
  decayOf,
  type EdgeHead,
  ellipsoidMembrane,
  junctionStress,
} from '../../core/tank/edge.ts';
import { plateDeflection, plateLimitPressure, plateStress, type RoundPlate } from '../../core/tank/plate.ts';
import { type Check, PRINTED, plusMinus, type Source } from '../check.ts';

const edge = { radius: 250, wall: 2, young: 2e5, poisson: 0.3, pressure: 1 };
const UNIT = (edge.pressure * edge.radius) / edge.wall;
const two = { kind: 'semi-ellipsoidal', depth: 125 } as const;

/** Largest of a stress over the first three decay lengths, read every hundredth of one. */
const largest = (head: EdgeHead, face: 'meridionalOutside' | 'hoopOutside'): number => {
  let most = 0;
  for (let i = 0; i <= 300; i++) {
    most = Math.max(most, junctionStress(edge, head, (0.01 * i) / decayOf(edge))[face]);
  }
  return most;
};

const one = (
  name: string,
  what: string,
  ours: () => number,
  theirs: number,
  step: number,
  reason = PRINTED,
): Check => ({
  id: `timoshenko-shells/${name}`,
  what,
  ours,
  theirs,
  unit: '1',
  tolerance: plusMinus(step),
  reason,
  standing: 'from memory',
});

const SCALED =
  'the handbook takes four times its rounded excess over the hemisphere’s membrane stress (4 x 0.0005)';

export const elasticShells: Source = {
  key: 'timoshenko-shells',
  citation: 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., §§114-118',
  checks: [
    one('decay', 'beta sqrt(r t), Poisson 0.3', () => decayOf(edge) * Math.sqrt(500), 1.2854, 5e-5),
    one(
      'clamped',
      'clamped closed cylinder: M0/(p r t)',
      () => clampedMoment(edge) / (250 * 2),
      0.2572,
      5e-5,
    ),
    one(
      'sphere-axial',
      'cylinder and hemisphere: largest axial stress over pa/2h',
      () => (2 * largest({ kind: 'hemispherical' }, 'meridionalOutside')) / UNIT,
      1.293,
      5e-4,
    ),
    one(
      'sphere-place',
      'where it is: beta x',
      () => placeOfLargest(),
      Math.PI / 4,
      0.005,
      'read every hundredth of a decay length',
    ),
    one(
      'sphere-hoop',
      'cylinder and hemisphere: largest hoop stress over pa/h',
      () => largest({ kind: 'hemispherical' }, 'hoopOutside') / UNIT,
      1.032,
      1e-3,
      'the handbook rounds the two parts (a unit of the last digit)',
    ),
    one(
      'ellipsoid-axial',
      'cylinder and 2:1 ellipsoid: largest axial stress over pa/2h',
      () => (2 * largest(two, 'meridionalOutside')) / UNIT,
      2.172,
      2e-3,
      SCALED,
    ),
    one(
      'ellipsoid-hoop',
      'cylinder and 2:1 ellipsoid: largest hoop stress over pa/h',
      () => largest(two, 'hoopOutside') / UNIT,
      1.128,
      4e-3,
      'four times the rounding of the hemisphere’s value (4 x 0.001)',
    ),
    one(
      'ellipsoid-pole',
      'ellipsoid 2:1: stress at the pole over pa/t',
      () => ellipsoidMembrane(1, { a: 250, b: 125 }, 2).pole / UNIT,
      1,
      1e-12,
      'closed form',
    ),
    one(
      'ellipsoid-flat',
      'ellipsoid 250 x 100: hoop stress at the equator over pa/t, 1 - 250²/(2 x 100²)',
      () => ellipsoidMembrane(1, { a: 250, b: 100 }, 2).equatorHoop / UNIT,
      -2.125,
      1e-12,
      'closed form',
    ),
    one(
      'ellipsoid-equator',
      'ellipsoid 2:1: hoop stress at the equator over pa/t',
      () => ellipsoidMembrane(1, { a: 250, b: 125 }, 2).equatorHoop / UNIT,
      -1,
      1e-12,
      'closed form',
    ),
  ],
};

function placeOfLargest(): number {
  let [place, most] = [0, 0];
  for (let i = 0; i <= 300; i++) {
    const stress = junctionStress(
      edge,
      { kind: 'hemispherical' },
      (0.01 * i) / decayOf(edge),
    ).meridionalOutside;
    if (stress > most) [place, most] = [0.01 * i, stress];
  }
  return place;
}

const limit = (of: RoundPlate): number => (plateLimitPressure(of, 200) * 1e4) / (200 * 25);

const plate = { radius: 100, thickness: 10, edge: 'clamped' } as const;
const free = { ...plate, edge: 'free to turn' } as const;

export const roundPlates: Source = {
  key: 'timoshenko-plates',
  citation:
    'Timoshenko & Woinowsky-Krieger, §16 (elastic); Hodge, Limit Analysis of Rotationally Symmetric Plates and Shells, 1963',
  checks: [
    one(
      'plate-clamped',
      'clamped plate: largest stress over p (a/t)²',
      () => plateStress(plate, 1, 0.3) / 100,
      0.75,
      1e-9,
      'closed form',
    ),
    one(
      'plate-free',
      'plate free to turn: largest stress over p (a/t)²',
      () => plateStress(free, 1, 0.3) / 100,
      1.24,
      5e-3,
    ),
    one(
      'plate-clamped-deflection',
      'clamped plate: deflection over p a⁴/(E t³), Poisson 0.3',
      () => (plateDeflection(plate, 1, edge) * edge.young * 1e3) / 1e8,
      0.171,
      5e-4,
    ),
    one(
      'plate-deflection',
      'deflection free to turn over clamped',
      () => plateDeflection(free, 1, edge) / plateDeflection(plate, 1, edge),
      4.08,
      5e-3,
    ),
    one('plate-limit', 'clamped plate: limit pressure a²/M0, von Mises', () => limit(plate), 12.5, 0.05),
    one(
      'plate-limit-free',
      'plate free to turn: limit pressure a²/M0, von Mises',
      () => limit(free),
      6.51,
      5e-3,
    ),
  ].map((check) => ({ ...check, id: check.id.replace('timoshenko-shells', 'timoshenko-plates') })),
};
