/** The drawing of the tank. */
export { type Field, type FieldName, marginField, strainField, wallField } from './field.ts';
export { type Stance, stanceOf } from './shape/stance.ts';
export type { States } from './table.ts';
export { tankDrawing } from './tankDrawing.ts';
export { type TankView, tankView } from './tankView.ts';
export { legend } from './table.ts';
export { type TankSheet, TIMES, type Times } from './tankSheet.ts';
