/**
 * The quick tank of the calibration: a long closed cylinder ramped to the stretch pressure and held there until its girth
 * grows by less than 0.1 %/h, at most four hours. Elastic-plastic with thinning and a logarithmic rate effect.
 * It stands in for the shell where thousands of tanks are stretched; the closed form is that of core/stretch/thin/vessel.ts.
 */
import type { Flow } from '../../core/steel/hardening.ts';

export interface QuickTank {
  /** Mid-surface, mm. */
  readonly radius: number;
  readonly wall: number;
  readonly young: number;
  readonly poisson: number;
}

export interface QuickSteel {
  /** With the biaxial factor in it. */
  readonly flow: Flow;
  /** MPa per e-fold. */
  readonly viscosity: number;
  /** Rate of the flow curve, 1/s. */
  readonly reference: number;
  readonly wallFactor: number;
  readonly coldWork: number;
}

/** Hoop strain rates, 1/s: of an ordinary ramp, and 0.1 %/h. */
const RAMP = 2e-5;
const SETTLED = 0.001 / 3600;
const CAP = 4 * 3600;
const HOOP = Math.sqrt(3) / 2;
/** Plastic strain beyond which every such tank is past its maximum. */
const BURST = 0.9;

/** Growth of the girth (fraction) under pressure at the end of the final hold; Infinity: it burst. */
export const finalGrowth = (tank: QuickTank, steel: QuickSteel, pressure: number): number => {
  const stress = stressUnder(tank, steel, pressure);
  const efolds = (ep: number): number => (stress(ep) - flowAt(steel, ep)) / steel.viscosity;
  const arrival = Math.log(RAMP / HOOP / steel.reference);
  const end = Math.log(SETTLED / HOOP / steel.reference);
  let ep = firstBelow(efolds, arrival);
  if (ep === undefined) return Infinity;
  let time = 0;
  let now = efolds(ep);
  while (now > end) {
    const slope = (efolds(ep + 1e-6) - now) / 1e-6;
    const step = Math.min(0.002, 0.1 / Math.abs(slope));
    const next = efolds(ep + step);
    if (next <= end) return growthAt(tank, steel, pressure, ep + (step * (now - end)) / (now - next));
    const spent = step / (steel.reference * Math.exp((now + next) / 2));
    if (time + spent >= CAP) return growthAt(tank, steel, pressure, ep + (step * (CAP - time)) / spent);
    if (ep > BURST || next > arrival + 3) return Infinity;
    time += spent;
    ep += step;
    now = next;
  }
  return growthAt(tank, steel, pressure, ep);
};

/** Highest pressure at the rate of the ramp, MPa. */
export const highestPressure = (tank: QuickTank, steel: QuickSteel): number => {
  const rise = steel.viscosity * Math.log(RAMP / HOOP / steel.reference);
  let most = 0;
  for (let ep = 0.001; ep < BURST; ep *= 1.01) {
    const pressure = (flowAt(steel, ep) + rise) / stressUnder(tank, steel, 1)(ep);
    most = Math.max(most, pressure);
  }
  return most;
};

/** Von Mises stress (MPa) that a pressure makes at a plastic strain. */
const stressUnder = (tank: QuickTank, steel: QuickSteel, pressure: number): ((ep: number) => number) => {
  const unit = (pressure * tank.radius) / (tank.wall * steel.wallFactor);
  return (ep) => {
    const hoop = unit * Math.exp(2 * HOOP * ep);
    const { girth, through, volume } = elastic(tank, hoop);
    return HOOP * hoop * Math.exp(girth - through + volume);
  };
};

/** Elastic strains of a long closed cylinder under a hoop stress. */
const elastic = (
  { young, poisson }: QuickTank,
  hoop: number,
): { girth: number; through: number; volume: number } => ({
  girth: (hoop * (1 - poisson / 2)) / young,
  through: (-1.5 * poisson * hoop) / young,
  volume: (1.5 * hoop * (1 - 2 * poisson)) / young,
});

const growthAt = (tank: QuickTank, steel: QuickSteel, pressure: number, ep: number): number =>
  Math.expm1(HOOP * ep + elastic(tank, stressUnder(tank, steel, pressure)(ep) / HOOP).girth);

const out = new Float64Array(2);
const flowAt = (steel: QuickSteel, ep: number): number => {
  steel.flow.at(ep + steel.coldWork, out);
  return out[0];
};

/** First plastic strain at which the drive falls to `level` e-folds; undefined where it never does: past its maximum. */
const firstBelow = (efolds: (ep: number) => number, level: number): number | undefined => {
  if (efolds(0) <= level) return 0;
  let low = 0;
  for (let high = 0.0005; high < BURST; high *= 1.25) {
    if (efolds(high) > level) {
      low = high;
      continue;
    }
    let [a, b] = [low, high];
    while (b - a > 1e-8) {
      const middle = (a + b) / 2;
      if (efolds(middle) > level) a = middle;
      else b = middle;
    }
    return b;
  }
  return undefined;
};
