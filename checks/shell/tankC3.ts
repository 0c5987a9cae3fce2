/** The reference tank: barrel 250 x 2 mm (mid-surface), half length 400, heads 250 x 125, Swift steel. */
import type { Steel } from '../../core/steel/steel.ts';
import type { Head, Tank } from '../../core/tank/tank.ts';

export const SWIFT_STEEL: Steel = {
  young: 193000,
  poisson: 0.29,
  density: 7.9e-9,
  biaxialFactor: 1,
  flow: { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
};

const head: Head = {
  shape: { kind: 'semi-ellipsoidal', depth: 124 },
  wall: 2,
  straightFlange: 0,
  steel: SWIFT_STEEL,
};

export const TANK_C3: Tank = {
  name: 'C3',
  insideDiameter: 498,
  length: 800,
  courses: [{ length: 800, wall: 2, steel: SWIFT_STEEL }],
  heads: { top: head, bottom: head },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [
    { name: 'middle', at: 400 },
    { name: '100 mm from the tangent line', at: 100 },
  ],
  openings: [],
  water: { temperature: 15, trappedAir: 0 },
};
