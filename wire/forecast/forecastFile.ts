/** A forecast as it leaves the program: human units in the key names, one value per key, nothing turned into text. */
import type { Forecast, Limit, Moment, Pumped } from '@hoopwright/core/stretch';
import type { Through, WallPlace } from '@hoopwright/core/shell';
import type { Tank } from '@hoopwright/core/tank';
import type { RangeFile } from './rangeFile.ts';
import { toBar, toKilogram, toLitre, toPercent } from '@hoopwright/core/units';

export interface GirthFile {
  readonly name: string;
  /** Outside girth. */
  readonly girth_mm: number;
  readonly growth_percent: number;
}

export interface MomentFile {
  readonly phase: 'stretch' | 'hold' | 'release';
  readonly time_s: number;
  readonly pressure_bar: number;
  /** Growth of the inside volume against the filled tank at zero gauge. */
  readonly growth_L: number;
  /** Water drawn at atmospheric pressure: the sum of the three shares. */
  readonly pumped_L: number;
  readonly pumpedShares_L: {
    readonly growth: number;
    readonly compression: number;
    readonly trappedAir: number;
  };
  readonly girths: readonly GirthFile[];
  /** Girth of the barrel that has grown most. */
  readonly largest: { readonly growth_percent: number; readonly at_mm: number };
  /** Change of the height pole to pole. */
  readonly rise_mm: number;
  readonly thinnestWall_mm: number;
  /** Equivalent plastic strain (logarithmic) at mid-wall, largest in the barrel; at each girth. */
  readonly plasticStrain: { readonly barrel: number; readonly anywhere: number };
}

export interface PlaceFile {
  readonly part: string;
  readonly at_mm: number;
  readonly radius_mm: number;
  readonly face: string;
}

export interface WallFile {
  readonly part: string;
  /** Mid-surface before forming and now; heights over the bottom tangent line. */
  readonly initial_mm: { readonly r: number; readonly z: number; readonly wall: number };
  readonly now_mm: { readonly r: number; readonly z: number; readonly wall: number };
  /** Logarithmic strains and equivalent plastic strain, inside, mid, outside. */
  readonly hoop: Through;
  readonly meridional: Through;
  readonly plastic: Through;
}

export interface ForecastFile {
  readonly hoopwrightForecast: 1;
  readonly tank: string;
  readonly serial?: string;
  readonly path: readonly MomentFile[];
  /** Pressure at which the tank is released; null where the tank bursts before or none was asked. */
  readonly target_bar: number | null;
  /** On arrival at the release pressure, and when it is released (after the holds there). */
  readonly arrived: MomentFile | null;
  readonly underPressure: MomentFile | null;
  readonly firstYield: { readonly pressure_bar: number; readonly at: PlaceFile } | null;
  readonly barrelYield: { readonly pressure_bar: number } | null;
  readonly maximum: {
    readonly kind: Limit['kind'];
    readonly pressure_bar: number;
    readonly girthGrowth_percent: number;
    readonly extrapolated: boolean;
  } | null;
  readonly released: {
    readonly growth_L: number;
    readonly girths: readonly GirthFile[];
    readonly largest: { readonly growth_percent: number; readonly at_mm: number };
    readonly rise_mm: number;
    readonly walls: { readonly thinnest_mm: number; readonly mean_mm: number };
    readonly newYield_bar: number;
    readonly mass_kg: number;
  } | null;
  readonly unstretched: {
    readonly wall_mm: number;
    readonly mass_kg: number;
    readonly hoopStress_MPa: number;
  } | null;
  readonly mass_kg: number;
  /** Inside volume of the filled tank at zero gauge. */
  readonly volume_L: number;
  readonly profile?: readonly WallFile[];
  /** What the evidence makes of it; null: the steel is assumed, and there is no range. */
  readonly range: RangeFile | null;
  readonly warnings: readonly string[];
  readonly notes: readonly string[];
  readonly effort: { readonly steps: number; readonly iterations: number; readonly cuts: number };
}

export interface ForecastWords {
  readonly warnings: readonly string[];
  readonly notes: readonly string[];
  readonly range?: RangeFile;
  /** Adds the wall, place by place, as it stands when the tank is released. */
  readonly profile: boolean;
}

export function forecastFile(forecast: Forecast, words: ForecastWords): ForecastFile {
  const { tank } = forecast.datum.solver.shell;
  const moment = (m: Moment | undefined): MomentFile | null => (m === undefined ? null : momentFile(m, tank));
  const branch = forecast.held ?? forecast.arrived;
  return {
    hoopwrightForecast: 1,
    tank: tank.name,
    ...(tank.serial === undefined ? {} : { serial: tank.serial }),
    target_bar: forecast.target === undefined ? null : toBar(forecast.target),
    firstYield: firstYieldFile(forecast),
    barrelYield: forecast.barrelYield === undefined ? null : { pressure_bar: toBar(forecast.barrelYield) },
    maximum: maximumFile(forecast.maximum),
    arrived: moment(forecast.arrived),
    underPressure: moment(branch),
    released: releasedFile(forecast),
    unstretched:
      forecast.unstretched === undefined
        ? null
        : {
            wall_mm: forecast.unstretched.wall,
            mass_kg: toKilogram(forecast.unstretched.mass),
            hoopStress_MPa: forecast.unstretched.allowed,
          },
    mass_kg: toKilogram(forecast.mass),
    volume_L: toLitre(forecast.datum.volume),
    range: words.range ?? null,
    warnings: words.warnings,
    notes: words.notes,
    effort: {
      steps: forecast.effort.steps,
      iterations: forecast.effort.iterations,
      cuts: forecast.effort.cuts.length,
    },
    path: forecast.path.map((m) => momentFile(m, tank)),
    ...(words.profile ? { profile: forecast.profile.map(wallFile) } : {}),
  };
}

export function momentFile(moment: Moment, tank: Tank): MomentFile {
  return {
    phase: moment.phase,
    time_s: moment.time,
    pressure_bar: toBar(moment.pressure),
    growth_L: toLitre(moment.growth),
    pumped_L: toLitre(moment.pumped.all),
    pumpedShares_L: pumpedFile(moment.pumped),
    girths: girthFiles(moment, tank),
    largest: largestFile(moment),
    rise_mm: moment.rise,
    thinnestWall_mm: moment.thinnest,
    plasticStrain: moment.plastic,
  };
}

const pumpedFile = (pumped: Pumped): MomentFile['pumpedShares_L'] => ({
  growth: toLitre(pumped.wall),
  compression: toLitre(pumped.water),
  trappedAir: toLitre(pumped.air),
});

const girthFiles = (moment: Moment, tank: Tank): GirthFile[] =>
  moment.girths.map(({ girth, growth }, i) => ({
    name: tank.girths[i].name,
    girth_mm: girth,
    growth_percent: toPercent(growth),
  }));

const largestFile = (moment: Moment): MomentFile['largest'] => ({
  growth_percent: toPercent(moment.largest.growth),
  at_mm: moment.largest.at,
});

function firstYieldFile({ firstYield }: Forecast): ForecastFile['firstYield'] {
  if (firstYield === undefined) return null;
  const { part, z, r, face } = firstYield.at;
  return { pressure_bar: toBar(firstYield.pressure), at: { part, at_mm: z, radius_mm: r, face } };
}

function maximumFile(limit: Limit | undefined): ForecastFile['maximum'] {
  if (limit === undefined) return null;
  return {
    kind: limit.kind,
    pressure_bar: toBar(limit.pressure),
    girthGrowth_percent: toPercent(limit.growth),
    extrapolated: limit.extrapolated,
  };
}

function releasedFile(forecast: Forecast): ForecastFile['released'] {
  const { released, datum } = forecast;
  if (released === undefined) return null;
  return {
    growth_L: toLitre(released.left.growth),
    girths: girthFiles(released.left, datum.solver.shell.tank),
    largest: largestFile(released.left),
    rise_mm: released.left.rise,
    walls: { thinnest_mm: released.wall.thinnest, mean_mm: released.wall.mean },
    newYield_bar: toBar(released.newYield),
    mass_kg: toKilogram(forecast.mass),
  };
}

const wallFile = (place: WallPlace): WallFile => ({
  part: place.part,
  initial_mm: { r: place.r0, z: place.z0, wall: place.wall0 },
  now_mm: { r: place.r, z: place.z, wall: place.wall },
  hoop: place.hoop,
  meridional: place.meridional,
  plastic: place.plastic,
});
