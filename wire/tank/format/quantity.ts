/**
 * Every number of the tank file: what it means, its unit, and the range in which it is plausible, with the reason.
 * Outside the range it is an issue that names `--as-given`. A quantity is found by the end of its path:
 * `barrel.courses[0].length_mm` is `courses.length_mm`; `heads.top.wall_mm` has no entry of its own and is `wall_mm`.
 */
import { DAY_QUANTITIES } from '../../plan/setup/dayQuantity.ts';

export interface Quantity {
  readonly means: string;
  readonly low: number;
  readonly high: number;
  /** Why the range is as it is; ends the sentence "plausible is low to high: …". */
  readonly why: string;
  /** What can be refused without doubt: 'positive' refuses zero too; 'any' takes both signs. */
  readonly sign: 'positive' | 'not negative' | 'any';
}

const of =
  (sign: Quantity['sign']) =>
  (low: number, high: number, means: string, why: string): Quantity => ({ means, low, high, why, sign });
const positive = of('positive');
const notNegative = of('not negative');
const any = of('any');

const THIN = 'vessel standards for cold stretching end at 30 mm, sheet begins at about 0.2 mm';
const SMALL = 'tanks of small teams';
const METAL = 'stresses of austenitic steel, annealed to hard rolled';
const SLIP = 'common practice, no source';

const TANK: Readonly<Record<string, Quantity>> = {
  'barrel.insideDiameter_mm': positive(20, 5000, 'Inside diameter of the barrel, mm', SMALL),
  'barrel.length_mm': positive(
    5,
    20000,
    'Bottom tangent line to top tangent line, straight flanges included, mm',
    SMALL,
  ),
  'courses.length_mm': positive(2, 20000, 'Height of this course, mm', SMALL),
  'skirts.length_mm': positive(2, 5000, 'Length of the skirt from its tangent line, mm', SMALL),
  wall_mm: positive(0.2, 30, 'Wall thickness, mm', THIN),
  measuredWall_mm: positive(
    0.2,
    30,
    'Measured walls, equally spaced along the inside from the pole to the tangent line (one value: everywhere), mm',
    THIN,
  ),
  ratio: positive(0.5, 6, 'Inside radius over inside depth', 'heads are made from 1 (hemisphere) to about 4'),
  depth_mm: positive(2, 5000, 'Inside depth from tangent line to pole, mm', SMALL),
  crownRadius_mm: positive(10, 10000, 'Inside radius of the crown, mm', SMALL),
  knuckleRadius_mm: positive(1, 2500, 'Inside radius of the knuckle, mm', SMALL),
  halfAngle_deg: positive(
    5,
    80,
    'Angle between axis and cone wall, degrees',
    'steeper is a tube, flatter is a plate',
  ),
  straightFlange_mm: notNegative(0, 500, "Cylindrical part of the head within the barrel's length, mm", SLIP),
  formingStrain_percent: notNegative(
    0,
    60,
    'Mean true plastic strain that spinning or pressing left in the head, %',
    'more tears the blank',
  ),
  'boss.diameter_mm': positive(3, 2500, 'Diameter of the boss, mm', SMALL),
  'boss.thickness_mm': positive(0.3, 300, 'Thickness of the boss, flush inside, mm', SMALL),
  'baffles.width_mm': positive(1, 2500, 'Width of the baffle from the wall inwards, mm', SMALL),
  'baffles.thickness_mm': positive(0.2, 50, 'Thickness of the baffle plate, mm', THIN),
  at_mm: notNegative(0, 20000, 'Height over the bottom tangent line, mm', SMALL),
  'girth.width_mm': positive(0.5, 100, 'Width of the weld metal, mm', 'a weld in sheet is a few walls wide'),
  'long.width_mm': positive(0.5, 100, 'Width of the weld metal, mm', 'a weld in sheet is a few walls wide'),
  strength: positive(
    0.3,
    2,
    'Flow stress of the seam over that of the plate',
    'under 0.3 the seam is not welded through',
  ),
  'openings.diameter_mm': positive(1, 2500, 'Diameter of the hole, mm', SMALL),
  padThickness_mm: positive(0.2, 100, 'Thickness of the pad, mm', THIN),
  padWidth_mm: positive(1, 1000, 'Width of the pad from the edge of the hole outwards, mm', SMALL),
  gauge_mm: any(-20000, 20000, 'Height of the pressure gauge over the bottom tangent line, mm', SMALL),
  temperature_C: any(1, 60, 'Temperature, °C', 'liquid water that a hand can be near'),
  trappedAir_L: notNegative(0, 500, 'Volume of trapped air at filling, under atmospheric pressure, L', SLIP),
  workingPressure_bar: positive(
    0.1,
    400,
    'Working pressure at the gauge, bar over atmosphere',
    'a thin tank; gas bottles are built otherwise',
  ),
  stretchFactor: positive(
    1,
    2.5,
    'Stretch pressure over working pressure',
    'published codes use 1.33 to 1.6',
  ),
  pump_L_per_min: positive(
    0.001,
    200,
    'What the pump draws at atmospheric pressure, L/min',
    'hand pump to test pump',
  ),
  'holds.pressure_bar': positive(
    0.1,
    1000,
    'Pressure of the hold at the gauge, bar over atmosphere',
    'a thin tank',
  ),
  minutes: positive(0.05, 4320, 'Duration of the hold, minutes', 'three days at most'),
};

const STEEL: Readonly<Record<string, Quantity>> = {
  young_MPa: positive(150000, 230000, "Young's modulus, MPa", 'steel has about 200000 MPa; 200 would be GPa'),
  poisson: notNegative(0.2, 0.4, "Poisson's ratio", 'steel has about 0.3'),
  density_kg_per_m3: positive(7000, 9000, 'Density, kg/m³', 'austenitic steel has about 7900'),
  biaxialFactor: positive(
    0.8,
    1.2,
    'Factor on the flow stress for closed-end loading',
    'published criteria differ by under 7 %',
  ),
  flowRate_per_s: positive(
    1e-8,
    100,
    'Plastic strain rate at which the flow curve holds, 1/s',
    'tensile tests run at 1e-5 to 1e-1',
  ),
  perEfold_MPa: notNegative(
    0,
    30,
    'Rise of flow stress for e times the strain rate, MPa',
    'published 304L: 2 to 10',
  ),
  reference_per_s: positive(
    1e-12,
    100,
    'Reference strain rate of the rate effect, 1/s',
    'creep to tensile test',
  ),
  K_MPa: positive(10, 6000, 'Strength coefficient, MPa', METAL),
  n: positive(0.01, 1.2, 'Hardening exponent', 'metals have 0.05 to 0.8; 45 would be percent'),
  e0: positive(1e-6, 0.6, 'Offset of the plastic strain', 'larger is no longer a plate'),
  yield_MPa: positive(20, 2000, 'True stress at zero plastic strain, MPa', METAL),
  rise_MPa: positive(1, 6000, 'Rise of the true stress from yield to saturation, MPa', METAL),
  steepness: positive(0.05, 500, 'Rate of the exponential, per unit plastic strain', METAL),
  k1: any(-10, 9, 'Logarithm of the extra stress at zero plastic strain, in MPa', 'exp(9) is 8100 MPa'),
  k2: any(-2000, 0, 'Decay of the extra stress, per unit plastic strain', 'it must decay'),
  'flow.Rp02_MPa': positive(50, 2000, '0.2 % proof stress of the two-slope curve, MPa', METAL),
  'flow.Rm_MPa': positive(100, 3000, 'Tensile strength of the two-slope curve, MPa', METAL),
  plastic: notNegative(
    0,
    3,
    'True plastic strains of the points, strictly rising',
    '3 is twenty times longer',
  ),
  stress_MPa: positive(5, 5000, 'True stresses of the points, MPa, strictly rising', METAL),
};

const EVIDENCE: Readonly<Record<string, Quantity>> = {
  Rp02_MPa: positive(50, 2000, '0.2 % proof stress, MPa', METAL),
  Rp10_MPa: positive(50, 2000, '1.0 % proof stress, MPa', METAL),
  Rm_MPa: positive(100, 3000, 'Tensile strength, MPa', METAL),
  A_percent: positive(1, 100, 'Elongation after fracture, %', 'annealed austenitic steel has 35 to 70'),
  C_percent: notNegative(0, 0.3, 'Carbon, mass %', 'austenitic grades'),
  N_percent: notNegative(0, 0.6, 'Nitrogen, mass %', 'austenitic grades'),
  Si_percent: notNegative(0, 5, 'Silicon, mass %', 'austenitic grades'),
  Mn_percent: notNegative(0, 12, 'Manganese, mass %', 'austenitic grades'),
  Cr_percent: notNegative(10, 30, 'Chromium, mass %', 'austenitic grades'),
  Ni_percent: notNegative(0, 40, 'Nickel, mass %', 'austenitic grades'),
  Mo_percent: notNegative(0, 8, 'Molybdenum, mass %', 'austenitic grades'),
  wallMeasured_mm: positive(0.2, 30, 'Walls measured on the plate, mm', THIN),
  wallTolerance_mm: positive(
    0.005,
    3,
    'Plus and minus tolerance of the wall, mm',
    'sheet and plate standards',
  ),
  gaugeLength_mm: positive(2, 500, 'Gauge length of the coupon, mm', 'tensile coupons'),
  couponWidth_mm: positive(1, 100, 'Width of the coupon in the gauge length, mm', 'tensile coupons'),
  couponThickness_mm: positive(0.2, 30, 'Thickness of the coupon, mm', THIN),
  couponDiameter_mm: positive(1, 50, 'Diameter of a round coupon, mm', 'tensile coupons'),
  rate_per_s: positive(1e-8, 100, 'Strain rate of the test, 1/s', 'tensile tests run at 1e-5 to 1e-1'),
  preloadStress_MPa: positive(50, 2000, 'Stress to which the coupon was pulled before the test, MPa', METAL),
  preloadStrain_percent: positive(
    0.1,
    40,
    'Strain to which the coupon was stretched before the test, %',
    'standards ask for 9',
  ),
  passes: positive(1, 500, 'Passes through the rolls', 'a rolling day'),
  overbendRadius_mm: positive(5, 5000, 'Smallest inside radius while in the rolls, mm', SMALL),
  'testTanks.insideDiameter_mm': positive(10, 5000, 'Inside diameter of the test tank, mm', SMALL),
  'testTanks.length_mm': positive(5, 20000, 'Tangent line to tangent line of the test tank, mm', SMALL),
  girthBefore_mm: positive(30, 20000, 'Outside girth before the test, mm', SMALL),
  girth_mm: positive(30, 40000, 'Outside girth, mm', SMALL),
  pressure_bar: notNegative(0, 1000, 'Pressure at the gauge, bar over atmosphere', 'a thin tank'),
};

export const QUANTITIES: Readonly<Record<string, Quantity>> = {
  ...TANK,
  ...STEEL,
  ...EVIDENCE,
  ...DAY_QUANTITIES,
};

/** The quantity at the end of a path, or undefined where the path ends in no known number. List places do not count. */
export function quantityAt(path: readonly PropertyKey[]): Quantity | undefined {
  const names = path.filter((step) => typeof step === 'string');
  const key = names.at(-1);
  if (key === undefined) return undefined;
  const withParent = `${names.at(-2)}.${key}`;
  const id = Object.hasOwn(QUANTITIES, withParent) ? withParent : key;
  return Object.hasOwn(QUANTITIES, id) ? QUANTITIES[id] : undefined;
}
