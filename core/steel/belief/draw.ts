/** One steel out of the range: everything a forecast needs of the plate, its seam and its rolling. */
import type { FlowLaw } from '../hardening.ts';
import { flowLawOf, logStress, REFERENCE_RATE } from '../prior/shape.ts';
import type { RateEffect } from '../steel.ts';

export interface SteelDraw {
  /** Logarithms of the stresses at 0.2, 2, 10 and 40 % plastic strain over those of the shape, in the water. */
  readonly factors: readonly number[];
  /** Uniaxial curve of the plate in the water, at the rate `rate.reference`, before rolling. */
  readonly flow: FlowLaw;
  readonly biaxialFactor: number;
  readonly rate: RateEffect;
  /** Wall over that of the tank file. */
  readonly wallFactor: number;
  /** Flow stress of the long seam over that of the plate. */
  readonly seamStrength: number;
  /** Plastic strain that rolling left, on average through the wall. */
  readonly coldWork: number;
}

/** The numbers a draw is made of; what the emulator and the shares of the range are built on. */
export const INPUTS = [
  'stress at 0.2 %',
  'stress at 2 %',
  'stress at 10 %',
  'stress at 40 %',
  'biaxial factor',
  'rate effect',
  'wall',
  'rolling',
  'seam',
] as const;

/** The same numbers as columns: factors and biaxial, rate, wall as logarithms, cold work and seam as they are. */
export const inputsOf = (draw: SteelDraw): number[] => [
  ...draw.factors,
  Math.log(draw.biaxialFactor),
  Math.log(draw.rate.perEfold),
  Math.log(draw.wallFactor),
  draw.coldWork,
  draw.seamStrength,
];

/** The draw that has these inputs, in the order of INPUTS. */
export const drawOf = (inputs: readonly number[] | Float64Array): SteelDraw => {
  const factors = Array.from(inputs.slice(0, 4));
  const [biaxial, rate, wall, coldWork, seamStrength] = inputs.slice(4);
  return {
    factors,
    flow: flowLawOf(factors),
    biaxialFactor: Math.exp(biaxial),
    rate: { on: 'yield', perEfold: Math.exp(rate), reference: REFERENCE_RATE },
    wallFactor: Math.exp(wall),
    seamStrength,
    coldWork,
  };
};

/** Uniaxial true stress of a draw at a plastic strain and a rate, MPa. */
export const drawnStress = (draw: SteelDraw, ep: number, rate = REFERENCE_RATE): number =>
  Math.exp(logStress(draw.factors, ep)) + draw.rate.perEfold * Math.log(rate / draw.rate.reference);
