/** The drawing and the curve of a forecast as SVG, with everything taken from the forecast itself. */
import type { Forecast, StretchRange } from '@hoopwright/core/stretch';
import type { Band } from '../curve/band.ts';
import { growthCurve } from '../curve/growthCurve.ts';
import { stanceOf } from '../drawing/shape/stance.ts';
import { tankDrawing } from '../drawing/tankDrawing.ts';
import type { Times } from '../drawing/tankSheet.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import type { TitleBlock } from '../sheet/titleBlock.ts';
import { toSvg } from '../sheet/svg.ts';

/** What the forecast does not know of the sheet: project, revision, date; how it is written. */
export interface SheetOrders {
  readonly block?: Partial<Omit<TitleBlock, 'title' | 'serial' | 'invented' | 'forecast'>>;
  readonly manner?: Manner;
  readonly times?: Times;
  /** Foreseen range, drawn as a band. */
  readonly range?: StretchRange;
}

/** A name that begins so is of invented data, and every sheet says it. */
const INVENTED = /^INVENTED[:\s]*/;

const blockOf = ({ datum }: Forecast, orders: SheetOrders): TitleBlock => {
  const { name, serial } = datum.solver.shell.tank;
  return {
    ...orders.block,
    title: name.replace(INVENTED, ''),
    ...(serial === undefined ? {} : { serial }),
    invented: INVENTED.test(name),
    forecast: 'current',
  };
};

/** The tank as it stands when it is released, or at the end of the path where nothing is. */
export function drawingSvg(forecast: Forecast, orders: SheetOrders = {}): string {
  const { datum, released, path, start } = forecast;
  const { tank } = datum.solver.shell;
  const moment = forecast.held ?? forecast.arrived ?? path[path.length - 1] ?? start;
  const stance = stanceOf(forecast, moment);
  return toSvg(
    tankDrawing({
      tank,
      stance,
      states: {
        welded: {
          girths: datum.girths,
          content: datum.volume,
          thinnest: Math.min(...tank.courses.map((course) => course.wall)),
        },
        under: stance,
        ...(released === undefined ? {} : { left: stanceOf(forecast, released.left) }),
      },
      block: blockOf(forecast, orders),
      ...(orders.times === undefined ? {} : { times: orders.times }),
      manner: orders.manner ?? USUAL_MANNER,
    }),
  );
}

export const curveSvg = (forecast: Forecast, orders: SheetOrders = {}): string =>
  toSvg(
    growthCurve({
      forecast,
      tank: forecast.datum.solver.shell.tank,
      block: blockOf(forecast, orders),
      ...(orders.range === undefined ? {} : { ranges: { growth: growthBand(orders.range) } }),
      manner: orders.manner ?? USUAL_MANNER,
    }),
  );

/** Growth on the way up, from zero. */
export function growthBand({ band }: StretchRange): Band {
  const line = (read: (point: StretchRange['band'][number]) => number): [number, number][] => [
    [0, 0],
    ...band
      .map((point): [number, number] => [read(point), point.pressure])
      .filter(([x]) => Number.isFinite(x)),
  ];
  return {
    median: line(({ growth }) => growth.median),
    fifty: { low: line(({ growth }) => growth.half[0]), high: line(({ growth }) => growth.half[1]) },
    ninety: { low: line(({ growth }) => growth.wide[0]), high: line(({ growth }) => growth.wide[1]) },
  };
}
