/** Findings beside the range: rolling and seams, in file units (mm, percent). */
import {
  drawnStress,
  rangeOf,
  rollingFinding,
  type SeamResult,
  type SteelDraw,
} from '@hoopwright/core/steel';
import { toPercent } from '@hoopwright/core/units';
import type { EvidenceRead } from './evidenceOf.ts';
import type { EvaluatedTest } from './couponTests.ts';

/** What rolling the plate to the barrel did, and whether that can explain a tank that is stiffer than its range. */
export interface RollingSaid {
  readonly thickness_mm: number;
  readonly insideDiameter_mm: number;
  /** Equivalent plastic strain at the surface, and on average through the wall. */
  readonly surface_percent: number;
  readonly average_percent: number;
  /** How much more the wall carries for it at `at_percent` plastic strain. */
  readonly stiffer_percent: number;
  readonly at_percent: number;
  /** How much more than the middle of the range a tank must carry there to be out of it. */
  readonly outOfRange_percent: number;
  /** True where rolling alone puts a tank out of its range. */
  readonly explains: boolean;
  /** False: no rolling note, so bent once a little past the radius. */
  readonly noted: boolean;
}

/** A test across the seam beside the plate's. */
export interface SeamSaid {
  readonly name: string;
  readonly seam: SeamResult;
}

/** Plastic strain of an ordinary stretch, at which stiffness is compared. */
const STRETCHED = 0.03;

export function rollingSaid({ bent }: EvidenceRead, draws: readonly SteelDraw[]): RollingSaid | undefined {
  if (bent === undefined) return undefined;
  const { median, wide } = rangeOf(
    draws.map((draw) => drawnStress(draw, STRETCHED) * draw.biaxialFactor * draw.wallFactor),
  );
  const excess = wide[1] / median - 1;
  const found = rollingFinding(bent.metal, bent.rolled, { excess, plastic: STRETCHED });
  return {
    thickness_mm: bent.thickness,
    insideDiameter_mm: bent.insideDiameter,
    surface_percent: toPercent(found.surfacePlastic),
    average_percent: toPercent(found.averagePlastic),
    stiffer_percent: toPercent(found.stiffening),
    at_percent: toPercent(STRETCHED),
    outOfRange_percent: toPercent(excess),
    explains: found.explained >= 1,
    noted: bent.noted,
  };
}

export const seamsSaid = (tests: readonly EvaluatedTest[]): SeamSaid[] =>
  tests.flatMap(({ entry, seam }) => (seam === undefined ? [] : [{ name: entry.name ?? entry.file, seam }]));
