/**
 * What a sheet is made of, as values: the command line writes them as SVG, a page renders the same ones itself.
 * Lengths are sheet units, 1200 to the width of an A3 sheet (420 mm), x to the right, y downwards.
 */
import type { Quantity } from '../figure/quantity.ts';
import type { LineType } from './line.ts';

export type Point = readonly [x: number, y: number];

/** `faint` is ink for what stands behind: units, grid, notes. `accent`: what the hand can move. */
export type Tone = 'ink' | 'faint' | 'accent' | 'paper';

/** `left` and `right`: hatching of a cut face, leaning so. `forbidden`: hatching of what is beyond a limit. */
export type Fill =
  | { readonly kind: 'hatch'; readonly hatch: 'left' | 'right' | 'forbidden' }
  | { readonly kind: 'tone'; readonly tone: Tone; readonly opacity?: number }
  | { readonly kind: 'colour'; readonly colour: string };

export interface Stroke {
  readonly kind: 'stroke';
  readonly line: LineType;
  readonly points: readonly Point[];
  readonly closed?: boolean;
  readonly tone?: Tone;
  /** What it stands for, e.g. "initial outline", "girth middle": a page finds it by this. */
  readonly of?: string;
}

export interface Area {
  readonly kind: 'area';
  readonly fill: Fill;
  readonly points: readonly Point[];
  readonly of?: string;
}

export interface Ring {
  readonly kind: 'ring';
  readonly at: Point;
  readonly radius: number;
  readonly line: LineType;
  readonly filled?: boolean;
  readonly of?: string;
}

/** A figure that stands in a text, so that a page can let it be edited where it stands. Inside units. */
export interface Editable {
  readonly quantity: Quantity;
  readonly value: number;
  /** Key of the tank file, e.g. "barrel.insideDiameter_mm"; absent where it is computed. */
  readonly path?: string;
}

export interface Run {
  readonly text: string;
  readonly tone?: Tone;
  readonly bold?: boolean;
  readonly figure?: Editable;
}

export interface Text {
  readonly kind: 'text';
  /** Base line at its anchor. */
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly runs: readonly Run[];
  /** Turned a quarter to the left: read from the right side of the sheet, as ISO 129-1 wants it. */
  readonly upright?: boolean;
  /** Kept readable over lines by a seam of paper around the letters. */
  readonly clear?: boolean;
  readonly of?: string;
}

export type Mark = Stroke | Area | Ring | Text;

/** A piece of wall on the sheet that can be pointed at. */
export interface Patch {
  readonly part: string;
  /** Height of the inside face as welded, mm over the bottom tangent line. */
  readonly z: number;
  /** Entry of the profile that the wall was drawn from; absent where it is drawn as welded. */
  readonly place?: number;
  readonly points: readonly Point[];
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  /** One sentence for those who cannot see it. */
  readonly title: string;
  readonly marks: readonly Mark[];
  readonly patches: readonly Patch[];
  /** Sentences that say what is drawn larger than it is. */
  readonly enlarged?: readonly string[];
}

export const stroke = (line: LineType, points: readonly Point[], of?: string): Stroke => ({
  kind: 'stroke',
  line,
  points,
  ...(of === undefined ? {} : { of }),
});

export const area = (fill: Fill, points: readonly Point[], of?: string): Area => ({
  kind: 'area',
  fill,
  points,
  ...(of === undefined ? {} : { of }),
});

export const INK: Fill = { kind: 'tone', tone: 'ink' };
export const PAPER: Fill = { kind: 'tone', tone: 'paper' };
export const hatch = (hatching: 'left' | 'right' | 'forbidden'): Fill => ({ kind: 'hatch', hatch: hatching });

export interface Lettering {
  readonly size?: number;
  readonly anchor?: Text['anchor'];
  readonly upright?: boolean;
  readonly clear?: boolean;
  readonly of?: string;
}

export const lettering = (at: Point, runs: string | readonly Run[], how: Lettering = {}): Text => ({
  kind: 'text',
  at,
  anchor: how.anchor ?? 'start',
  size: how.size ?? TEXT,
  runs: typeof runs === 'string' ? [{ text: runs }] : runs,
  ...(how.upright === true ? { upright: true } : {}),
  ...(how.clear === true ? { clear: true } : {}),
  ...(how.of === undefined ? {} : { of: how.of }),
});

/** Lettering sizes in sheet units: title, plain text, notes. */
export const LARGE = 17;
export const TEXT = 12.5;
export const SMALL = 10.5;
