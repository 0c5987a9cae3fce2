/**
 * The first step, far below yield: from litres and pressure at a few points, the air that was trapped and the zero of the
 * gauge; from girth and pressure, the elastic slope of each girth against the model; from a shut valve, a first loss.
 *
 * Litres drawn at true pressure p: drawn(p) = k d(p) + V0 p/(pa + p) + q, with d the forecast without air, k how much
 * softer or stiffer the tank (and how true the stroke) is, V0 the air at filling (Boyle), q the litres before the water
 * takes; the gauge reads p + z. Least squares with what is known of k, q and z beforehand (Gauss-Newton; the air alone
 * is curved in p, and gently). The range of V0 is cut at zero: no air is the least there can be.
 */
import { cholesky, solveCholesky } from '../../math/cholesky.ts';
import { normalBelow, normalQuantile } from '../../stats/normal.ts';
import { airCompliance, airSwallows } from '../water.ts';

export interface FirstReading {
  /** As the gauge reads, MPa. */
  readonly pressure: number;
  /** mm³ since the vent was shut. */
  readonly drawn: number;
}

export interface FirstGivens {
  readonly readings: readonly FirstReading[];
  /** What the forecast draws without any air, mm³. */
  readonly drawnWithoutAir: (pressure: number) => number;
  readonly spread: FirstSpread;
}

/** Standard deviations of what is known before. */
export interface FirstSpread {
  /** Of one reading of the gauge, MPa, and of its zero. */
  readonly pressure: number;
  readonly zero: number;
  /** Of one reading of litres, mm³, and of the litres before the water takes. */
  readonly drawn: number;
  readonly slack: number;
  /** Of the stiffness of tank and stroke together, as a fraction. */
  readonly stiffness: number;
}

/** Median and 90 % range. */
export interface Found {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface FirstFindings {
  /** At filling, mm³. */
  readonly air: Found;
  /** Reading of the gauge at no pressure, MPa. */
  readonly zero: Found;
  /** 1: as forecast; 1.05: it draws 5 % more. */
  readonly stiffness: Found;
  /** Largest miss of a reading, in its standard deviations: over 4 something else is wrong. */
  readonly miss: number;
}

/** Unknowns: air, zero of the gauge, slack, stiffness. */
const UNKNOWNS = 4;
const [AIR, ZERO, SLACK, STIFF] = [0, 1, 2, 3];
const TURNS = 20;

/** Needs three readings or more, at different pressures. */
export function firstFindings(givens: FirstGivens): FirstFindings {
  const { readings } = givens;
  if (readings.length < 3) throw new Error(`the first step wants three readings, got ${readings.length}`);
  const x = Float64Array.of(0, 0, 0, 1);
  let factor: Float64Array = new Float64Array();
  for (let turn = 0; turn < TURNS; turn++) {
    const { normal, right } = equations(givens, x);
    factor = cholesky(normal, UNKNOWNS);
    const step = solveCholesky(factor, right);
    for (let i = 0; i < UNKNOWNS; i++) x[i] += step[i];
    if (Math.abs(step[AIR]) < 1 && Math.abs(step[ZERO]) < 1e-7) break;
  }
  const spreadOf = (i: number): number => {
    const unit = new Float64Array(UNKNOWNS);
    unit[i] = 1;
    return Math.sqrt(solveCholesky(factor, unit)[i]);
  };
  return {
    air: cutAtZero(x[AIR], spreadOf(AIR)),
    zero: ninety(x[ZERO], spreadOf(ZERO)),
    stiffness: ninety(x[STIFF], spreadOf(STIFF)),
    miss: Math.max(
      ...readings.map((r) => Math.abs(missOf(givens, x, r)) / Math.sqrt(varianceAt(givens, x, r))),
    ),
  };
}

const missOf = (
  { drawnWithoutAir }: FirstGivens,
  x: Float64Array,
  { pressure, drawn }: FirstReading,
): number => {
  const p = pressure - x[ZERO];
  return drawn - (x[STIFF] * drawnWithoutAir(p) + airSwallows(x[AIR], p) + x[SLACK]);
};

/** d(drawn)/d(pressure) of the model. */
const slopeAt = ({ drawnWithoutAir }: FirstGivens, x: Float64Array, p: number): number => {
  const h = 1e-4 * Math.max(p, 0.01);
  const tank = (drawnWithoutAir(p + h) - drawnWithoutAir(p - h)) / (2 * h);
  return x[STIFF] * tank + airCompliance(Math.max(x[AIR], 0), p);
};

/** A miss comes from the litres, and from the pressure through the slope. */
const varianceAt = (givens: FirstGivens, x: Float64Array, { pressure }: FirstReading): number =>
  givens.spread.drawn ** 2 + (givens.spread.pressure * slopeAt(givens, x, pressure - x[ZERO])) ** 2;

function equations(givens: FirstGivens, x: Float64Array): { normal: Float64Array; right: Float64Array } {
  const { spread, readings, drawnWithoutAir } = givens;
  const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
  const right = new Float64Array(UNKNOWNS);
  const known = [0, 1 / spread.zero ** 2, 1 / spread.slack ** 2, 1 / spread.stiffness ** 2];
  known.forEach((weight, i) => {
    normal[i * UNKNOWNS + i] += weight;
    right[i] += weight * ((i === STIFF ? 1 : 0) - x[i]);
  });
  for (const reading of readings) {
    const p = reading.pressure - x[ZERO];
    const row = [airSwallows(1, p), -slopeAt(givens, x, p), 1, drawnWithoutAir(p)];
    const weight = 1 / varianceAt(givens, x, reading);
    const miss = missOf(givens, x, reading);
    for (let i = 0; i < UNKNOWNS; i++) {
      right[i] += weight * row[i] * miss;
      for (let j = 0; j < UNKNOWNS; j++) normal[i * UNKNOWNS + j] += weight * row[i] * row[j];
    }
  }
  return { normal, right };
}

/** Half width of a 90 % range over the standard deviation. */
const NINETY = normalQuantile(0.95);
const ninety = (value: number, spread: number): Found => ({
  value,
  low: value - NINETY * spread,
  high: value + NINETY * spread,
});

/** A normal that is known not to be negative. */
function cutAtZero(value: number, spread: number): Found {
  const below = normalBelow(-value / spread);
  const at = (share: number): number => value + spread * normalQuantile(below + share * (1 - below));
  // Far under zero nothing is left of the normal to take shares of: no air, and the spread for what it is worth.
  if (below > 1 - 1e-12) return { value: 0, low: 0, high: spread };
  return { value: Math.max(0, at(0.5)), low: Math.max(0, at(0.05)), high: at(0.95) };
}

export interface SlopeGivens {
  readonly pressures: readonly number[];
  /** mm, one for each pressure. */
  readonly girths: readonly number[];
  /** What the forecast says, mm/MPa. */
  readonly model: number;
  /** Standard deviation of one reading of girth, of one of pressure, and of the model as a fraction (wall, E). */
  readonly girth: number;
  readonly pressure: number;
  readonly modelShare: number;
}

export interface SlopeFinding {
  /** mm/MPa. */
  readonly slope: Found;
  /** Over the model; the range has the model's own doubt in it. */
  readonly ratio: Found;
  readonly verdict: 'agrees' | 'moves too little' | 'moves too much' | 'cannot tell';
}

/** A ratio known to less than this (half of its 90 % range) says nothing. Our choice, no source. */
const BLIND = 0.25;

export function slopeFinding(givens: SlopeGivens): SlopeFinding {
  const { pressures, girths, model, modelShare } = givens;
  const n = pressures.length;
  if (n < 2 || girths.length !== n)
    throw new Error(`a slope wants two points or more, got ${n} pressures and ${girths.length} girths`);
  const mean = (x: readonly number[]): number => x.reduce((sum, v) => sum + v, 0) / n;
  const [p0, g0] = [mean(pressures), mean(girths)];
  const sxx = pressures.reduce((sum, p) => sum + (p - p0) ** 2, 0);
  if (!(sxx > 0)) throw new Error('a slope wants different pressures');
  const slope = pressures.reduce((sum, p, i) => sum + (p - p0) * (girths[i] - g0), 0) / sxx;
  const spread = Math.hypot(givens.girth, model * givens.pressure) / Math.sqrt(sxx);
  const ratio = ninety(slope / model, Math.hypot(spread / model, modelShare));
  return { slope: ninety(slope, spread), ratio, verdict: verdictOf(ratio) };
}

function verdictOf({ low, high }: Found): SlopeFinding['verdict'] {
  if (high < 1) return 'moves too little';
  if (low > 1) return 'moves too much';
  return 0.5 * (high - low) > BLIND ? 'cannot tell' : 'agrees';
}

export interface LossGivens {
  /** s between the two readings, valve shut. */
  readonly time: number;
  /** Fall of the gauge is negative, MPa; warming is positive, K. */
  readonly pressureChange: number;
  readonly warming: number;
  /** mm³/MPa of wall, water and air together, and mm³/K that warmed water pushes out. */
  readonly compliance: number;
  readonly surplus: number;
  readonly spread: { readonly pressure: number; readonly warming: number };
}

/** mm³/s that left the tank: what the pressure lost, and what the warming would have given. */
export function firstLoss(givens: LossGivens): Found {
  const { time, compliance, surplus, spread } = givens;
  const lost = surplus * givens.warming - compliance * givens.pressureChange;
  const doubt = Math.hypot(compliance * spread.pressure, surplus * spread.warming) * Math.SQRT2;
  return ninety(lost / time, doubt / time);
}
