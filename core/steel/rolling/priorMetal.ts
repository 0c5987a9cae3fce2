/** The metal that rolling is computed with before anything is known of it but its grade. */
import { flowOf } from '../flow.ts';
import { type Metal, metalOf } from '../plane.ts';
import { NOMINAL_YOUNG } from '../coupon/record.ts';
import { type PlateKind, platePrior } from '../prior/prior.ts';
import { flowLawOf } from '../prior/shape.ts';

/** Poisson's ratio of austenitic steel (EN 10088-1, from memory, high confidence). */
const POISSON = 0.3;

/** Typical curve of the grade. Rolling strain hardly depends on it: the radius sets the strain. */
export const priorMetal = (plate: PlateKind): Metal =>
  metalOf(NOMINAL_YOUNG, POISSON, flowOf(flowLawOf(platePrior(plate).factors)));
