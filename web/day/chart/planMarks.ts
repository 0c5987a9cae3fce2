/** The plan on the axes of the curve: what it foresees as a band with a fine median line, its limits as hatched edges. */
import { fromBar, fromPercent } from '@hoopwright/core/units';
import {
  axisFor,
  axisMarks,
  between,
  lineOn,
  type Panel,
  type Place,
  xOf,
  yOf,
} from '@hoopwright/report/curve';
import { type Manner, scaleOf } from '@hoopwright/report/figure';
import { area, hatch, lettering, type Mark, stroke } from '@hoopwright/report/sheet';
import { allowedBy, type Plan } from '@hoopwright/wire/plan';
import { say } from '../../words/day/say.ts';
import { growthText, pressureText } from '../said/figures.ts';

/** Room around the panel for ticks and titles, sheet units. */
const ROOM = { left: 44, right: 12, top: 26, bottom: 34 };
const EDGE = 9;
const SIZE = 11;

export interface PanelSize {
  readonly width: number;
  readonly height: number;
}

/** Room for what is foreseen and a little more; for all up to the limit once the growth comes near that. */
export function panelFor(plan: Plan, manner: Manner, size: PanelSize, grown: number): Panel {
  const limit = allowedBy(plan.limits, 'growthUnderPressure_percent') ?? 0;
  const { value, high = 1.3 * value } = plan.target.growth_percent.held;
  const most = grown > 1.1 * high ? Math.max(limit, grown) : Math.min(Math.max(limit, high), 1.05 * high);
  return {
    left: ROOM.left,
    right: Math.max(ROOM.left + 40, size.width - ROOM.right),
    top: ROOM.top,
    bottom: Math.max(ROOM.top + 40, size.height - ROOM.bottom),
    x: axisFor(manner, 'growth', fromPercent(1.04 * most), 6),
    y: axisFor(manner, 'pressure', fromBar(1.1 * plan.target.pressure_bar), 6),
  };
}

export function planMarks(panel: Panel, plan: Plan, girth: string | undefined, manner: Manner): Mark[] {
  const { low, high, median } = foreseen(plan, girth);
  const middle = lineOn(panel, 'narrow', median, 'median');
  return [
    ...axisMarks(panel, {
      x: say('axisGrowth', { unit: scaleOf(manner.units, 'growth').unit }),
      y: say('axisPressure', { unit: scaleOf(manner.units, 'pressure').unit }),
    }),
    ...(low.length < 2
      ? []
      : [
          between(panel, { kind: 'tone', tone: 'ink', opacity: 0.13 }, low, high, 'foreseen'),
          ...bandLabel(panel, low, high),
        ]),
    ...(middle === undefined ? [] : [middle]),
    ...limits(panel, plan, manner),
  ];
}

/** Growth of a girth at the end of each step up to the release, lowest and highest. */
function foreseen(plan: Plan, girth: string | undefined) {
  const low: Place[] = [[0, 0]];
  const high: Place[] = [[0, 0]];
  const median: Place[] = [[0, 0]];
  let ranged = false;
  for (const step of plan.steps) {
    if (step.kind === 'release' || step.kind === 'drain') break;
    const all = step.expected?.girths ?? [];
    const one =
      all.find(({ name }) => name === girth) ??
      all.reduce<(typeof all)[number] | undefined>(
        (a, b) => (a === undefined || b.growth_percent.value > a.growth_percent.value ? b : a),
        undefined,
      );
    if (one === undefined || step.kind === 'approach') continue;
    const { value, low: l, high: h } = one.growth_percent;
    const p = fromBar(step.pressure_bar);
    median.push([fromPercent(value), p]);
    if (l === undefined || h === undefined) continue;
    ranged = true;
    low.push([fromPercent(l), p]);
    high.push([fromPercent(h), p]);
  }
  return ranged ? { low, high, median } : { low: [], high: [], median };
}

function bandLabel(panel: Panel, low: readonly Place[], high: readonly Place[]): Mark[] {
  const i = Math.max(1, Math.floor(0.45 * high.length));
  const [x, p] = high[i] ?? low[i];
  return [
    lettering([xOf(panel, x) + 6, yOf(panel, p) + 22], say('curveForeseen'), {
      size: SIZE,
      clear: true,
      of: 'foreseen',
    }),
  ];
}

/** Beyond them is hatched: never filled. */
function limits(panel: Panel, plan: Plan, manner: Manner): Mark[] {
  const growth = allowedBy(plan.limits, 'growthUnderPressure_percent');
  const pressure = allowedBy(plan.limits, 'pressure_bar');
  const { left, right, top, bottom } = panel;
  const marks: Mark[] = [];
  if (growth !== undefined && fromPercent(growth) <= panel.x.most) {
    const x = xOf(panel, fromPercent(growth));
    marks.push(
      area(
        hatch('forbidden'),
        [
          [x, top],
          [Math.min(right, x + EDGE), top],
          [Math.min(right, x + EDGE), bottom],
          [x, bottom],
        ],
        'limit',
      ),
      stroke(
        'narrow',
        [
          [x, top],
          [x, bottom],
        ],
        'limit',
      ),
      lettering([x - 4, bottom - 6], say('curveLimit'), {
        size: SIZE,
        upright: true,
        clear: true,
        of: 'limit',
      }),
    );
  }
  if (growth !== undefined && fromPercent(growth) > panel.x.most)
    marks.push(
      lettering([right - 4, bottom - 7], say('curveLimitOff', { growth: growthText(manner, growth) }), {
        size: SIZE,
        anchor: 'end',
        clear: true,
        of: 'limit',
      }),
    );
  if (pressure !== undefined) {
    const y = yOf(panel, fromBar(pressure));
    marks.push(
      area(
        hatch('forbidden'),
        [
          [left, y],
          [right, y],
          [right, Math.max(top, y - EDGE)],
          [left, Math.max(top, y - EDGE)],
        ],
        'limit',
      ),
      stroke(
        'narrow',
        [
          [left, y],
          [right, y],
        ],
        'limit',
      ),
    );
  }
  return marks;
}

/** Where the plan goes next. */
export function nextMark(panel: Panel, bar: number | undefined, manner: Manner): Mark[] {
  if (bar === undefined || bar <= 0) return [];
  const y = yOf(panel, fromBar(bar));
  return [
    {
      ...stroke(
        'hidden',
        [
          [panel.left, y],
          [panel.right, y],
        ],
        'next',
      ),
      tone: 'ink',
    },
    lettering([panel.right - 4, y + 14], say('curveNext', { pressure: pressureText(manner, bar) }), {
      size: SIZE,
      anchor: 'end',
      clear: true,
      of: 'next',
    }),
  ];
}
