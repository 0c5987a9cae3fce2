/** Steel of the file to the steel of the shell: defaults, inheritance, seam strength, and the stand-in where only evidence is given. */
import { fromKgPerM3 } from '@hoopwright/core/units';
import type { FlowLaw, RateEffect, Steel } from '@hoopwright/core/steel';
import type { FlowFile, PartSteelFile, SteelFile } from './format/steelFile.ts';

/** EN 10088-1: E 200 GPa at 20 °C, density 7900 kg/m³ (1.4301, 1.4307); Poisson's ratio 0.30 (all from memory). */
export const STEEL_DEFAULTS = {
  young_MPa: 200000,
  poisson: 0.3,
  density_kg_per_m3: 7900,
  biaxialFactor: 1,
} as const;

/** Where the flow curve of the plate came from. */
export type FlowFrom = 'stated' | 'evaluated' | 'certificate' | 'stand-in';

/**
 * Ludwigson fit to the mean of eight bars of annealed 304L at room temperature, plastic strain 0.002 to 0.40, rms 2.4 MPa
 * (bars: Karlson 2023; the fit is ours). It stands in for coupons and test tanks until they are evaluated.
 */
const STAND_IN: FlowLaw = { law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 };

/** Flow curve for the plate, and where it came from; never silent: the caller turns the second into a note. */
export function plateFlow(
  steel: SteelFile,
  evaluated?: FlowLaw,
): { readonly flow: FlowLaw; readonly from: FlowFrom } {
  if (steel.flow !== undefined) return { flow: toFlowLaw(steel.flow), from: 'stated' };
  if (evaluated !== undefined) return { flow: evaluated, from: 'evaluated' };
  const { Rp02_MPa: Rp02, Rm_MPa: Rm } = steel.certificate ?? {};
  if (Rp02 !== undefined && Rm !== undefined)
    return { flow: { law: 'two-slope', Rp02, Rm }, from: 'certificate' };
  return { flow: STAND_IN, from: 'stand-in' };
}

/** Steel of the plate. */
export function toSteel(file: PartSteelFile, flow: FlowLaw): Steel {
  const rate = toRate(file);
  return {
    ...(file.grade === undefined ? {} : { grade: file.grade }),
    young: file.young_MPa ?? STEEL_DEFAULTS.young_MPa,
    poisson: file.poisson ?? STEEL_DEFAULTS.poisson,
    density: fromKgPerM3(file.density_kg_per_m3 ?? STEEL_DEFAULTS.density_kg_per_m3),
    flow,
    biaxialFactor: file.biaxialFactor ?? STEEL_DEFAULTS.biaxialFactor,
    ...(rate === undefined ? {} : { rate }),
  };
}

/** Steel of a part: what it leaves out is that of the plate. */
export function partSteel(part: PartSteelFile, plate: SteelFile, flow: FlowLaw): Steel {
  const own = part.flow === undefined ? flow : toFlowLaw(part.flow);
  return toSteel({ ...plate, ...part }, own);
}

function toRate({ rate, flowRate_per_s: flowRate }: PartSteelFile): RateEffect | undefined {
  const reference = flowRate ?? rate?.reference_per_s;
  if (rate === undefined || reference === undefined) return undefined;
  return { on: rate.on, perEfold: rate.perEfold_MPa, reference };
}

export function toFlowLaw(flow: FlowFile): FlowLaw {
  switch (flow.law) {
    case 'swift':
      return { law: 'swift', K: flow.K_MPa, n: flow.n, e0: flow.e0 };
    case 'voce':
      return { law: 'voce', yield: flow.yield_MPa, rise: flow.rise_MPa, steepness: flow.steepness };
    case 'ludwik':
      return { law: 'ludwik', yield: flow.yield_MPa, K: flow.K_MPa, n: flow.n };
    case 'ludwigson':
      return { law: 'ludwigson', K: flow.K_MPa, n: flow.n, k1: flow.k1, k2: flow.k2 };
    case 'hollomon':
      return { law: 'hollomon', K: flow.K_MPa, n: flow.n };
    case 'two-slope':
      return { law: 'two-slope', Rp02: flow.Rp02_MPa, Rm: flow.Rm_MPa };
    case 'points':
      return { law: 'points', plastic: flow.plastic, stress: flow.stress_MPa };
  }
}

/** The same curve with every stress times a factor: a seam of that strength. */
export function scaledFlow(flow: FlowLaw, factor: number): FlowLaw {
  switch (flow.law) {
    case 'swift':
      return { ...flow, K: factor * flow.K };
    case 'voce':
      return { ...flow, yield: factor * flow.yield, rise: factor * flow.rise };
    case 'ludwik':
      return { ...flow, yield: factor * flow.yield, K: factor * flow.K };
    case 'ludwigson':
      return { ...flow, K: factor * flow.K, k1: flow.k1 + Math.log(factor) };
    case 'hollomon':
      return { ...flow, K: factor * flow.K };
    case 'two-slope':
      return { ...flow, Rp02: factor * flow.Rp02, Rm: factor * flow.Rm };
    case 'points':
      return { ...flow, stress: flow.stress.map((stress) => factor * stress) };
  }
}

/** Steel of a seam that is `strength` times as strong as its plate, its rate effect with it. */
export function seamSteel(plate: Steel, strength: number): Steel {
  if (strength === 1) return plate;
  const rate =
    plate.rate === undefined ? {} : { rate: { ...plate.rate, perEfold: strength * plate.rate.perEfold } };
  return { ...plate, ...rate, flow: scaledFlow(plate.flow, strength) };
}
