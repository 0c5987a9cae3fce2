/** The tank that the crew of a rehearsal does not know: as drawn, but of a steel, a wall and an air of its own. */
import type { Dice } from '../../math/dice.ts';
import { RATE } from '../../steel/prior/prior.ts';
import { REFERENCE_RATE } from '../../steel/prior/shape.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Course, Tank } from '../../tank/tank.ts';

/** Standard deviations of what is hidden, as fractions: our choice for rehearsals, no source. */
const SPREAD = { flow: 0.04, wall: 0.015, air: 0.4 } as const;
/** Air over the volume of the tank where the file states none: half a litre in a thousand, more or less. Our choice. */
const USUAL_AIR = 5e-4;

/** Faults that are in the tank before it is filled. */
export type BuiltIn = 'soft course' | 'weak seam';

/** The tank with another steel and another wall, for tanks of whose steel there is no evidence to draw from. */
export function variedTank(tank: Tank, dice: Dice): Tank {
  const flow = Math.exp(SPREAD.flow * dice.named('flow').normal());
  const wall = Math.exp(SPREAD.wall * dice.named('wall').normal());
  const perEfold = RATE.mean * Math.exp(RATE.deviation * dice.named('rate').normal());
  const rate = { on: 'yield', perEfold, reference: REFERENCE_RATE } as const;
  const made = new Map<Steel, Steel>();
  // Parts of one steel stay of one steel.
  const of = (steel: Steel): Steel => {
    const one = made.get(steel) ?? { rate, ...steel, biaxialFactor: flow * steel.biaxialFactor };
    made.set(steel, one);
    return one;
  };
  const part = <T extends { readonly steel: Steel }>(one: T): T => ({ ...one, steel: of(one.steel) });
  return {
    ...tank,
    courses: tank.courses.map((course) => ({ ...part(course), wall: wall * course.wall })),
    heads: { top: part(tank.heads.top), bottom: part(tank.heads.bottom) },
    girthSeams: tank.girthSeams.map(part),
    baffles: tank.baffles.map(part),
    skirts: tank.skirts.map(part),
  };
}

/** Air and faults that nobody knows of. */
export function hiddenTank(tank: Tank, dice: Dice, faults: readonly BuiltIn[] = []): Tank {
  const aired = { ...tank, water: { ...tank.water, trappedAir: airIn(tank, dice.named('air')) } };
  return faults.reduce(withFault, aired);
}

function airIn(tank: Tank, dice: Dice): number {
  const { trappedAir } = tank.water;
  const volume = (Math.PI / 4) * tank.insideDiameter ** 2 * (tank.length + tank.insideDiameter / 3);
  return (trappedAir > 0 ? trappedAir : USUAL_AIR * volume) * Math.exp(SPREAD.air * dice.normal());
}

function withFault(tank: Tank, fault: BuiltIn): Tank {
  return fault === 'soft course' ? softCourse(tank) : weakSeam(tank);
}

/** Flow stress of a soft course, and of a weak seam, over that of a sound one. */
const SOFT = 0.92;
const WEAK = 0.8;

/** The uppermost course is soft; a barrel of one course is taken as two. */
function softCourse(tank: Tank): Tank {
  const [first] = tank.courses;
  const half: Course = { ...first, length: first.length / 2 };
  const courses = tank.courses.length > 1 ? tank.courses : [half, half];
  const last = courses.length - 1;
  return {
    ...tank,
    courses: courses.map((course, i) =>
      i === last ? { ...course, steel: weaker(course.steel, SOFT) } : course,
    ),
  };
}

/** The girth seam nearest the middle is weak; where there is none, one is put there, 6 mm wide. */
function weakSeam(tank: Tank): Tank {
  const middle = tank.length / 2;
  const [nearest] = [...tank.girthSeams].sort((a, b) => Math.abs(a.at - middle) - Math.abs(b.at - middle));
  const seam = nearest ?? { at: middle, width: 6, steel: tank.courses[0].steel };
  const others = tank.girthSeams.filter((one) => one !== nearest);
  return { ...tank, girthSeams: [...others, { ...seam, steel: weaker(seam.steel, WEAK) }] };
}

const weaker = (steel: Steel, factor: number): Steel => ({
  ...steel,
  biaxialFactor: factor * steel.biaxialFactor,
});
