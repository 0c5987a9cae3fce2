/** Energy held by a tank under pressure (N mm), and forces on what may fly. Source keys: pcc-2-2008, timoshenko-shells. */
import { ATMOSPHERE } from '../../units.ts';
import { airVolume, type ThinBarrel, waterBulkModulus } from '../water.ts';

/** Elastic energy of the wall of a closed thin cylinder: p² r V (2.5 - 2 nu)/(2 E t). */
export const wallEnergy = (barrel: ThinBarrel, pressure: number): number =>
  (pressure ** 2 * barrel.radius * barrel.volume * (2.5 - 2 * barrel.poisson)) /
  (2 * barrel.young * barrel.wall);

/** Energy of compressed water: p² V/(2 K). */
export const waterEnergy = (volume: number, pressure: number, temperature: number): number =>
  (pressure ** 2 * volume) / (2 * waterBulkModulus(temperature));

/**
 * Energy that gas gives up in expanding to atmosphere, PCC-2: 2.5 p V [1 - (pa/p)^0.286], p absolute, V the volume of
 * the gas under pressure.
 */
export const gasEnergy = (volumeUnderPressure: number, pressure: number, atmosphere = ATMOSPHERE): number => {
  const absolute = pressure + atmosphere;
  return 2.5 * absolute * volumeUnderPressure * (1 - (atmosphere / absolute) ** 0.286);
};

/** The same for air stated by its volume at filling. */
export const trappedAirEnergy = (atFilling: number, pressure: number): number =>
  gasEnergy(airVolume(atFilling, pressure), pressure);

/** Force on a plug or cover, N. */
export const plugForce = (diameter: number, pressure: number): number =>
  (Math.PI / 4) * diameter ** 2 * pressure;
