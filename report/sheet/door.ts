/** The drawing sheet: marks, lines, frame, title block, SVG. */
export * from './line.ts';
export { area, hatch, lettering, stroke } from './mark.ts';
export type * from './mark.ts';
export { boxOf, type Box, overlap } from './measure.ts';
export { DAYLIGHT, FACE, type Palette, toSvg } from './svg.ts';
export type { TitleBlock } from './titleBlock.ts';
