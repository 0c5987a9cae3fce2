/** Tanks for tests: no two numbers alike, nothing symmetric unless that is the point. */
import type { Steel } from '../steel/steel.ts';
import type { Head, Tank } from '../tank/tank.ts';

export const PLATE: Steel = {
  young: 193_000,
  poisson: 0.29,
  density: 7.9e-9,
  biaxialFactor: 0.97,
  flow: { law: 'swift', K: 1330, n: 0.46, e0: 0.0171 },
};

export const CREEPING: Steel = { ...PLATE, rate: { on: 'yield', perEfold: 3.3, reference: 2e-5 } };

const SOFT: Steel = {
  ...PLATE,
  young: 189_000,
  flow: { law: 'voce', yield: 231, rise: 870, steepness: 2.3 },
};

const bottom: Head = {
  shape: { kind: 'torispherical', crownRadius: 397, knuckleRadius: 61 },
  wall: 2.4,
  straightFlange: 13,
  steel: SOFT,
  boss: { diameter: 71, thickness: 8.3 },
};

const top: Head = {
  shape: { kind: 'semi-ellipsoidal', depth: 103 },
  wall: 1.7,
  straightFlange: 0,
  steel: PLATE,
};

/** Everything at once: courses of two walls, heads of others, boss, seam, baffle, skirt, water column. */
export const EVERYTHING: Tank = {
  name: 'everything at once',
  insideDiameter: 431,
  length: 617,
  courses: [
    { length: 350, wall: 2.1, steel: CREEPING },
    { length: 267, wall: 1.8, steel: PLATE },
  ],
  heads: { top, bottom },
  girthSeams: [{ at: 303, width: 9, steel: SOFT }],
  baffles: [{ at: 190, width: 47, thickness: 1.6, steel: PLATE }],
  skirts: [{ end: 'bottom', length: 83, wall: 2.7, steel: PLATE }],
  girths: [
    { name: 'lower', at: 121 },
    { name: 'upper', at: 470 },
  ],
  openings: [],
  stand: { axis: 'upright', gauge: 255 },
  water: { temperature: 11, trappedAir: 0 },
};

/** Both ends alike, one course, no water column: half of it is solved. */
export const EVEN: Tank = {
  name: 'even',
  insideDiameter: 431,
  length: 617,
  courses: [{ length: 617, wall: 2.1, steel: PLATE }],
  heads: { top: { ...top, straightFlange: 21 }, bottom: { ...top, straightFlange: 21 } },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [
    { name: 'middle', at: 308.5 },
    { name: 'upper', at: 470 },
  ],
  openings: [],
  water: { temperature: 11, trappedAir: 3e5 },
};
