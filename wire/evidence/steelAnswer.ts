/** What the tests say of the steel, as it leaves the program. */
import {
  type Account,
  type Belief,
  curveRange,
  type Grade,
  type ProductForm,
  rangeOf,
  type SteelDraw,
} from '@hoopwright/core/steel';
import { type RangeFile, type SpanFile, spanFile } from '../forecast/rangeFile.ts';
import type { EvidenceRead } from './evidenceOf.ts';
import { type RollingSaid, rollingSaid, type SeamSaid, seamsSaid } from './said.ts';

export interface SteelAnswer {
  readonly hoopwrightSteel: 1;
  /** True stress (MPa) at true plastic strains, uniaxial, at `rate_per_s`. */
  readonly curve: readonly { readonly plastic_percent: number; readonly stress_MPa: SpanFile }[];
  readonly rate_per_s: number;
  readonly biaxialFactor: SpanFile;
  readonly perEfold_MPa: SpanFile;
  readonly wall_mm: SpanFile;
  readonly seamStrength: SpanFile;
  readonly coldWork_percent: SpanFile;
  readonly evidence: readonly Account[];
  readonly tests: readonly {
    readonly file: string;
    readonly of: string;
    readonly counts: boolean;
    readonly reason?: string;
  }[];
  /** Null where nothing is rolled. */
  readonly rolling: RollingSaid | null;
  readonly seams: readonly SeamSaid[];
  /** Grade and product form that the typical values are those of. */
  readonly plate: { readonly grade: Grade; readonly form: ProductForm };
  /** °C; null without a heat analysis. */
  readonly md30_C: number | null;
  readonly stretch: RangeFile | null;
  readonly warnings: readonly string[];
}

/** Plastic strains at which the curve is told, percent. */
const TOLD = [0.2, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 40];

export interface SteelSaid {
  readonly read: EvidenceRead;
  readonly belief: Belief;
  readonly wall: number;
  readonly stretch: RangeFile | null;
  readonly warnings: readonly string[];
}

export function steelAnswer({ read, belief, wall, stretch, warnings }: SteelSaid): SteelAnswer {
  const { draws } = belief;
  const of = (value: (draw: SteelDraw) => number): SpanFile => spanFile(rangeOf(draws.map(value)));
  return {
    hoopwrightSteel: 1,
    curve: curveRange(
      draws,
      TOLD.map((percent) => percent / 100),
    ).map(({ plastic, stress }) => ({ plastic_percent: 100 * plastic, stress_MPa: spanFile(stress) })),
    rate_per_s: draws[0].rate.reference,
    biaxialFactor: of((draw) => draw.biaxialFactor),
    perEfold_MPa: of((draw) => draw.rate.perEfold),
    wall_mm: of((draw) => wall * draw.wallFactor),
    seamStrength: of((draw) => draw.seamStrength),
    coldWork_percent: of((draw) => 100 * draw.coldWork),
    evidence: belief.account,
    tests: read.tests.map(({ entry, of: kind, result, reason }) => ({
      file: entry.file,
      of: kind,
      counts: result !== undefined && reason === undefined,
      ...(reason === undefined ? {} : { reason }),
    })),
    rolling: rollingSaid(read, draws) ?? null,
    seams: seamsSaid(read.tests),
    md30_C: read.md30 ?? null,
    plate: { grade: read.evidence.plate.grade, form: read.evidence.plate.form },
    stretch,
    warnings,
  };
}
