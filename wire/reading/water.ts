/** Trapped air from the first step, and the loss of water in a hold, as the plan's limits ask for them. */
import { NINETY, readingSpread, slopeSpread } from '@hoopwright/core/gauge';
import { firstFindings } from '@hoopwright/core/stretch';
import { fromBar, fromLitre, toLitre } from '@hoopwright/core/units';
import { isHold } from '../plan/plan.ts';
import { type Channel, noiseOf } from './channel.ts';
import type { Row } from './row.ts';
import { growthOf, isFirst, litres, type Scene, type Seen } from './scene.ts';

/** What is known before of the zero of a gauge (bar), of the slack of hose and pump (mL) and of the stiffness. Our choice. */
const KNOWN = { zero_bar: 0.1, slack_mL: 20, stiffness: 0.05 } as const;

/** Once the last point of the first step is read. */
export function airFound(scene: Scene): Seen | undefined {
  const { plan, rows, step } = scene;
  const last = plan.steps.findLast(({ kind }) => kind === 'first step');
  const gauge = scene.channels.find(({ reads }) => reads === 'pressure');
  if (step === undefined || step !== last || gauge === undefined) return undefined;
  const supply = scene.channels.find(({ reads }) => reads === 'litres' || reads === 'strokes');
  const readings = rows
    .filter((row) => isFirst(plan, row))
    .flatMap((row) => {
      const drawn = litres(scene, row);
      const pressure = row.values[gauge.name];
      return drawn === undefined || pressure === undefined
        ? []
        : [{ pressure: fromBar(pressure), drawn: fromLitre(drawn) }];
    });
  if (readings.length < 3 || supply === undefined) return undefined;
  const { growth, compression } = plan.water.perBar_mL;
  const perPressure = fromLitre((growth + compression) / 1e3) / fromBar(1);
  const unit_L = supply.reads === 'strokes' ? (plan.water.stroke_mL ?? 0) / 1e3 : 1;
  const reader = { ...supply, ...(supply.reads === 'strokes' ? { resolution: 1 } : {}) };
  const drawn_L = unit_L * readingSpread({ ...reader, noise: noiseOf(reader) });
  const { air } = firstFindings({
    readings,
    drawnWithoutAir: (pressure) => perPressure * pressure,
    spread: {
      pressure: fromBar(readingSpread({ resolution: gauge.resolution, noise: gauge.noise ?? 0 })) || 1e-6,
      zero: fromBar(KNOWN.zero_bar),
      drawn: fromLitre(drawn_L) || 1,
      slack: 1e3 * KNOWN.slack_mL,
      stiffness: KNOWN.stiffness,
    },
  });
  return { value: toLitre(air.value), channels: [gauge.name, supply.name] };
}

/** Part of what the wall takes up in a hold that the plan's figure may be wrong by. Our choice, no source. */
const UPTAKE_DOUBT = 0.25;

interface Point {
  readonly seconds: number;
  /** L, percent, bar. */
  readonly drawn: number;
  readonly grown: number;
  readonly pressure: number;
}

/** mL/min lost over the last minutes of a hold: what was drawn, less what wall and compression took. */
export function lossIn(scene: Scene): Seen | undefined {
  const { plan, now, step } = scene;
  const gauge = scene.channels.find(({ reads }) => reads === 'pressure');
  if (!isHold(step) || gauge === undefined) return undefined;
  const points = pointsOf(scene, gauge.name);
  const [first] = points;
  if (points.length < 3 || first === undefined) return undefined;
  const perMinute = (y: (p: Point) => number): number => 60 * slope(points.map((p) => [p.seconds, y(p)]));
  const uptake = perMinute((p) => p.grown / 100) * millilitresPerGrowth(scene);
  const give = plan.water.perBar_mL.compression + airPerBar(scene, now);
  return {
    value: 1e3 * perMinute((p) => p.drawn) - uptake - perMinute((p) => p.pressure) * give,
    channels: [gauge.name],
    grace: UPTAKE_DOUBT * Math.abs(uptake) + NINETY * blurOf(scene, { points, give }),
  };
}

/** From the last row that is as old as the window asks: rows by hand never lie on the minute. Empty: none is. */
function pointsOf(scene: Scene, gauge: string): Point[] {
  const { plan, rows, now } = scene;
  const here = rows.flatMap((row): Point[] => {
    if (row.step !== now.step || row.part !== now.part) return [];
    const drawn = litres(scene, row);
    const grown = meanGrowth(scene, row);
    const pressure = row.values[gauge];
    if (drawn === undefined || grown === undefined || pressure === undefined) return [];
    return [{ seconds: row.seconds, drawn, grown, pressure }];
  });
  const from = here.findLastIndex(({ seconds }) => seconds <= now.seconds - 60 * plan.leak.minutes + 1);
  return from < 0 ? [] : here.slice(from);
}

/** Standard deviation of the loss by what the instruments can be read to, mL/min. */
function blurOf(scene: Scene, { points, give }: { points: readonly Point[]; give: number }): number {
  const time = points[points.length - 1].seconds - points[0].seconds;
  const every = time / (points.length - 1);
  const rate = ({ resolution, noise = 0 }: Channel): number =>
    60 * slopeSpread({ resolution, noise }, every, time);
  const girths = scene.channels.filter(({ reads }) => reads === 'girth');
  const share = millilitresPerGrowth(scene) / girthOf(scene) / Math.max(girths.length, 1);
  const parts = scene.channels.map((channel) => {
    if (channel.reads === 'girth') return share * rate(channel);
    if (channel.reads === 'litres') return 1e3 * rate(channel);
    if (channel.reads === 'strokes') return (scene.plan.water.stroke_mL ?? 0) * rate(channel);
    return channel.reads === 'pressure' ? give * rate(channel) : 0;
  });
  return Math.hypot(...parts);
}

/** mm, of any girth: they differ little. */
const girthOf = ({ step }: Scene): number => step?.expected?.girths[0]?.girth_mm.value ?? Infinity;

/** mL of room per growth of girth (as a fraction), from the plan's own uptake at 0.1 %/h. */
const millilitresPerGrowth = ({ plan }: Scene): number => plan.leak.uptake_mL_per_min / (0.001 / 60);

/** mL per bar that the trapped air gives way by at the present pressure: far less than at the start. */
function airPerBar({ plan, channels }: Scene, now: Row): number {
  const gauge = channels.find(({ reads }) => reads === 'pressure');
  const pressure = gauge === undefined ? 0 : (now.values[gauge.name] ?? 0);
  return (1e3 * plan.water.trappedAir_L * 1.01325) / (1.01325 + pressure) ** 2;
}

function meanGrowth(scene: Scene, row: Row): number | undefined {
  const all = scene.channels
    .filter(({ reads }) => reads === 'girth')
    .flatMap(({ name }) => growthOf(scene, name, row) ?? []);
  return all.length === 0 ? undefined : all.reduce((sum, one) => sum + one, 0) / all.length;
}

/** Slope of the straight line through points, least squares. */
function slope(points: readonly (readonly [number, number])[]): number {
  const n = points.length;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  const sxx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  return points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
}
