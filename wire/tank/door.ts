/** The tank file: text to tank, tank file to text, and its JSON Schema. */
export { DIN_HEADS, type HeadFile } from './format/headFile.ts';
export { type ParsedTank, type ParseOptions, parseTankFile } from './parseTankFile.ts';
export { AS_GIVEN } from './check/plausible.ts';
export { withoutCompiling } from './format/compiling.ts';
export { QUANTITIES, type Quantity, quantityAt } from './format/quantity.ts';
export type { FlowFile, PartSteelFile, SteelFile } from './format/steelFile.ts';
export { hasEvidence } from './check/steelContradictions.ts';
export { TANK_FILE_VERSION, type TankFile, tankFileSchema, writeTankFile } from './format/tankFile.ts';
export { type FlowFrom, scaledFlow, STEEL_DEFAULTS } from './toSteel.ts';
export { TANK_DEFAULTS } from './toTank.ts';
