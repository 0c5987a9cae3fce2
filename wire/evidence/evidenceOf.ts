/** From the `steel` of a tank file and the coupon files it names to what the inference takes as evidence. */
import {
  type Certificate,
  type Evidence,
  type Grade,
  GRADES,
  gradeNamed,
  md30,
  type PlateInHand,
  type ProductForm,
  type TrialTank,
} from '@hoopwright/core/steel';
import type { Tank } from '@hoopwright/core/tank';
import { fromBar, fromPercent } from '@hoopwright/core/units';
import type { Issue } from '../issue/issue.ts';
import type { SteelFile } from '../tank/format/steelFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';
import {
  besidePlate,
  type CouponFiles,
  type EvaluatedTest,
  type EvidenceWords,
  plateCoupon,
  seamCoupon,
  testOf,
  usable,
} from './couponTests.ts';
import { type Bent, bentOf, rollingOf } from './rolling.ts';

export interface EvidenceRead {
  readonly evidence: Evidence;
  /** Every coupon of plate and seam as evaluated, counted or not. */
  readonly tests: readonly EvaluatedTest[];
  /** What rolling did to the plate; absent where that is not computed (core/steel/rolling). */
  readonly bent?: Bent;
  /** °C, by a heat analysis of all seven elements (core/steel/grade). */
  readonly md30?: number;
  /** Files that are missing or cannot be read as a test; the evidence goes without them. */
  readonly issues: readonly Issue[];
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
  const good = tests.filter(usable).flatMap(({ result }) => result ?? []);
  const seams = (steel.seamCoupons ?? []).map((coupon, i) =>
    besidePlate(
      testOf({ of: 'seam', entry: coupon }, `steel.seamCoupons[${i}]`, { files, issues, words }),
      good,
      tank.longSeam?.width,
    ),
  );
  const bent = bentOf(steel, plate);
  return {
    evidence: {
      plate,
      certificates: steel.certificate === undefined ? [] : [certificateOf(steel.certificate)],
      coupons: tests.flatMap((test) => plateCoupon(test)),
      seams: seams.flatMap((test) => seamCoupon(test)),
      walls:
        steel.wallMeasured_mm === undefined
          ? []
          : [{ name: 'wall as measured', points: steel.wallMeasured_mm, gauge: GAUGE_SHARE * course.wall }],
      rolling: rollingOf(steel, bent),
      trials: (steel.testTanks ?? []).map(trialOf),
    },
    tests: [...tests, ...seams],
    ...(bent === undefined ? {} : { bent }),
    ...md30Of(steel),
    issues,
  };
}

/** A thickness gauge in the shop is good to half a percent. Common practice, no source. */
const GAUGE_SHARE = 0.005;

function md30Of({ certificate }: SteelFile): { readonly md30?: number } {
  const c = certificate?.composition;
  const parts = [
    c?.C_percent,
    c?.N_percent,
    c?.Si_percent,
    c?.Mn_percent,
    c?.Cr_percent,
    c?.Ni_percent,
    c?.Mo_percent,
  ];
  const [C, N, Si, Mn, Cr, Ni, Mo] = parts.flatMap((part) => part ?? []);
  return Mo === undefined ? {} : { md30: md30({ C, N, Si, Mn, Cr, Ni, Mo }) };
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
    ...(steel.wallTolerance_mm === undefined ? {} : { wallTolerance: steel.wallTolerance_mm }),
    ...(tank.longSeam === undefined ? {} : { seamStrength: tank.longSeam.strength }),
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
