/** The `steel` of the tank file: elastic constants, flow curve, rate effect, and the evidence behind them. */
import { z } from 'zod';
import { may, oneOf, quantities, quantity, text } from './shape.ts';

const law = <const L extends string, S extends z.core.$ZodLooseShape>(
  name: L,
  description: string,
  shape: S,
) =>
  z
    .strictObject({ law: z.literal(name).meta({ description: 'Name of the flow law' }), ...shape })
    .meta({ description });

export const flowFile = z
  .discriminatedUnion('law', [
    law('swift', 'K (e0 + ep)^n', { K_MPa: quantity('K_MPa'), n: quantity('n'), e0: quantity('e0') }),
    law('voce', 'yield + rise (1 - exp(-steepness ep))', {
      yield_MPa: quantity('yield_MPa'),
      rise_MPa: quantity('rise_MPa'),
      steepness: quantity('steepness'),
    }),
    law('ludwik', 'yield + K ep^n', {
      yield_MPa: quantity('yield_MPa'),
      K_MPa: quantity('K_MPa'),
      n: quantity('n'),
    }),
    law('ludwigson', 'K ep^n + exp(k1 + k2 ep)', {
      K_MPa: quantity('K_MPa'),
      n: quantity('n'),
      k1: quantity('k1'),
      k2: quantity('k2'),
    }),
    law('hollomon', 'K ep^n; says nothing true about first yield', {
      K_MPa: quantity('K_MPa'),
      n: quantity('n'),
    }),
    law('two-slope', 'Two-slope curve of ASME VIII-2 Annex 3-D from proof stress and tensile strength', {
      Rp02_MPa: quantity('flow.Rp02_MPa'),
      Rm_MPa: quantity('flow.Rm_MPa'),
    }),
    law('points', 'Measured points, monotone interpolation between them', {
      plastic: z
        .array(quantity('plastic'))
        .min(2)
        .meta({ description: 'True plastic strains, strictly rising' }),
      stress_MPa: z
        .array(quantity('stress_MPa'))
        .min(2)
        .meta({ description: 'True stresses, strictly rising' }),
    }),
  ])
  .meta({ description: 'Flow curve: true stress against true plastic strain ep' });

const rateFile = z
  .strictObject({
    on: oneOf(['yield', 'curve'], 'yield: the whole curve shifts; curve: in proportion to the flow stress'),
    perEfold_MPa: quantity('perEfold_MPa'),
    reference_per_s: may(quantity('reference_per_s')),
  })
  .meta({ description: 'Logarithmic effect of the plastic strain rate on the flow stress' });

const metal = {
  grade: may(text('Grade as stated, e.g. 1.4307')),
  young_MPa: may(quantity('young_MPa')),
  poisson: may(quantity('poisson')),
  density_kg_per_m3: may(quantity('density_kg_per_m3')),
  biaxialFactor: may(quantity('biaxialFactor')),
  flow: may(flowFile),
  flowRate_per_s: may(quantity('flowRate_per_s')),
  rate: may(rateFile),
  note: may(text('Anything worth knowing about this metal')),
};

const direction = may(oneOf(['longitudinal', 'transverse'], 'Against the rolling direction of the mill'));
const plate = may(text('Plate or heat it is of'));

const certificateFile = z
  .strictObject({
    heat: may(text('Heat number')),
    plate,
    direction,
    Rp02_MPa: may(quantity('Rp02_MPa')),
    Rp10_MPa: may(quantity('Rp10_MPa')),
    Rm_MPa: may(quantity('Rm_MPa')),
    A_percent: may(quantity('A_percent')),
    composition: may(
      z
        .strictObject({
          C_percent: may(quantity('C_percent')),
          N_percent: may(quantity('N_percent')),
          Si_percent: may(quantity('Si_percent')),
          Mn_percent: may(quantity('Mn_percent')),
          Cr_percent: may(quantity('Cr_percent')),
          Ni_percent: may(quantity('Ni_percent')),
          Mo_percent: may(quantity('Mo_percent')),
        })
        .meta({ description: 'Heat analysis' }),
    ),
    note: may(text('Number, date, what was not legible')),
  })
  .meta({ description: 'Mill certificate' });

const coupon = {
  file: text('Path of the CSV, relative to this file'),
  name: may(text('Name of the coupon')),
  group: may(text('Coupons of one shape, machine and lot share a group')),
  direction,
  plate,
  gaugeLength_mm: may(quantity('gaugeLength_mm')),
  couponWidth_mm: may(quantity('couponWidth_mm')),
  couponThickness_mm: may(quantity('couponThickness_mm')),
  couponDiameter_mm: may(quantity('couponDiameter_mm')),
  rate_per_s: may(quantity('rate_per_s')),
  temperature_C: may(quantity('temperature_C')),
  strainColumn: may(text('Heading of the strain (or extension) column')),
  stressColumn: may(text('Heading of the stress (or force) column')),
  stressUnit: may(oneOf(['MPa', 'ksi'], 'Unit of the stress column')),
  excluded: may(text('Reason why this test does not count; it stays visible')),
  note: may(text('What was seen during the test')),
};

const preloadFile = z
  .strictObject({
    preloadStress_MPa: may(quantity('preloadStress_MPa')),
    preloadStrain_percent: may(quantity('preloadStrain_percent')),
  })
  .meta({ description: 'Stretched before the tensile test, as the cold-stretching standards ask' });

const seamCouponFile = z
  .strictObject({
    ...coupon,
    seam: may(oneOf(['long', 'girth'], 'Which seam it stands for')),
    broke: may(oneOf(['plate', 'seam', 'beside the seam'], 'Where it broke')),
    preload: may(preloadFile),
  })
  .meta({ description: 'Coupon across a seam' });

const rollingFile = z
  .strictObject({
    machine: oneOf(['three-roll', 'four-roll'], 'Rolling machine'),
    passes: quantity('passes'),
    overbendRadius_mm: may(quantity('overbendRadius_mm')),
    note: may(text('What was seen while rolling')),
  })
  .meta({ description: 'How the plate was bent to the barrel' });

const pressureAndGirth = z.strictObject({
  pressure_bar: quantity('pressure_bar'),
  girth_mm: quantity('girth_mm'),
});

const testTankFile = z
  .strictObject({
    name: text('Name of the test tank'),
    plate,
    insideDiameter_mm: quantity('testTanks.insideDiameter_mm'),
    length_mm: may(quantity('testTanks.length_mm')),
    wall_mm: quantity('wall_mm'),
    girthBefore_mm: may(quantity('girthBefore_mm')),
    points: may(
      z.array(pressureAndGirth).min(1).meta({ description: 'Pressure and girth at the same moment' }),
    ),
    burst: may(
      z
        .strictObject({ pressure_bar: quantity('pressure_bar'), girth_mm: may(quantity('girth_mm')) })
        .meta({ description: 'Where it burst' }),
    ),
    note: may(text('What was seen')),
  })
  .meta({ description: 'Small tank of the same plate, taken to pressure or burst' });

const evidence = {
  product: may(oneOf(['cold-rolled', 'hot-rolled strip', 'plate'], 'Product form')),
  certificate: may(certificateFile),
  wallMeasured_mm: may(quantities('wallMeasured_mm')),
  wallTolerance_mm: may(quantity('wallTolerance_mm')),
  coupons: may(z.array(z.strictObject(coupon)).meta({ description: 'Tensile coupons of the plate' })),
  seamCoupons: may(z.array(seamCouponFile).meta({ description: 'Tensile coupons across a seam' })),
  rolling: may(rollingFile),
  testTanks: may(z.array(testTankFile).meta({ description: 'Small test tanks of the same plate' })),
};

/** Steel of a part: every key left out is that of the tank's `steel`. */
export const partSteelFile = z
  .strictObject(metal)
  .meta({ description: "Steel of this part; what is left out is that of the tank's steel" });

export const steelFile = z
  .strictObject({ ...metal, ...evidence })
  .meta({ description: 'Steel of the tank: a flow curve, or the evidence from which one follows' });

export type FlowFile = z.infer<typeof flowFile>;
export type PartSteelFile = z.infer<typeof partSteelFile>;
export type SteelFile = z.infer<typeof steelFile>;
