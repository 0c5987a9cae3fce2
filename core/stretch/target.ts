/** At which pressure to release for a growth that is asked: under pressure on arrival, or left afterwards. */
import type { Duty, Tank } from '../tank/tank.ts';
import { type Forecast, type ForecastOrders, forecast } from './forecast.ts';

export interface GrowthAsked {
  /** Largest growth of girth, as a fraction. */
  readonly growth: number;
  /** True: what stays after release; false: under pressure on arrival. */
  readonly left: boolean;
}

export type GrowthAnswer =
  | { readonly kind: 'released'; readonly forecast: Forecast }
  /** The tank reaches its maximum first; the forecast runs there. */
  | { readonly kind: 'bursts before'; readonly forecast: Forecast };

const NEAR = 1e-5;
const TURNS = 6;

/**
 * Forecast released where the asked growth is met to 0.001 %. Holds at a stated pressure are kept; the duty's stretch
 * pressure is not. Secant on the pressure, which growth follows smoothly below the maximum.
 */
export function forecastToGrowth(
  tank: Tank,
  duty: Duty | undefined,
  asked: GrowthAsked,
  orders: ForecastOrders = {},
): GrowthAnswer {
  const whole = forecast(tank, undefined, orders);
  let pressure = pressureAt(whole, asked.growth);
  if (pressure === undefined)
    return { kind: 'bursts before', forecast: forecast(tank, duty, { ...orders, target: 1e3 }) };
  let last: { pressure: number; miss: number } | undefined;
  for (let turn = 0; ; turn++) {
    const answer = forecast(tank, duty, { ...orders, target: pressure });
    const reached = asked.left ? answer.released?.left.largest.growth : answer.arrived?.largest.growth;
    if (reached === undefined) return { kind: 'bursts before', forecast: answer };
    const miss = reached - asked.growth;
    if (Math.abs(miss) < NEAR || turn === TURNS) return { kind: 'released', forecast: answer };
    const slope =
      last === undefined
        ? growthPerPressure(whole, pressure)
        : (miss - last.miss) / (pressure - last.pressure);
    last = { pressure, miss };
    pressure -= miss / slope;
  }
}

/** Pressure at which the growth is first met on the way up, straight between moments. */
function pressureAt(whole: Forecast, growth: number): number | undefined {
  const way = whole.path.filter((m) => m.phase === 'stretch');
  const limit = whole.maximum?.growth ?? Infinity;
  const past = way.findIndex((m) => m.largest.growth >= growth);
  if (past < 1 || growth > limit) return undefined;
  const [a, b] = [way[past - 1], way[past]];
  const f = (growth - a.largest.growth) / (b.largest.growth - a.largest.growth);
  return a.pressure + f * (b.pressure - a.pressure);
}

function growthPerPressure(whole: Forecast, pressure: number): number {
  const way = whole.path.filter((m) => m.phase === 'stretch');
  const past = Math.max(
    1,
    way.findIndex((m) => m.pressure >= pressure),
  );
  const [a, b] = [way[past - 1], way[past]];
  return (b.largest.growth - a.largest.growth) / (b.pressure - a.pressure);
}
