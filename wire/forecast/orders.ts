/** How every edge of the program asks for a forecast, so that page, paper and command line print the same figures. */
import type { ForecastOrders } from '@hoopwright/core/stretch';
import { type Duty, stretchPressure, type Tank } from '@hoopwright/core/tank';
import { fromBar } from '@hoopwright/core/units';

export interface Asked {
  /** Pressure of release, MPa; absent: the stretch pressure of the duty. */
  readonly target?: number;
  /** Pressures to land on besides, MPa. */
  readonly at?: readonly number[];
}

export function usualOrders(
  tank: Tank,
  duty: Duty | undefined,
  { target, at = [] }: Asked = {},
): ForecastOrders {
  const top = target ?? (duty === undefined ? usualTop(tank) : stretchPressure(duty));
  return {
    ...(target === undefined ? {} : { target }),
    marks: [...at, ...roundMarks(top)],
  };
}

/** Every half bar up to the release pressure: what a log sheet has lines for. */
function roundMarks(top: number): number[] {
  const step = fromBar(top > fromBar(100) ? 5 : 0.5);
  return Array.from({ length: Math.min(400, Math.floor(top / step)) }, (_, i) => (i + 1) * step);
}

/** Without a duty: pressure at which the hoop of the barrel would stand at 600 MPa. */
const usualTop = (tank: Tank): number => (600 * 2 * tank.courses[0].wall) / tank.insideDiameter;
