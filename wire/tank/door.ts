/** The tank file: text to tank, tank file to text, and its JSON Schema. */
export { DIN_HEADS, type HeadFile } from './headFile.ts';
export { type ParsedTank, type ParseOptions, parseTankFile } from './parseTankFile.ts';
export { AS_GIVEN } from './plausible.ts';
export { QUANTITIES, type Quantity, quantityAt } from './quantity.ts';
export type { FlowFile, PartSteelFile, SteelFile } from './steelFile.ts';
export { hasEvidence } from './steelContradictions.ts';
export { TANK_FILE_VERSION, type TankFile, tankFileSchema, writeTankFile } from './tankFile.ts';
export { type FlowFrom, scaledFlow, STEEL_DEFAULTS } from './toSteel.ts';
export { TANK_DEFAULTS } from './toTank.ts';
