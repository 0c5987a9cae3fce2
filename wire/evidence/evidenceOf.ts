/** From the `steel` of a tank file and the coupon files it names to what the inference takes as evidence. */
import {
  type Certificate,
  type CouponResult,
  type Evidence,
  evaluateCoupon,
  type Grade,
  GRADES,
  gradeNamed,
  type PlateCoupon,
  type PlateInHand,
  priorMetal,
  type ProductForm,
  rolled,
  type RollingStrain,
  type SeamCoupon,
  seamResult,
  type TrialTank,
} from '@hoopwright/core/steel';
import type { Tank } from '@hoopwright/core/tank';
import { fromBar, fromPercent } from '@hoopwright/core/units';
import { readCouponFile } from '../coupon/coupon.ts';
import type { Issue } from '../issue/issue.ts';
import type { SteelFile } from '../tank/format/steelFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';

/** Bytes of the coupon files, by the path that the tank file names. */
export type CouponFiles = ReadonlyMap<string, Uint8Array | string>;

export interface EvidenceRead {
  readonly evidence: Evidence;
  /** Every coupon of plate and seam as evaluated, counted or not. */
  readonly tests: readonly EvaluatedTest[];
  /** Files that are missing or cannot be read as a test; the evidence goes without them. */
  readonly issues: readonly Issue[];
}

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
}

/** What is said of a test that is not usable; the words are made by the caller. */
export interface EvidenceWords {
  verdict(result: CouponResult, lines: readonly number[]): string;
  readonly missing: string;
  readonly unread: string;
  readonly preloaded: string;
}

/** Paths of the coupon files that a tank file names. */
export const couponPaths = ({ steel }: TankFile): string[] =>
  [...(steel.coupons ?? []), ...(steel.seamCoupons ?? [])].map(({ file }) => file);

/** True where a range can be had: something was measured or certified. */
export const hasSteelEvidence = ({ steel }: TankFile): boolean =>
  steel.certificate !== undefined || (steel.coupons ?? []).length > 0 || (steel.testTanks ?? []).length > 0;

/** Evidence of the plate of the longest course. Unknown grades and forms count as 1.4307 cold-rolled, and an issue says so. */
export function evidenceOf(
  file: TankFile,
  tank: Tank,
  files: CouponFiles,
  words: EvidenceWords,
): EvidenceRead {
  const { steel } = file;
  const issues: Issue[] = [];
  const course = tank.courses.reduce((a, b) => (b.length > a.length ? b : a));
  const plate = plateOf(steel, tank, course.wall, course.plate, issues);
  const tests = (steel.coupons ?? []).map((coupon, i) =>
    testOf({ of: 'plate', entry: coupon }, `steel.coupons[${i}]`, { files, issues, words }),
  );
  const seams = (steel.seamCoupons ?? []).map((coupon, i) =>
    testOf({ of: 'seam', entry: coupon }, `steel.seamCoupons[${i}]`, { files, issues, words }),
  );
  const good = tests.filter(usable);
  return {
    evidence: {
      plate,
      certificates: steel.certificate === undefined ? [] : [certificateOf(steel.certificate)],
      coupons: tests.flatMap((test) => plateCoupon(test)),
      seams: seams.flatMap((test) =>
        seamCoupon(
          test,
          good.flatMap(({ result }) => result ?? []),
          words,
        ),
      ),
      walls:
        steel.wallMeasured_mm === undefined
          ? []
          : [{ name: 'wall as measured', points: steel.wallMeasured_mm, gauge: GAUGE_SHARE * course.wall }],
      rolling: rollingOf(steel, plate),
      trials: (steel.testTanks ?? []).map(trialOf),
    },
    tests: [...tests, ...seams],
    issues,
  };
}

/** A thickness gauge in the shop is good to half a percent. Common practice, no source. */
const GAUGE_SHARE = 0.005;

type CouponEntry = NonNullable<SteelFile['coupons']>[number];
type SeamEntry = NonNullable<SteelFile['seamCoupons']>[number];

const usable = (test: EvaluatedTest): boolean => test.result !== undefined && test.reason === undefined;

interface Reading {
  readonly files: CouponFiles;
  readonly issues: Issue[];
  readonly words: EvidenceWords;
}

function testOf(
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
  const reason = entry.excluded ?? (result.verdict.usable ? undefined : words.verdict(result, lines));
  return { ...test, result, lines, ...(reason === undefined ? {} : { reason }) };
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

function plateCoupon(test: EvaluatedTest): PlateCoupon[] {
  const { entry, result, reason } = test;
  if (result === undefined) return [];
  const rate = entry.rate_per_s ?? result.rate;
  return [
    {
      name: nameOf(test),
      plastic: result.trueCurve.plastic,
      stress: result.trueCurve.stress,
      ...(entry.plate === undefined ? {} : { plate: entry.plate }),
      ...(rate === undefined ? {} : { rate }),
      ...(entry.temperature_C === undefined ? {} : { temperature: entry.temperature_C }),
      ...(reason === undefined ? {} : { excluded: reason }),
    },
  ];
}

/** A seam coupon counts with the flow stress of its gauge over that of the plate coupons; preloaded ones only show ductility. */
function seamCoupon(
  test: EvaluatedTest,
  plates: readonly CouponResult[],
  words: EvidenceWords,
): SeamCoupon[] {
  const { result, reason, entry } = test;
  if (result === undefined || plates.length === 0) return [];
  const preloaded = 'preload' in entry && entry.preload !== undefined;
  const strength = seamResult(result, plates).flowFactor;
  const excluded = reason ?? (preloaded ? words.preloaded : undefined);
  if (strength === undefined) return [];
  return [{ name: nameOf(test), strength, ...(excluded === undefined ? {} : { excluded }) }];
}

function certificateOf(given: NonNullable<SteelFile['certificate']>): Certificate {
  return {
    name: given.heat === undefined ? 'mill certificate' : `mill certificate, heat ${given.heat}`,
    ...(given.plate === undefined ? {} : { plate: given.plate }),
    ...(given.heat === undefined ? {} : { heat: given.heat }),
    ...(given.Rp02_MPa === undefined ? {} : { proof02: given.Rp02_MPa }),
    ...(given.Rp10_MPa === undefined ? {} : { proof10: given.Rp10_MPa }),
    ...(given.Rm_MPa === undefined ? {} : { strength: given.Rm_MPa }),
    ...(given.A_percent === undefined ? {} : { elongation: fromPercent(given.A_percent) }),
  };
}

const FORMS: Readonly<Record<string, ProductForm>> = {
  'cold-rolled': 'cold-rolled',
  'hot-rolled strip': 'hot-rolled',
  plate: 'plate',
};

function plateOf(
  steel: SteelFile,
  tank: Tank,
  wall: number,
  plate: string | undefined,
  issues: Issue[],
): PlateInHand {
  const heat = steel.certificate?.heat;
  return {
    grade: gradeOf(steel.grade, issues),
    form: FORMS[steel.product ?? 'cold-rolled'] ?? 'cold-rolled',
    thickness: wall,
    wall,
    radius: tank.insideDiameter / 2 + wall / 2,
    temperature: tank.water.temperature,
    ...(plate === undefined ? {} : { plate }),
    ...(heat === undefined ? {} : { heat }),
  };
}

function gradeOf(given: string | undefined, issues: Issue[]): Grade {
  const known = given === undefined ? undefined : gradeNamed(given);
  if (known !== undefined) return known;
  issues.push({
    path: 'steel.grade',
    expected: `one of the grades with typical values: ${GRADES.join(', ')}`,
    received: given === undefined ? 'nothing' : JSON.stringify(given),
    suggestion: 'its typical values are taken to be those of 1.4307; state the grade',
  });
  return '1.4307';
}

/** A computed rolling strain is good to a fifth: the rolls' true radius is not known. Our estimate. */
const ROLLING_DEVIATION = 0.2;

function rollingOf({ rolling }: SteelFile, plate: PlateInHand): RollingStrain[] {
  if (rolling === undefined || plate.radius === undefined) return [];
  const { averagePlastic: mean } = rolled(priorMetal(plate), {
    thickness: plate.wall,
    radius: plate.radius,
    passes: rolling.passes,
    ...(rolling.overbendRadius_mm === undefined ? {} : { tightest: rolling.overbendRadius_mm }),
  });
  return [
    {
      name: `${rolling.machine} machine, ${rolling.passes} passes`,
      mean,
      deviation: ROLLING_DEVIATION * mean,
    },
  ];
}

function trialOf(given: NonNullable<SteelFile['testTanks']>[number]): TrialTank {
  const before = given.girthBefore_mm ?? Math.PI * (given.insideDiameter_mm + 2 * given.wall_mm);
  return {
    name: given.name,
    radius: given.insideDiameter_mm / 2 + given.wall_mm / 2,
    wall: given.wall_mm,
    points: (given.points ?? []).map((point) => ({
      pressure: fromBar(point.pressure_bar),
      growth: point.girth_mm / before - 1,
    })),
    ...(given.plate === undefined ? {} : { plate: given.plate }),
    ...(given.burst === undefined ? {} : { burst: fromBar(given.burst.pressure_bar) }),
  };
}
