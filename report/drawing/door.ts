/** The drawing of the tank. */
export { type Field, type FieldName, marginField, strainField, wallField } from './field.ts';
export { type Stance, stanceOf } from './stance.ts';
export type { States } from './table.ts';
export { tankDrawing, type TankSheet, TIMES, type Times } from './tankDrawing.ts';
