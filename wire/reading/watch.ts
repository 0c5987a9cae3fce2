/** The plan's own limits against the readings so far: which of them the last row crosses. Nothing else is advised here. */
import { allowedBy, isHold, type Plan, WATCHED_LIMITS, type WatchedLimit } from '../plan/plan.ts';
import { type Channel, channelsOf } from './channel.ts';
import type { Row } from './row.ts';
import { growthOf, isFirst, litres, type Scene, type Seen, stepAt } from './scene.ts';
import { airFound, lossIn } from './water.ts';

export interface Crossing {
  readonly limit: WatchedLimit;
  readonly value: number;
  readonly allowed: number;
  /** Channels behind it. */
  readonly channels: readonly string[];
  readonly step: string;
  /** s since the vent was shut. */
  readonly seconds: number;
}

export interface WatchGivens {
  readonly plan: Plan;
  /** In order of time; the last one is judged. */
  readonly rows: readonly Row[];
  /** Channels set aside; they are not believed. */
  readonly aside?: ReadonlySet<string>;
  /** As the set-up has them; the plan's own where left out. */
  readonly channels?: readonly Channel[];
}

/** What the last row crosses, in the order in which the plan lists its limits. */
export function crossings(givens: WatchGivens): Crossing[] {
  const { plan, rows, aside } = givens;
  const now = rows.at(-1);
  if (now === undefined) return [];
  const channels = (givens.channels ?? channelsOf(plan)).filter(({ name }) => aside?.has(name) !== true);
  const scene: Scene = { plan, rows, now, channels, step: stepAt(plan, now.step) };
  const seen: Readonly<Record<WatchedLimit, (scene: Scene) => Seen | undefined>> = {
    pressure_bar: highestPressure,
    trappedAir_L: airFound,
    leak_mL_per_min: lossIn,
    growthLeft_percent: growthLeft,
    growthUnderPressure_percent: growthUnder,
    girthsApart_percent: girthsApart,
    gaugesApart_bar: gaugesApart,
    slopeShare: slopeShare,
  };
  return plan.limits.flatMap(({ limit: key, value: allowed }): Crossing[] => {
    const limit = WATCHED_LIMITS.find((one) => one === key);
    const found = limit === undefined ? undefined : seen[limit](scene);
    if (limit === undefined || found === undefined) return [];
    const over = limit === 'slopeShare' ? found.value < allowed : found.value - (found.grace ?? 0) > allowed;
    const { step, seconds } = now;
    return over ? [{ limit, value: found.value, allowed, channels: found.channels, step, seconds }] : [];
  });
}

const reading = (scene: Scene, reads: Channel['reads']): readonly Channel[] =>
  scene.channels.filter((c) => c.reads === reads && scene.now.values[c.name] !== undefined);

/** One step of the scale, or three standard deviations of the noise. */
const blur = ({ resolution, noise = 0 }: Channel): number => Math.max(resolution, 3 * noise);

/** The finest gauge is believed to its own blur, any other one to what the plan lets two gauges be apart. */
function highestPressure(scene: Scene): Seen | undefined {
  const gauges = [...reading(scene, 'pressure')].sort((a, b) => a.resolution - b.resolution);
  const apart = allowedBy(scene.plan.limits, 'gaugesApart_bar') ?? 0;
  return gauges
    .map((gauge, i): Required<Seen> => {
      const grace = i === 0 ? blur(gauge) : Math.max(blur(gauge), apart);
      return { value: scene.now.values[gauge.name], channels: [gauge.name], grace };
    })
    .sort((a, b) => b.value - b.grace - (a.value - a.grace))[0];
}

/** Gauges on wires are never read at one moment: what the pressure moves meanwhile is in their favour. */
function gaugesApart(scene: Scene): Seen | undefined {
  const [a, b] = reading(scene, 'pressure');
  if (a === undefined || b === undefined) return undefined;
  const { values, gauges_s } = scene.now;
  return {
    value: Math.abs(values[a.name] - values[b.name]),
    channels: [a.name, b.name],
    ...(gauges_s === undefined ? {} : { grace: gauges_s * pressureRate(scene, a.name) }),
  };
}

/** bar/s by which a gauge moved since the row before. */
function pressureRate({ rows, now }: Scene, gauge: string): number {
  const before = rows.findLast(({ seconds, values }) => seconds < now.seconds && values[gauge] !== undefined);
  if (before === undefined) return 0;
  return Math.abs(now.values[gauge] - before.values[gauge]) / (now.seconds - before.seconds);
}

/** Growth of each girth that was read now, percent, largest first. */
export function growths(scene: Scene): { readonly name: string; readonly percent: number }[] {
  return reading(scene, 'girth')
    .flatMap(({ name }) => {
      const percent = growthOf(scene, name, scene.now);
      return percent === undefined ? [] : [{ name, percent }];
    })
    .sort((a, b) => b.percent - a.percent);
}

function growthUnder(scene: Scene): Seen | undefined {
  const [first] = growths(scene);
  return first === undefined ? undefined : { value: first.percent, channels: [first.name] };
}

function growthLeft(scene: Scene): Seen | undefined {
  return scene.step?.kind === 'release' ? growthUnder(scene) : undefined;
}

function girthsApart(scene: Scene): Seen | undefined {
  const all = growths(scene);
  const [first] = all;
  const last = all.at(-1);
  if (first === undefined || last === undefined || all.length < 2) return undefined;
  return { value: first.percent - last.percent, channels: [first.name, last.name] };
}

/** Litres that a rise must have taken before its slope is judged, over all that the plan pumps. Our choice, no source. */
const ENOUGH_LITRES = 0.03;

/** Slope of this rise over that of the first step, both from rows; the blur of the gauge is in its favour. */
function slopeShare(scene: Scene): Seen | undefined {
  const { plan, rows, now, step } = scene;
  const [gauge] = reading(scene, 'pressure');
  if (step?.kind !== 'rise' || gauge === undefined) return undefined;
  const first = rows.filter((row) => isFirst(plan, row) && litres(scene, row) !== undefined);
  const [low, high] = [first[0], first.at(-1)];
  const enough = ENOUGH_LITRES * plan.water.pump_L.value;
  const base = sinceHold(scene).findLast(
    (row) => row !== now && (litres(scene, now) ?? 0) - (litres(scene, row) ?? Infinity) >= enough,
  );
  const elastic = slopeBetween(scene, low, high, gauge.name);
  const last = slopeBetween(scene, base, stoppedAt(scene, gauge.name), gauge.name, blur(gauge));
  if (elastic === undefined || last === undefined || !(elastic > 0)) return undefined;
  return { value: last / elastic, channels: [gauge.name] };
}

/** The row at which the pump stood where it stands now: what the pressure has eased since is creep, and no slope. */
function stoppedAt(scene: Scene, gauge: string): Row {
  const { channels, now } = scene;
  const supply = channels.find(({ reads }) => reads === 'litres');
  const drawn = litres(scene, now);
  if (supply === undefined || drawn === undefined) return now;
  const same = (row: Row): boolean =>
    row.values[gauge] !== undefined && (litres(scene, row) ?? -Infinity) >= drawn - supply.resolution;
  return sinceHold(scene).find(same) ?? now;
}

/** From the last row of the hold before this rise: what a hold draws at one pressure is creep, and no slope. */
function sinceHold({ plan, rows }: Scene): readonly Row[] {
  const hold = rows.findLastIndex(({ step }) => isHold(stepAt(plan, step)));
  return rows.slice(Math.max(hold, 0));
}

function slopeBetween(
  scene: Scene,
  from: Row | undefined,
  to: Row | undefined,
  gauge: string,
  favour = 0,
): number | undefined {
  if (from === undefined || to === undefined) return undefined;
  const drawn = (litres(scene, to) ?? NaN) - (litres(scene, from) ?? NaN);
  const rise = to.values[gauge] - from.values[gauge] + favour;
  return drawn > 0 && Number.isFinite(rise) ? rise / drawn : undefined;
}
