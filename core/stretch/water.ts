/**
 * The water in the tank: density, stiffness and expansion against temperature at atmospheric pressure, what it takes to
 * compress it, and the air trapped with it. Inside units: t/mm³, MPa, 1/K, mm³; air by absolute pressure.
 *
 * Density and compressibility: Kell, J. Chem. Eng. Data 20 (1975) 97, equations for 0-150 °C and 0-100 °C (source key
 * kell-1975). A reprint (J. Res. NIST 97, 1992, 335) prints the last density coefficient with two digits swapped,
 * 16.897850e-3; only 16.879850e-3 gives 998.2 kg/m³ at 20 °C, and that is used.
 */
import { ATMOSPHERE, fromKgPerM3, GRAVITY } from '../units.ts';

/** Temperatures for which the fits are used here, °C: liquid, and within both equations. */
export const WATER_RANGE = { from: 0, to: 100 } as const;

/** Density, t/mm³. Throws outside 0-100 °C. */
export const waterDensity = (temperature: number): number => {
  const T = liquid(temperature);
  const top =
    999.83952 +
    T * (16.945176 + T * (-7.9870401e-3 + T * (-46.170461e-6 + T * (105.56302e-9 + T * -280.54253e-12))));
  return fromKgPerM3(top / (1 + 16.87985e-3 * T));
};

/** Isothermal bulk modulus at atmospheric pressure, MPa. Throws outside 0-100 °C. */
export const waterBulkModulus = (temperature: number): number => {
  const T = liquid(temperature);
  const perBar =
    50.88496 + T * (0.6163813 + T * (1.459187e-3 + T * (20.08438e-6 + T * (-58.47727e-9 + T * 410.411e-12))));
  return 1e5 / (perBar / (1 + 19.67348e-3 * T));
};

/** Volume expansion, 1/K; negative under 4 °C. By difference of the density over a fiftieth of a degree. */
export const waterExpansion = (temperature: number): number => {
  const [a, b] = [
    Math.max(temperature - 0.01, WATER_RANGE.from),
    Math.min(temperature + 0.01, WATER_RANGE.to),
  ];
  return -Math.log(waterDensity(b) / waterDensity(a)) / (b - a);
};

const liquid = (temperature: number): number => {
  if (!(temperature >= WATER_RANGE.from && temperature <= WATER_RANGE.to)) {
    throw new Error(`the water must be between 0 and 100 °C, got ${temperature} °C`);
  }
  return temperature;
};

/** Rise of the bulk modulus with pressure (1), for the secant over 0-300 bar. From memory, medium confidence. */
const MODULUS_RISE = 5.8;

/**
 * Water that must be drawn at atmospheric pressure, beyond `volume` itself, to hold `volume` (mm³) full at `pressure`
 * (gauge): volume x (density ratio - 1), with the modulus rising with pressure.
 */
export const waterCompression = (volume: number, pressure: number, temperature: number): number => {
  const K = waterBulkModulus(temperature);
  return volume * ((1 + (MODULUS_RISE * pressure) / K) ** (1 / MODULUS_RISE) - 1);
};

/** d(waterCompression)/d(pressure), mm³/MPa. */
export const waterCompliance = (volume: number, pressure: number, temperature: number): number => {
  const K = waterBulkModulus(temperature);
  return (volume / K) * (1 + (MODULUS_RISE * pressure) / K) ** (1 / MODULUS_RISE - 1);
};

/** Volume of trapped air at a gauge pressure from its volume at filling, same temperature (Boyle), mm³. */
export const airVolume = (atFilling: number, pressure: number): number =>
  (atFilling * ATMOSPHERE) / (ATMOSPHERE + pressure);

/** What compressing the air takes from the pump up to a gauge pressure, mm³. */
export const airSwallows = (atFilling: number, pressure: number): number =>
  atFilling - airVolume(atFilling, pressure);

/** d(airSwallows)/d(pressure), mm³/MPa. */
export const airCompliance = (atFilling: number, pressure: number): number =>
  (atFilling * ATMOSPHERE) / (ATMOSPHERE + pressure) ** 2;

/** Elastic growth of the inside of a closed thin cylinder per pressure, mm³/MPa: V (r/(E t)) (2.5 - 2 nu). */
export const wallCompliance = (barrel: ThinBarrel): number =>
  (barrel.volume * barrel.radius * (2.5 - 2 * barrel.poisson)) / (barrel.young * barrel.wall);

export interface ThinBarrel {
  /** Enclosed volume, mm³. */
  readonly volume: number;
  readonly radius: number;
  readonly wall: number;
  readonly young: number;
  readonly poisson: number;
}

/** Water drawn per pressure by a full closed barrel far under yield, mm³/MPa, share by share. */
export const drawnPerPressure = (
  barrel: ThinBarrel,
  temperature: number,
  trappedAir: number,
  pressure = 0,
): { readonly wall: number; readonly water: number; readonly air: number; readonly all: number } => {
  const wall = wallCompliance(barrel);
  const water = waterCompliance(barrel.volume, pressure, temperature);
  const air = airCompliance(trappedAir, pressure);
  return { wall, water, air, all: wall + water + air };
};

/** Linear expansion of austenitic steel near room temperature, 1/K (EN 10088-1). */
export const STEEL_EXPANSION = 16e-6;

/** Water that one warmed tank pushes out, or would like to, per kelvin: water less steel, mm³/K. */
export const warmingSurplus = (volume: number, temperature: number): number =>
  volume * (waterExpansion(temperature) - 3 * STEEL_EXPANSION);

/** Pressure of a column of water, MPa. */
export const liquidHead = (height: number, temperature: number): number =>
  waterDensity(temperature) * GRAVITY * height;

/** Elastic growth of a girth per pressure, mm/MPa, far from the ends: outside girth of a closed thin cylinder. */
export const elasticGirth = (barrel: Omit<ThinBarrel, 'volume'>): number => {
  const { radius, wall, young, poisson } = barrel;
  return 2 * Math.PI * (radius + wall / 2) * (radius / (young * wall)) * (1 - poisson / 2);
};
