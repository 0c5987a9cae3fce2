/** `hoopwright coupon`: tensile tests from files, as a table, JSON or a drawing. */
import {
  type CouponResult,
  evaluateCoupon,
  preloadResult,
  type SeamPlace,
  seamResult,
} from '@hoopwright/core/steel';
import { couponScene, couponTable, findingText, seamText, verdictText } from '@hoopwright/report/coupon';
import { toSvg } from '@hoopwright/report/sheet';
import {
  type CouponAnswer,
  couponAnswer,
  type CouponHints,
  type CouponRead,
  noteText,
  readCouponFile,
  unreadAnswer,
} from '@hoopwright/wire/coupon';
import { issueLine } from '@hoopwright/wire/issue';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { BAD_INPUT, type Desk, DONE, Ending, reasonOf } from '../desk/desk.ts';

interface CouponOptions {
  readonly strain?: string;
  readonly stress?: string;
  readonly force?: string;
  readonly extension?: string;
  readonly time?: string;
  readonly strainUnit?: string;
  readonly stressUnit?: string;
  readonly forceUnit?: string;
  readonly extensionUnit?: string;
  readonly timeUnit?: string;
  readonly area_mm2?: number;
  readonly gauge_mm?: number;
  readonly decimal?: '.' | ',';
  readonly json?: boolean;
  readonly curve?: boolean;
  readonly svg?: string;
}

export function couponCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('coupon')
    .description(
      'evaluate tensile tests: modulus, proof strengths, Rm, Ag, A, and whether the test may be used',
    )
    .argument('<file...>', 'text file of a test, any delimiter; - for standard input')
    .option('--strain <column>', 'column of strain, by heading or by number from 1')
    .option('--stress <column>', 'column of stress')
    .option('--force <column>', 'column of force; needs the cross-section')
    .option('--extension <column>', 'column of extension; needs the gauge length')
    .option('--time <column>', 'column of time')
    .option('--stress-unit <unit>', 'MPa, ksi, psi, …, where the heading does not say')
    .option('--strain-unit <unit>', '%, fraction, …')
    .option('--force-unit <unit>', 'N, kN, lbf, …')
    .option('--extension-unit <unit>', 'mm, inch, …')
    .option('--time-unit <unit>', 's, min, …')
    .option('--area_mm2 <number>', 'cross-section before the test', positive)
    .option('--gauge_mm <number>', 'gauge length of the extensometer', positive)
    .addOption(new Option('--decimal <sign>', 'decimal sign, where it is not clear').choices(['.', ',']))
    .option('--json', 'a list, one entry per file, on standard output')
    .option('--curve', 'with --json: the true curve of each test')
    .option('--svg <file>', 'the test as a drawing; several tests become FILE-1.svg, FILE-2.svg, …')
    .action(async (files: string[], options: CouponOptions) => end(await runCoupons(desk, files, options)));
}

const positive = (text: string): number => {
  const value = Number(text);
  if (value > 0 && value < Infinity) return value;
  throw new InvalidArgumentError(`came ${text}, wanted a positive number with a decimal point`);
};

interface Opened {
  readonly file: string;
  readonly read: CouponRead;
  /** Absent where the file has issues. */
  readonly result?: CouponResult;
}

async function runCoupons(desk: Desk, files: readonly string[], options: CouponOptions): Promise<number> {
  const hints = hintsFrom(options);
  const opened: Opened[] = [];
  for (const file of files) opened.push(open(file, await bytesOrEnd(desk, file), hints));
  const answers = opened.map((one) => answerFor(one, opened, options.curve === true));
  if (options.json === true) desk.out(`${JSON.stringify(answers, undefined, 1)}\n`);
  else desk.out(textOf(opened, answers));
  for (const message of messagesOf(answers, options)) desk.err(`${message}\n`);
  await writeDrawings(desk, opened, options.svg);
  return opened.every(({ read }) => read.ok) ? DONE : BAD_INPUT;
}

const open = (file: string, bytes: Uint8Array, hints: CouponHints): Opened => {
  const read = readCouponFile(bytes, hints);
  return read.ok ? { file, read, result: evaluateCoupon(read.test) } : { file, read };
};

async function bytesOrEnd(desk: Desk, file: string): Promise<Uint8Array> {
  try {
    return await desk.readBytes(file);
  } catch (error) {
    const reason = reasonOf(error);
    throw new Ending(
      BAD_INPUT,
      `${file}: cannot be read (${reason}); give the path of a file, or - for standard input`,
    );
  }
}

const hintsFrom = (options: CouponOptions): CouponHints => {
  const { area_mm2, gauge_mm, json: _json, curve: _curve, svg: _svg, ...columns } = options;
  return {
    ...columns,
    ...(area_mm2 !== undefined && { area: area_mm2 }),
    ...(gauge_mm !== undefined && { gauge: gauge_mm }),
  };
};

function answerFor({ file, read, result }: Opened, all: readonly Opened[], curve: boolean): CouponAnswer {
  if (!read.ok || !result)
    return unreadAnswer(file, read.ok ? [] : read.issues, read.ok ? [] : read.issues.map(issueLine));
  const lineOf = (at: number): number | undefined => read.lines[at];
  const reasons = result.verdict.reasons.map((reason) => findingText(reason, lineOf));
  const warnings = [
    ...read.notes.map(noteText),
    ...result.findings.map((finding) => findingText(finding, lineOf)),
  ];
  const beside = comparison(read, result, all);
  return couponAnswer({
    file,
    result,
    warnings,
    reasons,
    invented: read.specimen.invented === true,
    curve,
    ...beside,
  });
}

/** A coupon across the seam, or a preloaded one, is judged beside the usable plate coupons of the same call. */
function comparison(read: CouponRead & { ok: true }, result: CouponResult, all: readonly Opened[]) {
  const { coupon, preloadStress, preloadStrain, broke, seamWidth, gauge } = read.specimen;
  const plates = all.flatMap((one) => (isPlate(one.read) && one.result?.verdict.usable ? [one.result] : []));
  const place: SeamPlace | undefined = seamWidth && gauge ? { seamWidth, gauge } : undefined;
  return {
    ...(coupon === 'across the seam' && {
      seam: seamResult(result, plates, { ...(place && { place }), ...(broke && { broke }) }),
    }),
    ...((preloadStress ?? preloadStrain) !== undefined && {
      preload: preloadResult(result, plates, preloadStress),
    }),
  };
}

const isPlate = (read: CouponRead): boolean =>
  read.ok &&
  read.specimen.coupon !== 'across the seam' &&
  (read.specimen.preloadStress ?? read.specimen.preloadStrain) === undefined;

function textOf(opened: readonly Opened[], answers: readonly CouponAnswer[]): string {
  const rows = opened.flatMap(({ file, result }) => (result ? [{ name: file, result }] : []));
  const verdicts = opened.flatMap(({ file, read, result }) =>
    read.ok && result && !result.verdict.usable
      ? [`${file}: ${verdictText(result.verdict, (at) => read.lines[at])}`]
      : [],
  );
  const seams = answers.flatMap(({ file, seam }) => (seam ? [`${file}: ${seamText(seam)}`] : []));
  const invented = answers.some((answer) => answer.invented)
    ? ['The figures of a test here are invented.']
    : [];
  const table = rows.length > 0 ? couponTable(rows) : [];
  return [...table, ...verdicts, ...seams, ...invented].map((line) => `${line}\n`).join('');
}

function messagesOf(answers: readonly CouponAnswer[], { json }: CouponOptions): string[] {
  return answers.flatMap(({ file, warnings, issues }) => [
    ...(issues ?? []).map((issue) => `${file}: ${issueLine(issue)}`),
    ...(json === true ? [] : warnings.map((warning) => `${file}: ${warning}`)),
  ]);
}

async function writeDrawings(desk: Desk, opened: readonly Opened[], path: string | undefined): Promise<void> {
  if (path === undefined) return;
  const drawn = opened.flatMap(({ file, read, result }) =>
    read.ok && result ? [{ file, read, result }] : [],
  );
  for (const [k, { file, read, result }] of drawn.entries()) {
    const scene = couponScene({
      name: file.replace(/^.*[\\/]/, ''),
      test: read.test,
      result,
      invented: read.specimen.invented === true,
    });
    const target = drawn.length === 1 ? path : path.replace(/(\.svg)?$/i, `-${k + 1}.svg`);
    await desk.write(target, toSvg(scene));
  }
}
