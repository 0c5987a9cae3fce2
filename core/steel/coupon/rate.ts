/** Strain rate as measured, where the record has time. */
import type { CouponFinding } from './finding.ts';
import { quantile } from '../../stats/sample.ts';
import { median } from './order.ts';
import type { CouponCurve, CouponTest } from './record.ts';

/** Plastic strains between which the rate is taken: those of first yield and of a stretch with room to spare. */
const FROM = 0.002;
const TO = 0.1;
/** Slowest and fastest rates of ISO 6892-1 (ranges 1 and 4 with their 20 %: 7e-5 and 6.7e-3 1/s; from memory, high). */
const SLOWEST = 5.6e-5;
const FASTEST = 8e-3;
/** Rates of the slow and the fast tenth that differ by more are two rates. */
const STEADY = 3;

/** Median of the rates between neighbouring points, 1/s. */
export const rateOf = (
  test: CouponTest,
  curve: CouponCurve,
  young: number,
  findings: CouponFinding[],
): number | undefined => {
  const { time } = test;
  if (!time) {
    findings.push({ kind: 'no-rate', why: 'no time' });
    return undefined;
  }
  const steps = stepsOf(curve, time, young);
  const forward = steps.filter(({ dt }) => dt > 0);
  const trouble =
    steps.length < 3 ? 'few points' : forward.length < 0.9 * steps.length ? 'time runs back' : undefined;
  if (trouble) {
    findings.push({ kind: 'no-rate', why: trouble });
    return undefined;
  }
  const rates = forward.map(({ de, dt }) => de / dt);
  const rate = median(rates);
  judge(rate, rates, findings);
  return rate > 0 ? rate : undefined;
};

const stepsOf = ({ strain, stress, at }: CouponCurve, time: readonly number[], young: number) =>
  strain
    .map((e, k) => ({ k, plastic: e - stress[k] / young }))
    .filter(({ k, plastic }) => k > 0 && plastic >= FROM && plastic <= TO)
    .map(({ k }) => ({ de: strain[k] - strain[k - 1], dt: time[at[k]] - time[at[k - 1]] }));

const judge = (rate: number, rates: readonly number[], findings: CouponFinding[]): void => {
  const factor = quantile(rates, 0.9) / quantile(rates, 0.1);
  if (rates.length >= 10 && factor > STEADY) findings.push({ kind: 'rate-varies', factor });
  if (rate < SLOWEST || rate > FASTEST) findings.push({ kind: 'rate-unusual', rate });
};
