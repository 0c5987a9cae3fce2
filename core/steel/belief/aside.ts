/** Wall, seam and rolling: uncertain too, but not tied to the curve. Each is weighed on its own. */
import { mean, variance } from '../../stats/sample.ts';
import type { Evidence, Origin, PlateInHand, RollingStrain, WallReadings } from '../evidence/evidence.ts';
import { type Assumed, ROLLING_SHARE, SEAM, seamAbout, WALL, wallWithin } from '../prior/prior.ts';

/** A standard normal number to the value it stands for. */
export interface Aside {
  /** ln of the wall over that of the tank file. */
  readonly wall: (z: number) => number;
  /** Plastic strain of rolling; never negative. */
  readonly rolling: (z: number) => number;
  readonly seam: (z: number) => number;
}

/** One seam coupon against the seam as a whole: its own error and the scatter along a seam, relative. Our estimate. */
export const SEAM_ERROR = 0.04;
/** Scatter of wall from place to place of one sheet where only one point was measured, relative. Our estimate. */
const WALL_SCATTER = 0.008;

export const asideOf = (evidence: Evidence): Aside => {
  const { plate } = evidence;
  const wall = counted(evidence.walls).reduce<Figure>(
    (known, readings) => joined(known, wallOf(readings, plate)),
    wallBefore(plate),
  );
  const seam = counted(evidence.seams).reduce<Figure>(
    (known, { strength }) => joined(known, { mean: strength, deviation: SEAM_ERROR }),
    seamBefore(plate),
  );
  const rolling = rollingOf(counted(evidence.rolling), plate);
  const spread = Math.sqrt(Math.log1p((rolling.deviation / rolling.mean) ** 2));
  return {
    wall: (z) => Math.log(wall.mean) + (wall.deviation / wall.mean) * z,
    rolling: (z) => (rolling.mean > 0 ? rolling.mean * Math.exp(spread * z - 0.5 * spread * spread) : 0),
    seam: (z) => seam.mean + seam.deviation * z,
  };
};

/** Wall before anybody measured it: by its stated tolerance, or by custom. */
export const wallBefore = ({ wall, wallTolerance }: PlateInHand): Assumed =>
  wallTolerance === undefined ? WALL : wallWithin(wallTolerance, wall);

/** Seam before any coupon: as the tank file states it, or as strong as the plate. */
export const seamBefore = ({ seamStrength }: PlateInHand): Assumed =>
  seamStrength === undefined ? SEAM : seamAbout(seamStrength);

const counted = <Kind extends Origin>(all: readonly Kind[]): Kind[] =>
  all.filter(({ excluded }) => excluded === undefined);

type Figure = Pick<Assumed, 'mean' | 'deviation'>;

/** Two independent statements about one figure, each weighted by the inverse of its variance. */
const joined = (a: Figure, b: Figure): Figure => {
  const [wa, wb] = [a.deviation ** -2, b.deviation ** -2];
  return { mean: (wa * a.mean + wb * b.mean) / (wa + wb), deviation: (wa + wb) ** -0.5 };
};

const wallOf = ({ points, gauge }: WallReadings, plate: PlateInHand): Figure => {
  const middle = mean(points);
  const own = points.length > 2 ? variance(points) : (WALL_SCATTER * middle) ** 2;
  return { mean: middle / plate.wall, deviation: Math.sqrt(gauge ** 2 + own / points.length) / plate.wall };
};

/** The last rolling note, or what bending once past the radius leaves; nothing where the part is not rolled. */
const rollingOf = (notes: readonly RollingStrain[], plate: PlateInHand): Figure => {
  const note = notes[notes.length - 1];
  if (note !== undefined) return note;
  if (plate.radius === undefined) return { mean: 0, deviation: 0 };
  const bent = plate.wall / (4 * plate.radius);
  return { mean: ROLLING_SHARE.mean * bent, deviation: ROLLING_SHARE.deviation * bent };
};
