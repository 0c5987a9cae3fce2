/** An invented tank of the Tern Hill workshop, small, on which the judgement of the test day is tried many times over. */
import { fromLitre } from '../../core/units.ts';
import type { Head, Tank } from '../../core/tank/tank.ts';
import type { Steel } from '../../core/steel/steel.ts';
import { PLATE } from '../calibration/plates.ts';

export const STEEL: Steel = {
  grade: '1.4307',
  young: 195_000,
  poisson: 0.3,
  density: 7.9e-9,
  biaxialFactor: 1,
  flow: { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
};
const head: Head = {
  shape: { kind: 'semi-ellipsoidal', depth: 150 },
  wall: 2.6,
  straightFlange: 0,
  steel: STEEL,
};

/** Radius and wall of the plate whose evidence is invented (checks/calibration/plates.ts). */
export const TANK: Tank = {
  name: 'INVENTED: Dunlin test tank',
  insideDiameter: 2 * (PLATE.radius ?? 301) - PLATE.wall,
  length: 760,
  courses: [
    { length: 380, wall: PLATE.wall, steel: STEEL },
    { length: 380, wall: PLATE.wall, steel: STEEL },
  ],
  heads: { top: head, bottom: head },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [
    { name: 'low', at: 220 },
    { name: 'seam', at: 380 },
    { name: 'high', at: 540 },
  ],
  openings: [],
  water: { temperature: 14, trappedAir: fromLitre(0.2) },
};
/** mm³/s: 1.5 L/min. */
export const FLOW = fromLitre(1.5) / 60;
/** Outside girth of the barrel as welded, mm. */
export const GIRTH = Math.PI * (TANK.insideDiameter + 2 * PLATE.wall);
