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

/** Growth that counts as met: 0.001 % of girth. */
const NEAR = 1e-5;
/** Pressures between which the answer lies are told apart no further, over the pressure. */
const CLOSE = 1e-6;
const MOST_TURNS = 30;
/** Pressure at which no tank is whole, MPa: asks for the path to its end. */
const BEYOND_ALL = 1e4;

/**
 * Forecast released where the asked growth is met to 0.001 %. Holds at a stated pressure are kept; the duty's stretch
 * pressure is not. Secant on the pressure inside a bracket that shrinks. Where growth jumps (a hold that begins to be
 * passed on the way, or gives way), the release is at the last pressure before the jump.
 */
export function forecastToGrowth(
  tank: Tank,
  duty: Duty | undefined,
  asked: GrowthAsked,
  orders: ForecastOrders = {},
): GrowthAnswer {
  let runs = 0;
  const run = (target: number | undefined, on: Duty | undefined): Forecast => {
    const told = telling(orders, runs);
    runs++;
    return forecast(tank, on, { ...orders, ...told, ...(target === undefined ? {} : { target }) });
  };
  const whole = run(undefined, undefined);
  const start = pressureAt(whole, asked.growth);
  if (start === undefined)
    return { kind: 'bursts before', forecast: notReached(run(BEYOND_ALL, duty), asked.growth) };
  const tried: Trial[] = [];
  let pressure = start;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const answer = run(pressure, duty);
    const miss = missOf(answer, asked);
    tried.push({ pressure, answer, miss });
    if (Math.abs(miss) < NEAR || isClosed(tried)) break;
    pressure = nextPressure(tried, whole);
  }
  return answerFrom(tried);
}

/** A path to the end without the pressure that was asked for only to get there. */
function notReached(whole: Forecast, asked: number): Forecast {
  const { maximum: limit } = whole;
  const others = whole.remarks.filter(({ code }) => code !== 'bursts before target');
  const end: { -readonly [K in keyof Forecast]: Forecast[K] } = { ...whole };
  delete end.target;
  return {
    ...end,
    remarks: limit === undefined ? others : [{ code: 'growth not reached', asked, limit }, ...others],
  };
}

interface Trial {
  readonly pressure: number;
  readonly answer: Forecast;
  /** Growth reached less that asked; Infinity where the tank does not stand it. */
  readonly miss: number;
}

/** Orders whose progress goes on from turn to turn: half of what is left each. */
function telling({ progress }: ForecastOrders, turn: number): Pick<ForecastOrders, 'progress'> {
  if (progress === undefined) return {};
  return { progress: (fraction) => progress(1 - (1 - fraction / 2) * 0.5 ** turn) };
}

function missOf({ released, arrived }: Forecast, { growth, left }: GrowthAsked): number {
  if (released === undefined || arrived === undefined) return Infinity;
  return (left ? released.left : arrived).largest.growth - growth;
}

/** Highest pressure tried that gives too little, lowest that gives too much. */
function bracket(tried: readonly Trial[]): { low: number; high: number } {
  const under = tried.filter(({ miss }) => miss < 0).map(({ pressure }) => pressure);
  const over = tried.filter(({ miss }) => miss >= 0).map(({ pressure }) => pressure);
  return { low: Math.max(0, ...under), high: Math.min(Infinity, ...over) };
}

function isClosed(tried: readonly Trial[]): boolean {
  const { low, high } = bracket(tried);
  return high - low < CLOSE * high;
}

/** Along the secant of the last two, or the slope of the whole path; inside the bracket, else its middle. */
function nextPressure(tried: readonly Trial[], whole: Forecast): number {
  const { low, high } = bracket(tried);
  const last = tried[tried.length - 1];
  const before = tried[tried.length - 2];
  const slope =
    before === undefined
      ? growthPerPressure(whole, last.pressure)
      : (last.miss - before.miss) / (last.pressure - before.pressure);
  const next = last.pressure - last.miss / slope;
  if (next > low && next < high) return next;
  return high === Infinity ? low * 1.05 : 0.5 * (low + high);
}

/** The trial that came nearest without going over; where none stands, the one that burst lowest. */
function answerFrom(tried: readonly Trial[]): GrowthAnswer {
  const met = tried.find(({ miss }) => Math.abs(miss) < NEAR);
  const under = tried.filter(({ miss }) => miss < 0).sort((a, b) => b.miss - a.miss)[0];
  const over = tried.filter(({ miss }) => miss >= 0).sort((a, b) => a.pressure - b.pressure)[0];
  if (met !== undefined) return { kind: 'released', forecast: met.answer };
  if (over?.miss === Infinity) return { kind: 'bursts before', forecast: over.answer };
  return { kind: 'released', forecast: (under ?? over).answer };
}

/** Pressure at which the growth is first met on the way up, straight between moments. */
function pressureAt(whole: Forecast, growth: number): number | undefined {
  const way = [whole.start, ...whole.path.filter((m) => m.phase === 'stretch')];
  const limit = whole.maximum?.growth ?? Infinity;
  const past = way.findIndex((m) => m.largest.growth >= growth);
  if (past < 1 || growth > limit) return undefined;
  const [a, b] = [way[past - 1], way[past]];
  const f = (growth - a.largest.growth) / (b.largest.growth - a.largest.growth);
  return a.pressure + f * (b.pressure - a.pressure);
}

function growthPerPressure(whole: Forecast, pressure: number): number {
  const way = [whole.start, ...whole.path.filter((m) => m.phase === 'stretch')];
  const past = Math.max(
    1,
    way.findIndex((m) => m.pressure >= pressure),
  );
  const [a, b] = [way[past - 1], way[past]];
  return (b.largest.growth - a.largest.growth) / (b.pressure - a.pressure);
}
