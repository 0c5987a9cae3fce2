/** The set-up of the day in inside units, with what was assumed where the tank file is silent. */
import type { Pcc2Edition } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { fromBar, fromMinutes, fromPercent } from '@hoopwright/core/units';
import type { TankFile } from '../../tank/format/tankFile.ts';
import type { DayFile, GirthMeans, Paper, ReadingPlace } from './day.ts';

/** What stands in the plan without anybody having stated it; the sentence is made by `report`. */
export type Assumed =
  | 'gauge'
  | 'readings'
  | 'supply'
  | 'approach pressure'
  | 'strokes a minute'
  | 'stand-off edition'
  | 'plugs';

/** What the plan cannot know and leaves on the checklist, to be filled in by hand before the day. */
export type Open =
  | 'pump'
  | 'chloride'
  | 'site temperature'
  | 'relief valve'
  | 'relief flow'
  | 'second release'
  | 'release'
  | 'floor'
  | 'hose'
  | 'distance'
  | 'thermometer'
  | 'second gauge';

export interface Gauge {
  readonly name: string;
  readonly range: number;
  readonly resolution: number;
  /** Standard deviation of one reading, resolution left out. */
  readonly noise: number;
  /** Largest error as a fraction of the range; undefined where no class is stated. */
  readonly error?: number;
  readonly from: ReadingPlace;
}

export interface GirthReading {
  readonly girth: string;
  readonly by: GirthMeans;
  readonly from: ReadingPlace;
  readonly range?: number;
  readonly resolution: number;
  readonly noise: number;
  /** s between two readings in a hold. */
  readonly every: number;
}

export interface Supply {
  readonly by: 'strokes' | 'weighing' | 'meter';
  /** mm³. */
  readonly resolution: number;
}

export interface SetUp {
  readonly pump: {
    /** mm³/s that it draws; undefined where neither duty nor bucket test says it. */
    readonly flow?: number;
    /** mm³. */
    readonly stroke?: number;
    readonly highest?: number;
  };
  readonly chloride?: number;
  readonly site?: number;
  readonly approach: number;
  readonly distance?: number;
  readonly edition: Pcc2Edition;
  readonly gauges: readonly Gauge[];
  readonly readings: readonly GirthReading[];
  readonly supply: Supply;
  /** K; undefined: no thermometer in the water. */
  readonly thermometer?: number;
  readonly plugs: readonly { readonly name: string; readonly diameter: number }[];
  readonly hose?: number;
  readonly relief?: { readonly opens: number; readonly flow?: number };
  /** kg. */
  readonly floor?: number;
  readonly release?: { readonly first: string; readonly second?: string };
  readonly roles: NonNullable<DayFile['roles']>;
  readonly limits: NonNullable<DayFile['limits']>;
  readonly paper: Paper;
  readonly assumed: readonly Assumed[];
  readonly open: readonly Open[];
}

/** Strokes a minute that a person keeps up on a hand pump: common practice, no source. */
const HAND_STROKES = 20;
/** Time between two readings in a hold: wires are read by a machine, scales by a person. Common practice, no source. */
const EVERY: Readonly<Record<GirthMeans, number>> = {
  'draw-wire': 1,
  laser: 1,
  'taped scale and camera': 60,
  'taped scale and telescope': 60,
  tape: 300,
};
/** Nominal ranges of gauges, bar (EN 837-1, from memory). */
const GAUGE_RANGES = [1, 1.6, 2.5, 4, 6, 10, 16, 25, 40, 60, 100, 160, 250, 400, 600, 1000];

export function setUpOf(file: TankFile, tank: Tank, stretch: number): SetUp {
  const day: DayFile = file.day ?? {};
  const pump = pumpOf(file);
  return {
    pump,
    ...(day.chloride_ppm === undefined ? {} : { chloride: day.chloride_ppm }),
    ...(day.site === undefined ? {} : { site: day.site.temperature_C }),
    approach: fromBar(day.approachPressure_bar ?? 0),
    ...(day.distance_m === undefined ? {} : { distance: 1e3 * day.distance_m }),
    edition: day.standOffEdition ?? 'later',
    gauges: day.gauges?.map(gaugeOf) ?? [usualGauge(stretch)],
    readings: readingsOf(day, tank),
    supply: supplyOf(day, pump.stroke),
    ...(day.thermometer === undefined ? {} : { thermometer: day.thermometer.resolution_K }),
    plugs:
      day.plugs?.map(({ name, diameter_mm }) => ({ name, diameter: diameter_mm })) ?? bossesAsPlugs(tank),
    ...(day.hose === undefined ? {} : { hose: day.hose.insideDiameter_mm }),
    ...reliefOf(day),
    ...(day.floor === undefined ? {} : { floor: day.floor.carries_kg }),
    ...releaseOf(day),
    roles: day.roles ?? {},
    limits: day.limits ?? {},
    paper: day.paper ?? 'A4',
    assumed: assumedIn(file, pump),
    open: openIn(file, pump),
  };
}

function pumpOf({ day, duty }: TankFile): SetUp['pump'] {
  const { mL_per_stroke: mL, strokes_per_min: strokes, highest_bar: highest } = day?.pump ?? {};
  const stroke = mL === undefined ? undefined : 1e3 * mL;
  const byDuty = duty?.pump_L_per_min === undefined ? undefined : (1e6 * duty.pump_L_per_min) / 60;
  const byStroke = stroke === undefined ? undefined : (stroke * (strokes ?? HAND_STROKES)) / 60;
  const flow = strokes === undefined ? (byDuty ?? byStroke) : (byStroke ?? byDuty);
  return {
    ...(flow === undefined ? {} : { flow }),
    ...(stroke === undefined ? {} : { stroke }),
    ...(highest === undefined ? {} : { highest: fromBar(highest) }),
  };
}

type GaugeFile = NonNullable<DayFile['gauges']>[number];

const gaugeOf = (gauge: GaugeFile): Gauge => ({
  name: gauge.name,
  range: fromBar(gauge.range_bar),
  resolution: fromBar(gauge.resolution_bar),
  noise: fromBar(gauge.noise_bar ?? 0),
  ...(gauge.error_percent === undefined ? {} : { error: fromPercent(gauge.error_percent) }),
  from: gauge.from ?? 'behind the wall',
});

/** The next nominal range over 1.25 times the stretch pressure, class 1.0, read to half a hundredth of its range. */
function usualGauge(stretch: number): Gauge {
  const wanted = 12.5 * stretch;
  const range = fromBar(GAUGE_RANGES.find((bar) => bar >= wanted) ?? wanted);
  return { name: 'gauge', range, resolution: range / 200, noise: 0, error: 0.01, from: 'behind the wall' };
}

function readingsOf({ readings }: DayFile, tank: Tank): GirthReading[] {
  if (readings === undefined)
    return tank.girths.map(({ name }) => ({
      girth: name,
      by: 'taped scale and camera',
      from: 'behind the wall',
      resolution: 0.5,
      noise: 0,
      every: EVERY['taped scale and camera'],
    }));
  return readings.map((one) => ({
    girth: one.girth,
    by: one.by,
    from: one.from ?? (one.by === 'tape' ? 'at the tank' : 'behind the wall'),
    ...(one.range_mm === undefined ? {} : { range: one.range_mm }),
    resolution: one.resolution_mm,
    noise: one.noise_mm ?? 0,
    every: one.every_s ?? EVERY[one.by],
  }));
}

/** Where nothing is said: whole strokes, or a supply weighed to 50 g. */
function supplyOf({ supply }: DayFile, stroke: number | undefined): Supply {
  if (supply !== undefined) return { by: supply.by, resolution: 1e3 * supply.resolution_mL };
  return stroke === undefined ? { by: 'weighing', resolution: 50e3 } : { by: 'strokes', resolution: stroke };
}

/** The hole in a boss is smaller than the boss: its diameter bounds the force. */
const bossesAsPlugs = ({ heads }: Tank): SetUp['plugs'] =>
  (['top', 'bottom'] as const).flatMap((end) => {
    const { boss } = heads[end];
    return boss === undefined ? [] : [{ name: `${end} boss`, diameter: boss.diameter }];
  });

function reliefOf({ relief }: DayFile): Pick<SetUp, 'relief'> {
  if (relief === undefined) return {};
  const { opens_bar, flow_L_per_min: flow } = relief;
  const passes = flow === undefined ? {} : { flow: (1e6 * flow) / fromMinutes(1) };
  return { relief: { opens: fromBar(opens_bar), ...passes } };
}

const releaseOf = ({ release }: DayFile): Pick<SetUp, 'release'> =>
  release === undefined ? {} : { release };

function assumedIn({ day, duty }: TankFile, pump: SetUp['pump']): Assumed[] {
  const strokes = day?.pump?.strokes_per_min;
  const byHand = pump.stroke !== undefined && strokes === undefined && duty?.pump_L_per_min === undefined;
  const missing: readonly (readonly [boolean, Assumed])[] = [
    [day?.gauges === undefined, 'gauge'],
    [day?.readings === undefined, 'readings'],
    [day?.supply === undefined, 'supply'],
    [day?.approachPressure_bar === undefined, 'approach pressure'],
    [byHand, 'strokes a minute'],
    [day?.standOffEdition === undefined, 'stand-off edition'],
    [day?.plugs === undefined, 'plugs'],
  ];
  return missing.flatMap(([is, what]) => (is ? [what] : []));
}

function openIn({ day }: TankFile, pump: SetUp['pump']): Open[] {
  const missing: readonly (readonly [boolean, Open])[] = [
    [pump.flow === undefined, 'pump'],
    [day?.chloride_ppm === undefined, 'chloride'],
    [day?.site === undefined, 'site temperature'],
    [day?.relief === undefined, 'relief valve'],
    [day?.relief !== undefined && day.relief.flow_L_per_min === undefined, 'relief flow'],
    [day?.release === undefined, 'release'],
    [day?.release !== undefined && day.release.second === undefined, 'second release'],
    [day?.floor === undefined, 'floor'],
    [day?.hose === undefined, 'hose'],
    [day?.distance_m === undefined, 'distance'],
    [day?.thermometer === undefined, 'thermometer'],
    [(day?.gauges ?? []).length < 2, 'second gauge'],
  ];
  return missing.flatMap(([is, what]) => (is ? [what] : []));
}
