/**
 * Creep of a long cylinder or sphere held at constant pressure. The flow stress grows by so many MPa for each e-fold
 * of the plastic strain rate; at constant pressure the stress left over falls as the steel hardens, so the growth goes
 * with the logarithm of time. Time follows from the state alone (the stress ratio is fixed): t = integral of d ep / rate.
 */
import { root } from '../../math/root.ts';
import { type Metal, RATE_FLOOR } from '../../steel/plane.ts';
import { equivalentUnder, type ThinState, type ThinVessel, thinState, underHold } from './vessel.ts';

/** Where the valve is set: the plastic strain then, and the pressure kept from then on. */
export interface HoldStart {
  readonly plastic: number;
  readonly pressure: number;
}

export type Settling =
  /** The rate asked for is reached after `time` s. */
  | { readonly kind: 'settled'; readonly time: number; readonly state: ThinState }
  /** The wall thins faster than it hardens: the rate grows again before it has come down that far. */
  | { readonly kind: 'runs away'; readonly time: number; readonly state: ThinState };

/** The moment of arrival at a hoop strain while it grows at `hoopRate` (both logarithmic). Needs a rate effect. */
export const arrival = (vessel: ThinVessel, hoop: number, hoopRate: number): HoldStart => {
  const at = (plastic: number): ThinState =>
    thinState(vessel, plastic, flowAtHoopRate(vessel, plastic, hoopRate));
  if (at(0).hoop >= hoop) throw new Error(`hoop strain ${hoop} is still elastic: nothing creeps there`);
  const plastic = root((ep) => at(ep).hoop - hoop, 0, 2 * hoop);
  return { plastic, pressure: at(plastic).pressure };
};

/** Creeps at constant pressure until the hoop strain grows by `hoopRate` per second or less. */
export const settle = (vessel: ThinVessel, start: HoldStart, hoopRate: number): Settling => {
  const excess = (ep: number): number => creepRate(vessel, ep, start.pressure).hoop - hoopRate;
  if (excess(start.plastic) <= 0)
    return { kind: 'settled', time: 0, state: heldState(vessel, start, start.plastic) };
  let time = 0;
  for (const step of creepSteps(vessel, start)) {
    if (step.decline <= 0) return { kind: 'runs away', time, state: heldState(vessel, start, step.from) };
    if (excess(step.to) <= 0) {
      const end = root(excess, step.from, step.to);
      time += timeBetween(vessel, start, step.from, end);
      return { kind: 'settled', time, state: heldState(vessel, start, end) };
    }
    time += step.time;
  }
  throw new Error(`creep steps ran out at ${time} s`);
};

/** Creeps at constant pressure for `time` s. */
export const creepFor = (vessel: ThinVessel, start: HoldStart, time: number): Settling => {
  let passed = 0;
  for (const step of creepSteps(vessel, start)) {
    if (passed + step.time >= time) {
      const missing = (ep: number): number => passed + timeBetween(vessel, start, step.from, ep) - time;
      const end = time === 0 ? step.from : root(missing, step.from, step.to);
      return { kind: 'settled', time, state: heldState(vessel, start, end) };
    }
    if (step.decline <= 0)
      return { kind: 'runs away', time: passed, state: heldState(vessel, start, step.from) };
    passed += step.time;
  }
  throw new Error(`creep steps ran out at ${passed} s of ${time} s`);
};

/**
 * Plastic strain gained after `time` s while net hardening H = d(flow stress)/d ep - d(stress)/d ep stays what it was:
 * (c/H) ln(1 + rate H t / c), with c MPa per e-fold and the rate at the start.
 */
export const logarithmicCreep = (c: number, hardening: number, rate: number, time: number): number =>
  (c / hardening) * Math.log1p((rate * hardening * time) / c);

/**
 * Net hardening in a hold, MPa: what the flow stress gains less what thinning asks, per plastic strain. With the valve
 * shut the growing tank also lets the pressure fall, by `fall` MPa per plastic strain (volume gained over compliance).
 */
export const netHardening = (vessel: ThinVessel, plastic: number, pressure: number, fall = 0): number => {
  const equivalent = equivalentUnder(vessel, plastic, pressure);
  vessel.metal.flow.at(plastic, flow);
  return flow[1] - underHold(vessel, equivalent).stress + (equivalent / pressure) * fall;
};

/** Water that a long closed cylinder (mm³) takes up while its hoop strain grows by `hoopRate` per second, mm³/s. */
export const uptake = (volume: number, hoopRate: number): number => 2 * volume * hoopRate;

/** Plastic strain rate and hoop strain rate (1/s) at a plastic strain under a pressure; zero where nothing creeps. */
export const creepRate = (
  vessel: ThinVessel,
  plastic: number,
  pressure: number,
): { plastic: number; hoop: number; decline: number } => {
  const equivalent = equivalentUnder(vessel, plastic, pressure);
  const along = underHold(vessel, equivalent);
  const { efolds, decline } = overstress(vessel.metal, plastic, equivalent, along.stress);
  const rate = Math.max(Math.exp(efolds + vessel.metal.logReference) - RATE_FLOOR, 0);
  return { plastic: rate, hoop: rate * along.hoop, decline };
};

const flow = new Float64Array(2);

/** E-folds of rate over the reference that the stress drives, and by how much they fall per plastic strain. */
const overstress = (
  metal: Metal,
  plastic: number,
  equivalent: number,
  stressPerPlastic: number,
): { efolds: number; decline: number } => {
  const c = metal.viscosity;
  if (!(c > 0)) throw new Error('a hold needs a steel with a rate effect; this one has none');
  metal.flow.at(plastic, flow);
  if (!metal.proportional) {
    return { efolds: (equivalent - flow[0]) / c, decline: (flow[1] - stressPerPlastic) / c };
  }
  const ratio = equivalent / flow[0];
  return { efolds: (ratio - 1) / c, decline: (ratio * flow[1] - stressPerPlastic) / (c * flow[0]) };
};

/** Flow stress at a plastic strain while the hoop grows at a steady rate (its elastic part moves too little to count). */
const flowAtHoopRate = (vessel: ThinVessel, plastic: number, hoopRate: number): number => {
  const { metal } = vessel;
  metal.flow.at(plastic, flow);
  const hoopPerPlastic = vessel.kind === 'sphere' ? 0.5 : Math.sqrt(3) / 2;
  const efolds = Math.log(hoopRate / hoopPerPlastic + RATE_FLOOR) - metal.logReference;
  return metal.proportional ? flow[0] * (1 + metal.viscosity * efolds) : flow[0] + metal.viscosity * efolds;
};

const heldState = (vessel: ThinVessel, start: HoldStart, plastic: number): ThinState =>
  thinState(vessel, plastic, equivalentUnder(vessel, plastic, start.pressure));

interface CreepStep {
  readonly from: number;
  readonly to: number;
  readonly time: number;
  /** Fall of ln(rate) per plastic strain at `from`. */
  readonly decline: number;
}

const STEP_CAP = 20_000;
/** Fall of ln(rate) in one step: Simpson's rule on exp(x) over 0.1 is good to 1e-8. */
const STEP_EFOLDS = 0.1;

function* creepSteps(vessel: ThinVessel, start: HoldStart): Generator<CreepStep> {
  let from = start.plastic;
  for (let i = 0; i < STEP_CAP; i++) {
    const { decline } = creepRate(vessel, from, start.pressure);
    const to = from + Math.min(STEP_EFOLDS / Math.abs(decline), 1e-3);
    yield { from, to, time: timeBetween(vessel, start, from, to), decline };
    from = to;
  }
}

/** Simpson's rule on 1/rate; infinite where the rate falls to nothing. */
const timeBetween = (vessel: ThinVessel, start: HoldStart, from: number, to: number): number => {
  const slowness = (ep: number): number => 1 / creepRate(vessel, ep, start.pressure).plastic;
  return ((to - from) / 6) * (slowness(from) + 4 * slowness((from + to) / 2) + slowness(to));
};
