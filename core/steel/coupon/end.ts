/** How a test ends decides which figures it may give: Rm only past the maximum, A only up to a break inside the gauge. */
import type { CouponFinding } from './finding.ts';
import { greatest, least, placeOfGreatest } from './order.ts';
import { NOMINAL_YOUNG, type CouponCurve, type CouponRecord } from './record.ts';

export interface CouponEnd {
  /** Place of the highest stress on the loading curve. */
  readonly top: number;
  /** Rm, MPa; absent where it was not reached. */
  readonly strength?: number;
  /** The highest force lies on the loading curve, so Ag can be read there. */
  readonly uniform: boolean;
  /** The last point of the curve gives A, or a lower limit of it. */
  readonly elongation: boolean;
}

interface Stages {
  /** Up to the break. */
  readonly whole: CouponRecord;
  /** Up to where the extensometer came off. */
  readonly clipped: CouponRecord;
  /** Without loops. */
  readonly curve: CouponCurve;
}

/** Force this far below its maximum: the maximum has been passed. */
const PASSED = 0.98;
/** A neck takes at least this much of the maximum force away before it breaks. */
const NECKED = 0.97;
/** Rise of stress over the last tenth of the record's strain, over the highest: less is "at the maximum". */
const STILL_RISING = 0.01;

export const endOf = (stages: Stages, findings: CouponFinding[]): CouponEnd => {
  const { whole, clipped, curve } = stages;
  beginning(curve, findings);
  const top = placeOfGreatest(curve.stress);
  const highest = greatest(whole.stress);
  const tail = whole.stress.slice(placeOfGreatest(whole.stress));
  const passed = whole.broke || least(tail) < PASSED * highest;
  const flat = flatTop(curve);
  if (flat !== undefined) findings.push({ kind: 'flat-top', at: curve.at[flat], stress: highest });
  const rising = !passed && risesAtEnd(curve);
  if (rising) findings.push({ kind: 'ends-rising', stress: highest, strain: curve.strain[top] });
  else if (!passed) findings.push({ kind: 'ends-at-maximum' });
  const kept = clipped === whole;
  const cut = findings.some(({ kind }) => kind === 'outside-gauge' || kind === 'let-go');
  if (kept && passed && !cut) breakOf(whole, curve, findings);
  return {
    top,
    ...(rising || flat !== undefined ? {} : { strength: highest }),
    uniform: !rising && flat === undefined && curve.stress[top] >= 0.995 * highest,
    elongation: kept && passed && !cut,
  };
};

const beginning = ({ strain, stress }: CouponCurve, findings: CouponFinding[]): void => {
  if (strain[0] - stress[0] / NOMINAL_YOUNG > 0.002)
    findings.push({ kind: 'begins-late', strain: strain[0] });
  else if (stress[0] > 0.08 * greatest(stress)) findings.push({ kind: 'begins-loaded', stress: stress[0] });
};

const risesAtEnd = ({ strain, stress }: CouponCurve): boolean => {
  const last = strain.length - 1;
  const k = strain.findIndex((value) => value >= strain[0] + 0.9 * (strain[last] - strain[0]));
  return stress[last] - stress[Math.min(k, last - 1)] > STILL_RISING * greatest(stress);
};

/** As many equal highest readings in a row are no plateau of steel where the force was still rising before them. */
const FLAT = 6;

/** First of the equal readings, where the rise over as much strain before them was more than this part of the force. */
const flatTop = ({ strain, stress }: CouponCurve): number | undefined => {
  const first = placeOfGreatest(stress);
  let last = first;
  while (stress[last + 1] === stress[first]) last++;
  if (last - first + 1 < FLAT) return undefined;
  const back = strain.findIndex((value) => value >= strain[first] - (strain[last] - strain[first]));
  return stress[first] - stress[back] > STILL_RISING * stress[first] ? first : undefined;
};

const breakOf = (whole: CouponRecord, curve: CouponCurve, findings: CouponFinding[]): void => {
  const last = curve.stress.length - 1;
  const ratio = curve.stress[last] / greatest(curve.stress);
  if (!whole.broke) findings.push({ kind: 'ends-before-break', ratio });
  else if (ratio > NECKED) findings.push({ kind: 'no-neck', at: curve.at[last], strain: curve.strain[last] });
};
