/** A scene as SVG text. Same scene, same bytes. It stands alone: no style sheet, no script, no font file. */
import { LINES } from './line.ts';
import type { Area, Fill, Mark, Point, Ring, Scene, Stroke, Text, Tone } from './mark.ts';

export interface Palette {
  readonly ink: string;
  readonly faint: string;
  readonly accent: string;
  readonly paper: string;
}

export const DAYLIGHT: Palette = { ink: '#111', faint: '#5a5a5a', accent: '#0a5ad4', paper: '#fff' };

/** One legible face with tabular figures; falls back to what there is. */
export const FACE = "B612, 'DejaVu Sans', Verdana, sans-serif";

/** A3 lying: the sheet prints to the scale it states. */
const MM_WIDE = 420;

/** Writes the scene. Coordinates are rounded to 0.01; throws where one is no number. */
export function toSvg(scene: Scene, palette: Palette = DAYLIGHT): string {
  const { width, height } = scene;
  const wide = px(MM_WIDE * (width / 1200));
  const high = px((MM_WIDE * height) / 1200);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}mm" height="${high}mm" viewBox="0 0 ${px(width)} ${px(height)}" font-family="${FACE}" role="img">`,
    `<title>${escaped(scene.title)}</title>`,
    hatchings(palette),
    `<rect width="${px(width)}" height="${px(height)}" fill="${palette.paper}"/>`,
    ...scene.marks.map((mark) => markSvg(mark, palette)),
    '</svg>',
    '',
  ].join('\n');
}

/** Hatching at 45°, continuous narrow; the spacing suits thin walls. */
function hatchings({ ink }: Palette): string {
  const pattern = (name: string, turn: number, gap: number): string =>
    `<pattern id="hatch-${name}" width="${gap}" height="${gap}" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">` +
    `<path d="M0 0V${gap}" stroke="${ink}" stroke-width="${LINES.narrow.width * 1.2}"/></pattern>`;
  return `<defs>${pattern('right', 45, 3.2)}${pattern('left', -45, 3.2)}${pattern('forbidden', 45, 8)}</defs>`;
}

function markSvg(mark: Mark, palette: Palette): string {
  switch (mark.kind) {
    case 'stroke':
      return strokeSvg(mark, palette);
    case 'area':
      return areaSvg(mark, palette);
    case 'ring':
      return ringSvg(mark, palette);
    case 'text':
      return textSvg(mark, palette);
  }
}

function strokeSvg(mark: Stroke, palette: Palette): string {
  const style = LINES[mark.line];
  const dashes = style.dashes.length === 0 ? '' : ` stroke-dasharray="${style.dashes.map(px).join(' ')}"`;
  return (
    `<path${of(mark)} class="${mark.line}" d="${pathOf(mark.points, mark.closed === true)}" fill="none" ` +
    `stroke="${palette[mark.tone ?? 'ink']}" stroke-width="${px(style.width)}"${dashes} stroke-linejoin="round"/>`
  );
}

const areaSvg = (mark: Area, palette: Palette): string =>
  `<path${of(mark)} d="${pathOf(mark.points, true)}" ${fillSvg(mark.fill, palette)}/>`;

function fillSvg(fill: Fill, palette: Palette): string {
  if (fill.kind === 'hatch') return `fill="url(#hatch-${fill.hatch})"`;
  // A hair of the same colour closes the seams between neighbours.
  if (fill.kind === 'colour') return `fill="${fill.colour}" stroke="${fill.colour}" stroke-width="0.5"`;
  const opacity = fill.opacity === undefined ? '' : ` fill-opacity="${px(fill.opacity)}"`;
  return `fill="${palette[fill.tone]}"${opacity}`;
}

function ringSvg(mark: Ring, palette: Palette): string {
  const [x, y] = mark.at;
  const fill = mark.filled === true ? palette.ink : palette.paper;
  return `<circle${of(mark)} cx="${px(x)}" cy="${px(y)}" r="${px(mark.radius)}" fill="${fill}" stroke="${palette.ink}" stroke-width="${px(LINES[mark.line].width)}"/>`;
}

function textSvg(mark: Text, palette: Palette): string {
  const [x, y] = mark.at;
  const turn = mark.upright === true ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : '';
  const clear =
    mark.clear === true
      ? ` stroke="${palette.paper}" stroke-width="3.5" stroke-linejoin="round" paint-order="stroke"`
      : '';
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  const runs = mark.runs
    .map((run) => runSvg(run.text, run.tone ?? 'ink', run.bold === true, palette))
    .join('');
  return `<text${of(mark)} x="${px(x)}" y="${px(y)}" font-size="${px(mark.size)}"${anchor}${turn}${clear} xml:space="preserve">${runs}</text>`;
}

function runSvg(text: string, tone: Tone, bold: boolean, palette: Palette): string {
  const weight = bold ? ' font-weight="bold"' : '';
  return `<tspan fill="${palette[tone]}"${weight}>${escaped(text)}</tspan>`;
}

const of = (mark: { readonly of?: string }): string =>
  mark.of === undefined ? '' : ` data-of="${escaped(mark.of)}"`;

const pathOf = (points: readonly Point[], closed: boolean): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('') + (closed ? 'Z' : '');

export function px(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a place on the sheet must be a number, got ${value}`);
  const text = value.toFixed(2).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => ESCAPES[c]);
