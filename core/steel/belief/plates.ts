/** Which plate each piece of evidence speaks of, and how plates are related: same plate, same heat, or grade only. */
import { type Certificate, type Evidence, type Origin, type PlateInHand } from '../evidence/evidence.ts';
import { FACTORS } from '../prior/shape.ts';
import { scatterOf } from '../prior/scatter.ts';

/** The first is always the plate of the part to be forecast. */
export interface Plate {
  readonly name: string;
  readonly heat: string;
}

export interface Plates {
  readonly plates: readonly Plate[];
  /** Number of the plate that a certificate, coupon or trial speaks of, by its record. */
  readonly of: ReadonlyMap<Origin, number>;
}

const OWN = '(this plate)';
const OWN_HEAT = '(this heat)';

/** Excluded evidence names no plate. */
export const platesOf = (evidence: Evidence): Plates => {
  const { plate } = evidence;
  const plates: Plate[] = [{ name: plate.plate ?? OWN, heat: plate.heat ?? OWN_HEAT }];
  const of = new Map<Origin, number>();
  const place = (origin: Origin, wanted: Plate): void => {
    const known = plates.findIndex(({ name }) => name === wanted.name);
    of.set(origin, known >= 0 ? known : plates.push(wanted) - 1);
  };
  const counted = (origin: Origin): boolean => origin.excluded === undefined;
  for (const piece of [...evidence.coupons, ...evidence.trials].filter(counted))
    place(piece, plateOf(piece, plate));
  for (const certificate of evidence.certificates.filter(counted))
    place(certificate, placeOf(certificate, plate));
  return { plates, of };
};

const plateOf = (origin: Origin, own: PlateInHand): Plate => {
  const name = origin.plate ?? own.plate ?? OWN;
  if (name === (own.plate ?? OWN)) return { name, heat: own.heat ?? OWN_HEAT };
  return { name, heat: origin.heat ?? `(heat of ${name})` };
};

/** A certificate speaks of its heat: its specimen was cut from some other plate, unless it names this one. */
const placeOf = (certificate: Certificate, own: PlateInHand): Plate => {
  const heat = certificate.heat ?? own.heat ?? OWN_HEAT;
  if (certificate.plate !== undefined && certificate.plate === own.plate)
    return { name: certificate.plate, heat };
  return { name: `certificate ${certificate.name}`, heat };
};

/** Covariance of the factors of all plates before any test, square of order 4 x plates, row by row. */
export const plateCovariance = (plates: readonly Plate[], wider: number): Float64Array => {
  const n = FACTORS * plates.length;
  const covariance = new Float64Array(n * n);
  const [grade, heat, plate] = [scatterOf('grade', wider), scatterOf('heat'), scatterOf('plate')];
  plates.forEach((a, i) => {
    plates.forEach((b, j) => {
      for (let r = 0; r < FACTORS; r++)
        for (let c = 0; c < FACTORS; c++) {
          const k = FACTORS * r + c;
          const common = grade[k] + (a.heat === b.heat ? heat[k] : 0) + (i === j ? plate[k] : 0);
          covariance[n * (FACTORS * i + r) + FACTORS * j + c] = common;
        }
    });
  });
  return covariance;
};
