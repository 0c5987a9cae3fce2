/** Coupon files of plate and seam, read and evaluated: which count, and why the others do not. */
import {
  type BrokeIn,
  type CouponResult,
  evaluateCoupon,
  type PlateCoupon,
  type SeamCoupon,
  type SeamPlace,
  seamResult,
  type SeamResult,
} from '@hoopwright/core/steel';
import { readCouponFile } from '../coupon/coupon.ts';
import type { Specimen } from '../coupon/preface.ts';
import type { Issue } from '../issue/issue.ts';
import type { SteelFile } from '../tank/format/steelFile.ts';

/** Bytes of the coupon files, by the path that the tank file names. */
export type CouponFiles = ReadonlyMap<string, Uint8Array | string>;

/** A coupon file and what became of it. */
export interface EvaluatedTest {
  readonly of: 'plate' | 'seam';
  readonly entry: CouponEntry | SeamEntry;
  /** Absent where the file is missing or no test. */
  readonly result?: CouponResult;
  /** Line of each point of the test. */
  readonly lines?: readonly number[];
  /** Why it does not count. */
  readonly reason?: string;
  /** Of a test across the seam: beside the plate coupons that count. */
  readonly seam?: SeamResult;
  /** What the file says of the specimen. */
  readonly specimen?: Specimen;
}

/** What is said of a test that is not usable; the words are made by the caller. */
export interface EvidenceWords {
  verdict(result: CouponResult, lines: readonly number[]): string;
  readonly missing: string;
  readonly unread: string;
  readonly preloaded: string;
  readonly girthSeam: string;
  readonly acrossSeam: string;
}

type CouponEntry = NonNullable<SteelFile['coupons']>[number];
type SeamEntry = NonNullable<SteelFile['seamCoupons']>[number];

export const usable = (test: EvaluatedTest): boolean =>
  test.result !== undefined && test.reason === undefined;

export interface Reading {
  readonly files: CouponFiles;
  readonly issues: Issue[];
  readonly words: EvidenceWords;
}

export function testOf(
  test: Pick<EvaluatedTest, 'of' | 'entry'>,
  path: string,
  { files, issues, words }: Reading,
): EvaluatedTest {
  const { entry } = test;
  const bytes = files.get(entry.file);
  if (bytes === undefined) {
    issues.push({
      path: `${path}.file`,
      expected: 'a coupon file beside the tank file',
      received: `${JSON.stringify(entry.file)}, which is not there`,
      suggestion: 'put the file there, or take the coupon out of the list',
    });
    return { ...test, reason: words.missing };
  }
  const read = readCouponFile(bytes, hintsOf(entry));
  if (!read.ok) {
    issues.push(...read.issues.map((issue) => ({ ...issue, path: `${entry.file}, ${issue.path}` })));
    return { ...test, reason: words.unread };
  }
  const { lines } = read;
  const result = evaluateCoupon(read.test);
  const reason =
    entry.excluded ??
    (result.verdict.usable ? misplaced(test, read.specimen, words) : words.verdict(result, lines));
  return { ...test, result, lines, specimen: read.specimen, ...(reason === undefined ? {} : { reason }) };
}

/** Why a sound test says nothing of what it is listed under. */
function misplaced(
  { of, entry }: Pick<EvaluatedTest, 'of' | 'entry'>,
  { coupon, preloadStress, preloadStrain }: Specimen,
  words: EvidenceWords,
): string | undefined {
  if (of === 'plate' && coupon === 'across the seam') return words.acrossSeam;
  const preloaded = 'preload' in entry && entry.preload !== undefined;
  if (preloaded || preloadStress !== undefined || preloadStrain !== undefined) return words.preloaded;
  return 'seam' in entry && entry.seam === 'girth' ? words.girthSeam : undefined;
}

/** What the tank file says of a coupon beyond what its own file does. */
export function hintsOf(entry: CouponEntry | SeamEntry): Parameters<typeof readCouponFile>[1] {
  const area =
    entry.couponDiameter_mm === undefined
      ? (entry.couponWidth_mm ?? Number.NaN) * (entry.couponThickness_mm ?? Number.NaN)
      : (Math.PI / 4) * entry.couponDiameter_mm ** 2;
  return {
    ...(entry.strainColumn === undefined ? {} : { strain: entry.strainColumn }),
    ...(entry.stressColumn === undefined ? {} : { stress: entry.stressColumn }),
    ...(entry.stressUnit === undefined ? {} : { stressUnit: entry.stressUnit }),
    ...(entry.gaugeLength_mm === undefined ? {} : { gauge: entry.gaugeLength_mm }),
    ...(Number.isFinite(area) ? { area } : {}),
  };
}

const nameOf = ({ entry }: EvaluatedTest): string => entry.name ?? entry.file;

export function plateCoupon(test: EvaluatedTest): PlateCoupon[] {
  const { entry, result, reason, specimen } = test;
  if (result === undefined) return [];
  const rate = entry.rate_per_s ?? result.rate ?? specimen?.rate;
  const temperature = entry.temperature_C ?? specimen?.temperature;
  return [
    {
      name: nameOf(test),
      plastic: result.trueCurve.plastic,
      stress: result.trueCurve.stress,
      ...(entry.plate === undefined ? {} : { plate: entry.plate }),
      ...(rate === undefined ? {} : { rate }),
      ...(temperature === undefined ? {} : { temperature }),
      ...(reason === undefined ? {} : { excluded: reason }),
    },
  ];
}

/** Seam and plate side by side; the width of the seam tells its metal from the plate in the gauge length. */
export function besidePlate(
  test: EvaluatedTest,
  plates: readonly CouponResult[],
  width: number | undefined,
): EvaluatedTest {
  const { entry, result, specimen } = test;
  if (result === undefined || plates.length === 0) return test;
  const gauge = entry.gaugeLength_mm ?? specimen?.gauge;
  const seamWidth = specimen?.seamWidth ?? width;
  const place: SeamPlace | undefined = gauge && seamWidth ? { seamWidth, gauge } : undefined;
  const broke = brokeOf(entry) ?? specimen?.broke;
  return { ...test, seam: seamResult(result, plates, { ...(place && { place }), ...(broke && { broke }) }) };
}

function brokeOf(entry: CouponEntry | SeamEntry): BrokeIn | undefined {
  if (!('broke' in entry) || entry.broke === undefined) return undefined;
  return entry.broke === 'beside the seam' ? 'heat-affected zone' : entry.broke;
}

/**
 * A seam coupon counts with the lower of what its metal carries at the strains of a stretch and of its Rm, each over the
 * plate's: the first says how far the seam strains, the second when it parts. Preloaded ones only show ductility.
 */
export function seamCoupon(test: EvaluatedTest): SeamCoupon[] {
  const { reason, seam } = test;
  const factors = [seam?.flowFactor, seam?.strengthFactor].filter((factor) => factor !== undefined);
  if (factors.length === 0) return [];
  const strength = Math.min(...factors);
  return [{ name: nameOf(test), strength, ...(reason === undefined ? {} : { excluded: reason }) }];
}
