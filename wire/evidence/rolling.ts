/** Rolling as evidence: the strain it left in the barrel, as noted or as it must be at least, and whether that matters. */
import {
  type Evidence,
  type Metal,
  type PlateInHand,
  priorMetal,
  type Rolled,
  type RollingStrain,
} from '@hoopwright/core/steel';
import type { SteelFile } from '../tank/format/steelFile.ts';
import { rolledAs } from '../tank/rolledAs.ts';

/** Plate of the tank rolled to the barrel, computed layer by layer. */
export interface Bent {
  /** Typical metal of the grade: the strain that rolling leaves hardly depends on it. */
  readonly metal: Metal;
  readonly rolled: Rolled;
  /** mm. */
  readonly thickness: number;
  readonly insideDiameter: number;
  /** Without a note it was bent once, a little past its radius. */
  readonly noted: boolean;
}

/** Undefined where nothing is rolled, or the wall is thicker than a tenth of the radius. */
export function bentOf({ rolling }: SteelFile, plate: PlateInHand): Bent | undefined {
  const { wall, radius } = plate;
  if (radius === undefined) return undefined;
  const metal = priorMetal(plate);
  const rolled = rolledAs(rolling ?? { passes: 1 }, metal, { wall, radius });
  if (rolled === undefined) return undefined;
  return { metal, rolled, thickness: wall, insideDiameter: 2 * radius - wall, noted: rolling !== undefined };
}

/** A computed rolling strain is good to a fifth: the rolls' true radius is not known. Our estimate. */
const ROLLING_DEVIATION = 0.2;

/** The note as evidence; none where there is no note. */
export function rollingOf({ rolling }: SteelFile, bent: Bent | undefined): Evidence['rolling'] {
  if (rolling === undefined || bent === undefined) return [];
  const mean = bent.rolled.averagePlastic;
  const passes = rolling.passes === 1 ? '1 pass' : `${rolling.passes} passes`;
  const strain: RollingStrain = {
    name: `${rolling.machine} machine, ${passes}`,
    mean,
    deviation: ROLLING_DEVIATION * mean,
  };
  return [strain];
}
