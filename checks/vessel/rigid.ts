/** A closed cylinder of radius over wall 1: pressure is then p r0/t0, as the tables print it. */
import { root } from '../../core/math/root.ts';
import type { Metal } from '../../core/steel/plane.ts';
import { atHoopStrain, longCylinder, pressureMaximum } from '../../core/stretch/thin/vessel.ts';

export interface CylinderPath {
  nominalAt(hoop: number): number;
  strainAt(nominal: number): number;
  maximum(): { nominal: number; hoop: number };
}

export const cylinderPath = (metal: Metal): CylinderPath => {
  const vessel = longCylinder(metal, 100, 100);
  const nominalAt = (hoop: number): number => atHoopStrain(vessel, hoop).pressure;
  const maximum = (): { nominal: number; hoop: number } => {
    const found = pressureMaximum(vessel);
    if (!found) throw new Error('the pressure of this cylinder has no maximum');
    return { nominal: found.pressure, hoop: found.hoop };
  };
  return {
    nominalAt,
    maximum,
    strainAt: (nominal) => root((x) => nominalAt(x) - nominal, 1e-6, maximum().hoop),
  };
};
