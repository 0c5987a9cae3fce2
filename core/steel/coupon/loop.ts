/** The loading curve: what is left of a record when unloading loops and dips of the force are taken out. */
import type { CouponFinding } from './finding.ts';
import { picked } from './curve.ts';
import { greatest, indices, least, median, noiseOf, placeOfGreatest } from './order.ts';
import { NOMINAL_YOUNG, type CouponCurve, type CouponRecord } from './record.ts';

/** Up and down below this part of the highest stress is shaking at low load and stays in. */
const SHAKEN = 0.25;

/**
 * Points of a loop or dip are left out of the curve and each is a finding. Where the force dips and comes back at a
 * much larger extension the metal did not follow: `grip-slip`.
 */
export const loadingCurve = (record: CouponRecord, findings: CouponFinding[]): CouponCurve =>
  withoutDips(withoutLoops(record, findings), findings);

/** Falls of strain smaller than this are noise of the extensometer, not unloading. */
const LOOP_STRAIN = 1.5e-4;

const withoutLoops = (record: CouponRecord, findings: CouponFinding[]): CouponCurve => {
  const { strain, stress, at } = record;
  const low = SHAKEN * greatest(stress);
  const keep: number[] = [];
  let far = 0;
  for (let k = 0; k < strain.length; k++) {
    if (stress[far] > low && unloads(record, far, k)) {
      const back = backOnCurve(record, far, k);
      while (keep.length > 0 && keep[keep.length - 1] > far) keep.pop();
      if (back === strain.length) {
        findings.push(endWithoutReturn(record, far));
        break;
      }
      findings.push({ kind: 'loop', at: at[far], from: stress[far], to: least(stress.slice(far, back)) });
      k = back;
    }
    keep.push(k);
    if (strain[k] >= strain[far]) far = k;
  }
  return picked(record, keep);
};

const unloads = ({ strain, stress }: CouponCurve, far: number, k: number): boolean => {
  const back = strain[far] - strain[k];
  return back > LOOP_STRAIN && stress[far] - stress[k] > 0.3 * NOMINAL_YOUNG * back;
};

const backOnCurve = ({ strain, stress }: CouponCurve, far: number, from: number): number => {
  let k = from;
  while (k < strain.length && strain[k] < strain[far] && stress[k] < stress[far]) k++;
  return k;
};

/** A break with the gauge already unloading by a tenth means that the neck was elsewhere. */
const endWithoutReturn = (record: CouponRecord, far: number): CouponFinding => {
  const last = record.stress[record.stress.length - 1];
  return record.broke || last > 0.5 * record.stress[far]
    ? { kind: 'outside-gauge', at: record.at[far] }
    : { kind: 'let-go', at: record.at[far], stress: record.stress[far] };
};

/** A dip takes away this part of the force, and more than this many times the noise of the force. */
const DIP = 0.02;
const DIP_NOISE = 8;
/** The force is back when it is this near to what it was. */
const BACK = 0.998;

/** Dips before the maximum: a pause, or grips that slipped. */
const withoutDips = (curve: CouponCurve, findings: CouponFinding[]): CouponCurve => {
  const { stress } = curve;
  const top = placeOfGreatest(stress);
  const noise = DIP_NOISE * noiseOf(stress);
  const out = new Set<number>();
  let high = 0;
  for (let k = 1; k <= top; k++) {
    if (stress[k] < BACK * stress[high]) continue;
    const drop = stress[high] - least(stress.slice(high, k + 1));
    if (drop > Math.max(DIP * stress[high], noise) && stress[high] > SHAKEN * stress[top]) {
      findings.push(dipFinding(curve, high, { back: k, drop }));
      for (let j = high + 1; j < k; j++) out.add(j);
      high = k;
    } else if (stress[k] >= stress[high]) high = k;
  }
  return out.size === 0
    ? curve
    : picked(
        curve,
        indices(stress.length).filter((k) => !out.has(k)),
      );
};

/** Extension that runs on by more than this in a dip, and by more than so many ordinary steps, was not the metal's. */
const RAN_ON = 0.005;
const RAN_STEPS = 4;

const dipFinding = (
  { strain, stress, at }: CouponCurve,
  high: number,
  { back, drop }: { back: number; drop: number },
): CouponFinding => {
  const ran = strain[back] - strain[high];
  const usual = median(
    indices(5).map((j) => Math.abs((strain[high - j] ?? 0) - (strain[high - j - 1] ?? 0))),
  );
  const plastic = strain[high] - stress[high] / NOMINAL_YOUNG;
  return ran > Math.max(RAN_ON, RAN_STEPS * usual)
    ? { kind: 'grip-slip', at: at[high], drop, strain: ran, plastic }
    : { kind: 'dip', at: at[high], drop };
};
