/** One pair of axes with a stress-strain curve in it. */
import type { CouponCurve } from '@hoopwright/core/steel';
import { scaleLinear } from 'd3-scale';
import { fixed } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { area, hatch, lettering, type Mark, type Point, SMALL, stroke } from '../sheet/mark.ts';
import { textWidth } from '../sheet/measure.ts';

export interface NamedPoint {
  readonly of: string;
  readonly label: string;
  readonly strain: number;
  readonly stress: number;
  /** Plastic strain of the offset line through it. */
  readonly offset?: number;
}

export interface Panel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly curve: CouponCurve;
  readonly young: number;
  /** Readings that the curve leaves out. */
  readonly leftOut: readonly { readonly strain: number; readonly stress: number }[];
  readonly named: readonly NamedPoint[];
  /** Strain at the right edge, at least. */
  readonly furthest: number;
  /** Strain from which nothing is trusted: hatched. */
  readonly doubtedFrom?: number;
  /** Draws single readings. */
  readonly readings: boolean;
}

interface Axes {
  readonly x: (strain: number) => number;
  readonly y: (stress: number) => number;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly reach: number;
}

export const panelMarks = (panel: Panel, manner: Manner): Mark[] => {
  const axes = axesOf(panel);
  return [
    ...axisMarks(panel, axes, manner),
    ...doubtMarks(panel, axes),
    ...curveMarks(panel, axes),
    ...panel.named.flatMap((point) => namedMarks(point, panel, axes)),
  ];
};

const axesOf = ({ left, right, top, bottom, curve, furthest }: Panel): Axes => {
  const within = curve.stress.filter((_, k) => curve.strain[k] <= furthest);
  const highest = within.reduce((most, value) => Math.max(most, value), 100);
  const x = scaleLinear().domain([0, furthest]).range([left, right]).nice(5);
  const y = scaleLinear()
    .domain([0, 1.08 * highest])
    .range([bottom, top])
    .nice(5);
  return { x, y, xTicks: x.ticks(6), yTicks: y.ticks(6), reach: x.domain()[1] };
};

const axisMarks = (
  { left, right, top, bottom }: Panel,
  { x, y, xTicks, yTicks }: Axes,
  manner: Manner,
): Mark[] => {
  const digits = Math.max(...xTicks.map((tick) => decimalsOf(100 * tick)));
  return [
    ...xTicks.flatMap((tick) => [
      {
        ...stroke('grid', [
          [x(tick), bottom],
          [x(tick), top],
        ]),
        tone: 'faint' as const,
      },
      lettering([x(tick), bottom + 16], fixed(manner, 100 * tick, digits), { anchor: 'middle', size: SMALL }),
    ]),
    ...yTicks.flatMap((tick) => [
      {
        ...stroke('grid', [
          [left, y(tick)],
          [right, y(tick)],
        ]),
        tone: 'faint' as const,
      },
      lettering([left - 6, y(tick) + 4], fixed(manner, tick, 0), { anchor: 'end', size: SMALL }),
    ]),
    stroke(
      'outline',
      [
        [left, top],
        [left, bottom],
        [right, bottom],
      ],
      'axes',
    ),
    lettering([right, bottom + 34], 'engineering strain, %', { anchor: 'end', size: SMALL }),
    lettering([left, top - 8], 'engineering stress, MPa', { size: SMALL }),
  ];
};

const decimalsOf = (value: number): number =>
  Number(value.toPrecision(6)).toString().split('.')[1]?.length ?? 0;

const doubtMarks = ({ right, top, bottom, doubtedFrom }: Panel, { x, reach }: Axes): Mark[] => {
  if (doubtedFrom === undefined || doubtedFrom >= reach) return [];
  const from = Math.max(x(0), x(doubtedFrom));
  return [
    area(
      hatch('forbidden'),
      [
        [from, top],
        [right, top],
        [right, bottom],
        [from, bottom],
      ],
      'not trusted',
    ),
    lettering([from + 4, top + 12], 'slipped: not used', { size: SMALL }),
  ];
};

/** Readings are 1.5 wide: seen apart at print size, small enough for hundreds. */
const READING = 1.5;

const curveMarks = ({ curve, leftOut, readings }: Panel, { x, y, reach }: Axes): Mark[] => {
  const inside = ({ strain, stress }: { strain: number; stress: number }): boolean =>
    strain >= 0 && strain <= reach && stress >= 0 && y(stress) > 0;
  const points = curve.strain.map((strain, k) => ({ strain, stress: curve.stress[k] })).filter(inside);
  const at = ({ strain, stress }: { strain: number; stress: number }): Point => [x(strain), y(stress)];
  const rings = (list: typeof points, filled: boolean): Mark[] =>
    list.map((point) => ({ kind: 'ring', at: at(point), radius: READING, line: 'narrow', filled }));
  return [
    stroke('outline', points.map(at), 'curve'),
    ...(readings ? rings(points, true) : []),
    ...rings(leftOut.filter(inside), false),
  ];
};

const namedMarks = ({ of, label, strain, stress, offset }: NamedPoint, panel: Panel, axes: Axes): Mark[] => {
  const { x, y, reach } = axes;
  if (strain > reach) return [];
  const [px, py] = [x(strain), y(stress)];
  const line: Mark[] =
    offset === undefined || !panel.readings
      ? []
      : [
          stroke(
            'narrow',
            [
              [x(offset), y(0)],
              [x(offset + (1.12 * stress) / panel.young), y(1.12 * stress)],
            ],
            `${of} line`,
          ),
        ];
  const fitsRight = px + 14 + textWidth(label, SMALL) < panel.right;
  const below = of === 'Rm' ? -10 : 22;
  return [
    ...line,
    { kind: 'ring', at: [px, py], radius: 4, line: 'outline', of },
    lettering([fitsRight ? px + 10 : px - 6, py + below], label, {
      anchor: fitsRight ? 'start' : 'end',
      size: SMALL,
      of,
    }),
  ];
};
