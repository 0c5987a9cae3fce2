/** Room that lettering takes, so that nothing is set over anything else. */
import type { Point, Text } from './mark.ts';

/** Advance widths in hundredths of the size: the wider of B612 and DejaVu Sans, whichever the reader has. */
const WIDTHS: readonly (readonly [characters: string, width: number])[] = [
  ["'Iij", 30],
  [' ,.:;l|·', 35],
  ['ft', 40],
  ['!()-J[r²³', 45],
  ['"]°', 50],
  ['*/?\\_`csz–', 55],
  ['FLkvxy', 60],
  ['$0123456789EPSTYabdeghnopqu{}éäöüß', 65],
  ['ABCKRVXZ', 70],
  ['NU', 75],
  ['&DGHOQØ', 80],
  ['#+<=>^w~×→±−', 85],
  ['M', 90],
  ['%@Wm…', 100],
];

const WIDTH_OF = new Map(
  // oxlint-disable-next-line typescript/no-misused-spread -- code points are meant
  WIDTHS.flatMap(([characters, width]) => [...characters].map((c) => [c, width] as const)),
);

export const textWidth = (text: string, size: number): number => {
  let width = 0;
  for (const character of text) width += WIDTH_OF.get(character) ?? 80;
  return (width * size) / 100;
};

export const runsWidth = (text: Pick<Text, 'runs' | 'size'>): number =>
  text.runs.reduce((sum, run) => sum + textWidth(run.text, text.size) * (run.bold === true ? 1.1 : 1), 0);

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height above and depth below the base line, in sizes. */
const ASCENT = 0.76;
const DESCENT = 0.22;

export function boxOf(text: Text): Box {
  const width = runsWidth(text);
  const start = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? -width / 2 : -width;
  const [x, y] = text.at;
  const up = ASCENT * text.size;
  const down = DESCENT * text.size;
  if (text.upright === true)
    return { left: x - up, right: x + down, top: y - start - width, bottom: y - start };
  return { left: x + start, right: x + start + width, top: y - up, bottom: y + down };
}

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Breaks a text into lines no wider than `width`. */
export function wrapped(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}

/** Cuts a text that is too wide, with an ellipsis. */
export function fitted(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  let end = text.length;
  while (end > 1 && textWidth(`${text.slice(0, end)}…`, size) > width) end--;
  return `${text.slice(0, end).trimEnd()}…`;
}

export const moved = ([x, y]: Point, dx: number, dy: number): Point => [x + dx, y + dy];
