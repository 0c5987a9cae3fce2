/** What one piece of metal is made of, as the shell needs it. Inside units. */
import type { FlowLaw } from './hardening.ts';

/** Logarithmic effect of the plastic strain rate on the flow stress. */
export interface RateEffect {
  /**
   * `yield`: the stress rises by the same amount at every plastic strain (the whole curve shifts).
   * `curve`: the stress rises in proportion to the flow stress; `perEfold` is its value at 0.2 % plastic strain.
   */
  readonly on: 'yield' | 'curve';
  /** Rise of flow stress for e times the plastic strain rate, MPa. */
  readonly perEfold: number;
  /** Plastic strain rate at which the flow curve holds, 1/s. */
  readonly reference: number;
}

export interface Steel {
  /** Grade as stated, e.g. "1.4307". */
  readonly grade?: string;
  /** Young's modulus, MPa. */
  readonly young: number;
  readonly poisson: number;
  /** t/mm³. */
  readonly density: number;
  readonly flow: FlowLaw;
  /** Factor on the flow stress: closed-end (plane-strain) loading against the uniaxial evidence. */
  readonly biaxialFactor: number;
  /** Absent: the curve is taken as it stands, whatever the rate. */
  readonly rate?: RateEffect;
}
