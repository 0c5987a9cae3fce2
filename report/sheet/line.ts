/**
 * Lines of technical drawings after ISO 128-2: type, width, dashes. Their uses and numbers on mechanical drawings as in
 * ISO 128-24:2014 (numbers from memory; 05.1 for "initial outlines prior to forming" also in ISO 128-24).
 * Dash lengths after ISO 128-21: long dash 24 d, dash 12 d, gap 3 d, dot 0.5 d, for a line of width d.
 */

export type LineType =
  /** 01.2 continuous wide: visible outlines, frame. */
  | 'outline'
  /** 01.1 continuous narrow: dimension, extension and leader lines, hatching. */
  | 'narrow'
  /** 02.1 dashed narrow: hidden outlines. */
  | 'hidden'
  /** 04.1 long-dashed dotted narrow: centre lines. */
  | 'centre'
  /** 05.1 long-dashed double-dotted narrow: initial outlines before forming. */
  | 'initial'
  /** Charts only: the curve that matters most, and the axis grid. */
  | 'bold'
  | 'grid';

export interface LineStyle {
  /** Number in ISO 128; empty for lines that only charts have. */
  readonly number: string;
  readonly width: number;
  readonly dashes: readonly number[];
}

/** Widths 2:1, for A3: 0.5 and 0.25 mm are 1.43 and 0.71 sheet units. */
export const WIDE = 1.43;
export const NARROW = 0.72;

const LONG = 24 * NARROW;
const GAP = 3.6 * NARROW;
// A dot of 0.5 d would be too small for a screen: 1.6 d.
const DOT = 1.6 * NARROW;

export const LINES: Readonly<Record<LineType, LineStyle>> = {
  outline: { number: '01.2', width: WIDE, dashes: [] },
  narrow: { number: '01.1', width: NARROW, dashes: [] },
  hidden: { number: '02.1', width: NARROW, dashes: [9 * NARROW, GAP] },
  centre: { number: '04.1', width: NARROW, dashes: [LONG, GAP, DOT, GAP] },
  initial: { number: '05.1', width: NARROW, dashes: [LONG, GAP, DOT, GAP, DOT, GAP] },
  bold: { number: '', width: 2.2, dashes: [] },
  grid: { number: '', width: 0.4, dashes: [] },
};
