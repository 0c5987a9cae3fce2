/** The flow curve of the plate with its range, as a drawing: true stress against true plastic strain. Same input, same bytes. */
import { type Belief, curveRange, type CurvePoint } from '@hoopwright/core/steel';
import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { say } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { STEEL_ENGLISH } from './english.ts';

const WIDTH = 900;
const HEIGHT = 560;
const EDGE = { left: 84, right: 30, top: 84, bottom: 64 };
const LAST = 0.4;
const POINTS = 80;

/** Band of nine of ten (light), of half of all (darker), the middle as a fine line; evidence ends are not drawn. */
export function steelCurveSvg(tank: string, belief: Belief, manner: Manner = USUAL_MANNER): string {
  const strains = Array.from(
    { length: POINTS },
    (_, k) => 0.002 + (LAST - 0.002) * (k / (POINTS - 1)) ** 1.6,
  );
  const points = curveRange(belief.draws, strains);
  const top = Math.max(...points.map(({ stress }) => stress.wide[1]));
  const x = scaleLinear([0, LAST], [EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear([0, top], [HEIGHT - EDGE.bottom, EDGE.top]).nice(6);
  const band = (low: (p: CurvePoint) => number, high: (p: CurvePoint) => number): string =>
    area<CurvePoint>(
      (p) => x(p.plastic),
      (p) => y(low(p)),
      (p) => y(high(p)),
    ).digits(2)(points) ?? '';
  const middle = line<CurvePoint>(
    (p) => x(p.plastic),
    (p) => y(p.stress.median),
  ).digits(2)(points);
  const across = y.ticks(6).map((stress) => gridLine(EDGE.left, y(stress), WIDTH - EDGE.right, y(stress)));
  const figures = [
    ...y
      .ticks(6)
      .map((stress) => lettering(EDGE.left - 10, y(stress) + 5, 'end', say(manner, 'stress', stress))),
    ...x
      .ticks(8)
      .map((ep) => lettering(x(ep), HEIGHT - EDGE.bottom + 22, 'middle', say(manner, 'strain', ep))),
  ];
  const title = STEEL_ENGLISH.heading.replace('{tank}', tank);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="B612, 'DejaVu Sans', sans-serif" font-size="14" role="img" aria-label="${escaped(title)}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    ...across,
    `<path d="${band(
      (p) => p.stress.wide[0],
      (p) => p.stress.wide[1],
    )}" fill="#000" fill-opacity="0.12"/>`,
    `<path d="${band(
      (p) => p.stress.half[0],
      (p) => p.stress.half[1],
    )}" fill="#000" fill-opacity="0.22"/>`,
    `<path d="${middle ?? ''}" fill="none" stroke="#000" stroke-width="1"/>`,
    `<path d="M${EDGE.left},${EDGE.top}V${HEIGHT - EDGE.bottom}H${WIDTH - EDGE.right}" fill="none" stroke="#000" stroke-width="2"/>`,
    ...figures,
    lettering(EDGE.left, 34, 'start', title, 20),
    lettering(
      EDGE.left,
      60,
      'start',
      STEEL_ENGLISH.curveAxes.replace('{rate}', String(belief.draws[0].rate.reference)),
    ),
    '</svg>\n',
  ].join('\n');
}

const gridLine = (x1: number, y1: number, x2: number, y2: number): string =>
  `<line x1="${x1}" y1="${y1.toFixed(2)}" x2="${x2}" y2="${y2.toFixed(2)}" stroke="#000" stroke-width="0.3"/>`;

const lettering = (x: number, y: number, anchor: string, text: string, size?: number): string =>
  `<text x="${x.toFixed(2)}" y="${y.toFixed(2)}" text-anchor="${anchor}"${size === undefined ? '' : ` font-size="${size}" font-weight="bold"`}>${escaped(text)}</text>`;

const escaped = (text: string): string =>
  text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign,
  );
