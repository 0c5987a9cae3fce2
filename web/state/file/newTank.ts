/** A tank of one's own from four numbers: the rest as is usual, to be changed on the drawing. */
import { settledSteel } from './assumed.ts';
import type { FileDraft } from './edit.ts';

export interface FourNumbers {
  readonly name: string;
  /** mm. */
  readonly insideDiameter: number;
  readonly length: number;
  readonly wall: number;
  /** bar. */
  readonly workingPressure: number;
}

/** Semi-ellipsoidal heads 2:1 of the same sheet, a girth in the middle of the barrel, stretched to 1.5 times. */
export const ownTank = (four: FourNumbers): FileDraft => settledSteel(bareTank(four));

const bareTank = ({ name, insideDiameter, length, wall, workingPressure }: FourNumbers): FileDraft => ({
  hoopwright: 1,
  name,
  barrel: { insideDiameter_mm: insideDiameter, length_mm: length, wall_mm: wall },
  heads: {
    top: { shape: 'semi-ellipsoidal', ratio: 2, wall_mm: wall },
    bottom: { shape: 'semi-ellipsoidal', ratio: 2, wall_mm: wall },
  },
  girths: [{ name: 'middle', at_mm: length / 2 }],
  steel: { grade: '1.4307', product: 'cold-rolled' },
  stand: { axis: 'upright' },
  duty: { workingPressure_bar: workingPressure, stretchFactor: 1.5, pump_L_per_min: 1 },
});
