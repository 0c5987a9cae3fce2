/**
 * A small tank stretched before, as a reading: the only evidence loaded as the tank will be, so the only one that
 * narrows the biaxial factor. Pressure and girth give the von Mises stress at a plastic strain by the closed form of a
 * long closed cylinder (thin wall, elastic strain included); core/stretch holds the same closed form as a whole path.
 */
import type { TrialTank } from './evidence.ts';
import { rateLift } from './coupon.ts';
import { addCommon, addOwn, BIAXIAL_AT, RATE_AT, type Reading, SHARED_COUNT, WARMTH_AT } from './reading.ts';
import { FACTORS, type Factors, logStress, shapeStress, writeShares } from '../prior/shape.ts';
import { sharesAt, YOUNG } from '../prior/figures.ts';
import { BIAXIAL, RATE, ROOM, WARMTH } from '../prior/prior.ts';

const POISSON = 0.3;
const EQUIVALENT_PER_HOOP = Math.sqrt(3) / 2;

/** Relative errors of reading a flow stress off a test tank, besides those the tank states. Our estimates. */
export const TRIAL_ERROR = {
  /** Ends and seams of a tank that is not long, common to all points. */
  ends: 0.01,
  /** One point: ovality, seam peaks pulled round. */
  point: 0.004,
  /** Burst against the maximum of a perfect long cylinder: ends raise it, seams and flaws lower it. */
  burst: 0.06,
} as const;

/** Hoop strain rate of an ordinary stretch, 1/s. */
const STRETCH_RATE = 2e-5;
/** Under this plastic strain the elastic part and ovality rule the girth. */
const LEAST_PLASTIC = 0.003;

/** Von Mises stress (MPa) and plastic strain of a long closed cylinder at a pressure and a growth of its outside girth. */
export const cylinderState = (
  tank: Pick<TrialTank, 'radius' | 'wall'>,
  pressure: number,
  growth: number,
): { readonly stress: number; readonly plastic: number } => {
  const { radius, wall } = tank;
  // The outside girth grows a little less than the mid-surface, because the wall thins: solved to first order in t/r.
  const hoop = Math.log1p(growth * (1 + wall / radius));
  let stress = ((pressure * radius) / wall) * Math.exp(2 * hoop) * EQUIVALENT_PER_HOOP;
  let plastic = 0;
  for (let turn = 0; turn < 4; turn++) {
    const kirchhoff = stress / EQUIVALENT_PER_HOOP / YOUNG;
    plastic = (hoop - kirchhoff * (1 - POISSON / 2)) / EQUIVALENT_PER_HOOP;
    const through = -EQUIVALENT_PER_HOOP * plastic - 1.5 * POISSON * kirchhoff;
    const volume = 1.5 * (1 - 2 * POISSON) * kirchhoff;
    stress = ((pressure * radius) / wall) * Math.exp(hoop - through + volume) * EQUIVALENT_PER_HOOP;
  }
  return { stress, plastic };
};

/** The reading, or undefined where no point lies in the plastic range and no burst is stated. */
export const trialReading = (trial: TrialTank, plate: number, near: Factors): Reading | undefined => {
  const states = trial.points
    .map(({ pressure, growth }) => cylinderState(trial, pressure, growth))
    .filter((state) => state.plastic >= LEAST_PLASTIC);
  const rows = states.length + (trial.burst === undefined ? 0 : 1);
  if (rows === 0) return undefined;
  const reading = emptyReading(trial, plate, rows);
  states.forEach((state, k) => writePoint(reading, trial, state, k));
  if (trial.burst !== undefined) writeBurst(reading, trial, near, rows - 1);
  addErrors(reading, trial, states);
  return reading;
};

const emptyReading = (trial: TrialTank, plate: number, rows: number): Reading => ({
  origin: trial,
  kind: 'trial',
  plate,
  rows,
  observed: new Float64Array(rows),
  design: new Float64Array(FACTORS * rows),
  shared: new Float64Array(SHARED_COUNT * rows),
  noise: new Float64Array(rows * rows),
  piece: 'barrel',
});

const writePoint = (
  reading: Reading,
  trial: TrialTank,
  { stress, plastic }: { stress: number; plastic: number },
  k: number,
): void => {
  writeShares(plastic, reading.design, FACTORS * k);
  const slow = slowStress(trial, stress, plastic);
  writeShared(reading, trial, { rise: stress - slow, slow }, k);
  reading.observed[k] = Math.log(slow / (BIAXIAL.mean * shapeStress(plastic))) - warmthOf(trial);
};

/** The stress at the reference rate. */
const slowStress = (trial: TrialTank, stress: number, ep: number): number =>
  stress - rateLift((trial.rate ?? STRETCH_RATE) / EQUIVALENT_PER_HOOP, ep);

const warmerBy = (trial: TrialTank): number => (trial.temperature ?? ROOM) - ROOM;
const warmthOf = (trial: TrialTank): number => WARMTH.mean * warmerBy(trial);

/** Fills the row of shared unknowns. */
const writeShared = (
  { shared }: Reading,
  trial: TrialTank,
  { rise, slow }: { rise: number; slow: number },
  k: number,
): void => {
  shared[SHARED_COUNT * k + RATE_AT] = (rise / slow) * RATE.deviation;
  shared[SHARED_COUNT * k + BIAXIAL_AT] = BIAXIAL.deviation / BIAXIAL.mean;
  shared[SHARED_COUNT * k + WARMTH_AT] = WARMTH.deviation * warmerBy(trial);
};

/** Largest pressure of a long closed cylinder of unit wall over radius, as a logarithm, and its plastic strain. */
export const cylinderMaximum = (factors: Factors): { readonly log: number; readonly plastic: number } => {
  let best = { log: -Infinity, plastic: 0 };
  for (let ep = 0.05; ep < 0.8; ep *= 1.01) {
    const log = logStress(factors, ep);
    const hoop = Math.exp(log) / EQUIVALENT_PER_HOOP / YOUNG;
    const elastic = hoop * (1 - POISSON / 2 + 1.5 * POISSON + 1.5 * (1 - 2 * POISSON));
    const pressure = log - Math.log(EQUIVALENT_PER_HOOP) - 2 * EQUIVALENT_PER_HOOP * ep - elastic;
    if (pressure > best.log) best = { log: pressure, plastic: ep };
  }
  return best;
};

const writeBurst = (reading: Reading, trial: TrialTank, near: Factors, k: number): void => {
  const most = cylinderMaximum(near);
  const shares = sharesAt(most.plastic);
  reading.design.set(shares, FACTORS * k);
  // At the maximum the stress is known well enough to turn the rise by rate into a fraction.
  const slow = BIAXIAL.mean * Math.exp(logStress(near, most.plastic));
  const rise = slow - slowStress(trial, slow, most.plastic);
  writeShared(reading, trial, { rise, slow }, k);
  const along = shares.reduce((sum, share, j) => sum + share * near[j], 0);
  const log = Math.log(((trial.burst ?? 0) * trial.radius) / trial.wall / BIAXIAL.mean);
  reading.observed[k] = log - rise / slow - warmthOf(trial) - most.log + along;
};

const addErrors = (reading: Reading, trial: TrialTank, states: readonly { plastic: number }[]): void => {
  const { noise, rows } = reading;
  const all = (value: number): number[] => Array.from({ length: rows }, () => value);
  addCommon(noise, all(trial.gaugeDeviation ?? 0.01));
  addCommon(noise, all(trial.wallDeviation ?? 0.01));
  addCommon(noise, all(TRIAL_ERROR.ends));
  addOwn(noise, all(TRIAL_ERROR.point));
  const growth = trial.growthDeviation ?? 0.0005;
  const perStrain = ({ plastic: ep }: { plastic: number }): number => {
    const hardening = Math.log(shapeStress(ep * 1.05) / shapeStress(ep * 0.95)) / (0.1 * ep);
    return hardening / EQUIVALENT_PER_HOOP + 2;
  };
  addOwn(
    noise,
    [...states.map((state) => growth * perStrain(state)), ...all(TRIAL_ERROR.burst)].slice(0, rows),
  );
};
