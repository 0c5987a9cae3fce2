/**
 * The same tank and duty in sheets of other thicknesses, side by side: what a team chooses by. One place for page and
 * command line, so that both say the same.
 */
import { type Forecast, forecast, type Limit } from '@hoopwright/core/stretch';
import { stretchPressure, type Tank } from '@hoopwright/core/tank';
import { toBar, toKilogram, toLitre, toPercent } from '@hoopwright/core/units';
import { usualOrders } from '../forecast/orders.ts';
import type { Issue } from '../issue/issue.ts';
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';

/** One sheet. Figures are null where the tank does not come so far. */
export interface SheetRow {
  readonly wall_mm: number;
  readonly end: 'released' | 'bursts' | 'not released' | 'refused';
  /** Largest girth, after the holds at the stretch pressure; and what is left of it. */
  readonly growthUnder_percent: number | null;
  readonly growthLeft_percent: number | null;
  readonly pumped_L: number | null;
  readonly mass_kg: number | null;
  readonly firstYield_bar: number | null;
  readonly maximum_bar: number | null;
  readonly maximumKind: Limit['kind'] | null;
  /** Maximum over stretch pressure. */
  readonly margin: number | null;
  /** Mass over that of the unstretched tank. */
  readonly overUnstretched: number | null;
  /** Why the file with this sheet is no tank; empty otherwise. */
  readonly issues: readonly Issue[];
}

export interface Comparison {
  readonly hoopwrightCompare: 1;
  readonly tank: string;
  readonly stretch_bar: number | null;
  readonly sheets: readonly SheetRow[];
  /** The tank of the same shape that carries the duty unstretched; null without a duty. */
  readonly unstretched: { readonly wall_mm: number; readonly mass_kg: number } | null;
}

export interface CompareOrders {
  /** Puts the steel in the middle of its range into a tank whose file leaves the steel to its evidence. */
  readonly withSteel?: (tank: Tank) => Tank;
  /** Asked before each sheet with the number done; true gives up. */
  readonly stop?: (done: number) => boolean;
  readonly asGiven?: boolean;
}

/** The file with another sheet for the barrel: courses and heads that state no wall of their own follow. */
export function withSheet(file: TankFile, wall: number): TankFile {
  const { courses } = file.barrel;
  return {
    ...file,
    barrel: {
      ...file.barrel,
      wall_mm: wall,
      ...(courses === undefined ? {} : { courses: courses.map(withoutWall) }),
    },
  };
}

/** Compares sheets in the order given, each a whole forecast. Undefined where `stop` gave up. */
export function compareSheets(
  file: TankFile,
  walls: readonly number[],
  orders: CompareOrders = {},
): Comparison | undefined {
  const present = file.barrel.wall_mm;
  const compared = new Map<number, Compared>();
  for (const wall of new Set([...walls, present])) {
    if (orders.stop?.(compared.size) === true) return undefined;
    compared.set(wall, compareSheet(file, wall, orders));
  }
  return comparisonOf(
    file,
    walls.flatMap((wall) => compared.get(wall)?.row ?? []),
    compared.get(present)?.unstretched ?? null,
  );
}

/** A row, and the unstretched tank that its forecast found. */
export interface Compared {
  readonly row: Omit<SheetRow, 'overUnstretched'>;
  readonly unstretched: Comparison['unstretched'];
}

/** @param unstretched that of the tank as the file has it: its heads and bosses are scaled from there */
export function comparisonOf(
  file: TankFile,
  rows: readonly Compared['row'][],
  unstretched: Comparison['unstretched'],
): Comparison {
  const { duty } = file;
  return {
    hoopwrightCompare: 1,
    tank: file.name ?? 'unnamed tank',
    stretch_bar: duty === undefined ? null : duty.workingPressure_bar * (duty.stretchFactor ?? USUAL_FACTOR),
    sheets: rows.map((row) => ({
      ...row,
      overUnstretched:
        unstretched === null || row.mass_kg === null ? null : row.mass_kg / unstretched.mass_kg,
    })),
    unstretched,
  };
}

const USUAL_FACTOR = 1.5;

export function compareSheet(
  file: TankFile,
  wall: number,
  { withSteel, asGiven = false }: CompareOrders,
): Compared {
  const parsed = parseTankFile(withSheet(file, wall), { asGiven });
  if (!parsed.ok)
    return { row: { ...NOTHING, wall_mm: wall, end: 'refused', issues: parsed.issues }, unstretched: null };
  const { duty } = parsed;
  const tank = withSteel === undefined ? parsed.tank : withSteel(parsed.tank);
  const result = forecast(tank, duty, usualOrders(tank, duty));
  const target = duty === undefined ? undefined : stretchPressure(duty);
  const row = rowOf(wall, result, target);
  const { unstretched } = result;
  return {
    row,
    unstretched:
      unstretched === undefined ? null : { wall_mm: unstretched.wall, mass_kg: toKilogram(unstretched.mass) },
  };
}

const NOTHING = {
  growthUnder_percent: null,
  growthLeft_percent: null,
  pumped_L: null,
  mass_kg: null,
  firstYield_bar: null,
  maximum_bar: null,
  maximumKind: null,
  margin: null,
  issues: [],
} as const;

function rowOf(wall: number, result: Forecast, target: number | undefined): Compared['row'] {
  const { firstYield, maximum, mass, released } = result;
  const bursts = result.remarks.some(({ code }) => code === 'bursts before target');
  const under = bursts ? undefined : (result.held ?? result.arrived);
  return {
    ...NOTHING,
    wall_mm: wall,
    end:
      under === undefined
        ? target === undefined
          ? 'not released'
          : 'bursts'
        : released === undefined
          ? 'not released'
          : 'released',
    mass_kg: toKilogram(mass),
    ...(under === undefined
      ? {}
      : { growthUnder_percent: toPercent(under.largest.growth), pumped_L: toLitre(under.pumped.all) }),
    ...(released === undefined || bursts
      ? {}
      : { growthLeft_percent: toPercent(released.left.largest.growth) }),
    ...(firstYield === undefined ? {} : { firstYield_bar: toBar(firstYield.pressure) }),
    ...(maximum === undefined ? {} : { maximum_bar: toBar(maximum.pressure), maximumKind: maximum.kind }),
    ...(maximum === undefined || target === undefined ? {} : { margin: maximum.pressure / target }),
  };
}

/** A course of another sheet: its own wall no longer holds. */
function withoutWall<T extends { readonly wall_mm?: number | undefined }>(course: T): Omit<T, 'wall_mm'> {
  const { wall_mm: _, ...rest } = course;
  return rest;
}
