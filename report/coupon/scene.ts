/** One tensile test as a small drawing: the whole engineering curve, and its beginning with the offset lines. */
import type { CouponResult, CouponTest } from '@hoopwright/core/steel';
import { figure, written } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { area, hatch, LARGE, lettering, type Mark, type Scene, SMALL } from '../sheet/mark.ts';
import { fitted } from '../sheet/measure.ts';
import { type NamedPoint, type Panel, panelMarks } from './panel.ts';
import { verdictText } from './words.ts';

export interface CouponDrawing {
  readonly name: string;
  readonly test: CouponTest;
  readonly result: CouponResult;
  /** The file says that its figures are made up. */
  readonly invented?: boolean;
}

const WIDTH = 1200;
const HEIGHT = 500;
/** Strain shown in the panel of the beginning: past 1 % plastic strain of any austenitic steel. */
const BEGINNING = 0.016;

export const couponScene = (drawing: CouponDrawing, manner: Manner = USUAL_MANNER): Scene => {
  const { name, result } = drawing;
  const title = `Tensile test ${name}`;
  const named = namedPoints(result, manner);
  return {
    width: WIDTH,
    height: HEIGHT,
    title: `${title}${drawing.invented ? ' (invented)' : ''}: ${named.map(({ label }) => label).join(', ')}`,
    marks: [
      ...headMarks(drawing, title, manner),
      ...(drawing.invented ? inventedMarks() : []),
      ...panelMarks(wholePanel(drawing, named), manner),
      ...panelMarks(beginningPanel(drawing, named), manner),
    ],
    patches: [],
  };
};

const headMarks = ({ result }: CouponDrawing, title: string, manner: Manner): Mark[] => {
  const verdict = verdictText(result.verdict, undefined, manner);
  return [
    lettering([70, 36], [{ text: fitted(title, LARGE, WIDTH - 360), bold: true }], { size: LARGE }),
    lettering([70, 56], fitted(verdict, SMALL, WIDTH - 140), { size: SMALL, of: 'verdict' }),
  ];
};

/** A hatched border and the word: nobody takes it for a measurement. */
const inventedMarks = (): Mark[] => {
  const edge = 8;
  const strip = (left: number, top: number, right: number, bottom: number): Mark =>
    area(
      hatch('right'),
      [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ],
      'invented',
    );
  return [
    strip(0, 0, WIDTH, edge),
    strip(0, HEIGHT - edge, WIDTH, HEIGHT),
    strip(0, edge, edge, HEIGHT - edge),
    strip(WIDTH - edge, edge, WIDTH, HEIGHT - edge),
    lettering([1150, 36], [{ text: 'INVENTED DATA', bold: true }], { anchor: 'end', size: LARGE }),
  ];
};

/** Points of the curve that have a name in ISO 6892-1, at the strain where they were read. */
const namedPoints = (result: CouponResult, manner: Manner): NamedPoint[] => {
  const { youngUsed, proof02, proof10, strength, uniform, elongation } = result;
  const mpa = (value: number): string => written(figure(manner, 'stress', value));
  const percent = (value: number): string => written(figure(manner, 'strain', value));
  const last = result.curve.strain.length - 1;
  const atLeast = result.findings.some(({ kind }) => kind === 'ends-before-break') ? 'at least ' : '';
  return [
    ...(proof02 === undefined
      ? []
      : [
          {
            of: 'Rp0.2',
            label: `Rp0.2 ${mpa(proof02)}`,
            strain: 0.002 + proof02 / youngUsed,
            stress: proof02,
            offset: 0.002,
          },
        ]),
    ...(proof10 === undefined
      ? []
      : [
          {
            of: 'Rp1.0',
            label: `Rp1.0 ${mpa(proof10)}`,
            strain: 0.01 + proof10 / youngUsed,
            stress: proof10,
            offset: 0.01,
          },
        ]),
    ...(strength === undefined || uniform === undefined
      ? []
      : [
          {
            of: 'Rm',
            label: `Rm ${mpa(strength)}, Ag ${percent(uniform)}`,
            strain: uniform + strength / youngUsed,
            stress: strength,
          },
        ]),
    ...(elongation === undefined
      ? []
      : [
          {
            of: 'A',
            label: `A ${atLeast}${percent(elongation)}`,
            strain: result.curve.strain[last],
            stress: result.curve.stress[last],
          },
        ]),
  ];
};

const wholePanel = (drawing: CouponDrawing, named: readonly NamedPoint[]): Panel => ({
  ...panelOf(drawing, named),
  left: 70,
  right: 640,
  furthest: drawing.result.curve.strain.reduce((most, strain) => Math.max(most, strain), 0.02),
  readings: false,
});

const beginningPanel = (drawing: CouponDrawing, named: readonly NamedPoint[]): Panel => ({
  ...panelOf(
    drawing,
    named.filter(({ offset }) => offset !== undefined),
  ),
  left: 730,
  right: 1150,
  furthest: BEGINNING,
  readings: true,
});

const panelOf = ({ test, result }: CouponDrawing, named: readonly NamedPoint[]) => {
  const kept = new Set(result.curve.at);
  const left = test.strain.flatMap((strain, k) =>
    kept.has(k) || test.stress[k] < 0 ? [] : [{ strain: strain - result.toe, stress: test.stress[k] }],
  );
  const slips = result.findings.flatMap((finding) =>
    finding.kind === 'slip' || finding.kind === 'grip-slip' ? [finding.at] : [],
  );
  const doubted =
    slips.length > 0 ? result.curve.strain[result.curve.at.indexOf(Math.min(...slips))] : undefined;
  return {
    top: 86,
    bottom: 440,
    curve: result.curve,
    young: result.youngUsed,
    leftOut: left,
    named,
    ...(doubted !== undefined && { doubtedFrom: doubted }),
  };
};
