/** What was found in a tensile test, in sentences. */
import type { CouponFinding, CouponVerdict, SeamResult } from '@hoopwright/core/steel';
import { fixed, say } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { COUPON_ENGLISH, type CouponSentence } from './english.ts';

/** Line of the file that a point of the test came from, where it is known. */
export type LineOf = (at: number) => number | undefined;

const NO_LINES: LineOf = () => undefined;

/** One sentence; with its line in front where the finding has a place and the place has a line. */
export const findingText = (
  finding: CouponFinding,
  lineOf: LineOf = NO_LINES,
  manner: Manner = USUAL_MANNER,
): string => {
  const says = filled(keyOf(finding), fillingOf(finding, manner));
  const line = 'at' in finding ? lineOf(finding.at) : undefined;
  return line === undefined ? says : filled('atLine', { line: String(line), says });
};

/** "may be used", or why not. */
export const verdictText = (
  verdict: CouponVerdict,
  lineOf: LineOf = NO_LINES,
  manner: Manner = USUAL_MANNER,
): string =>
  verdict.usable
    ? COUPON_ENGLISH.usable
    : filled('unusable', {
        reasons: verdict.reasons.map((reason) => findingText(reason, lineOf, manner)).join('; '),
      });

/** Strength against the plate, match at the strains of a stretch, where it broke. */
export const seamText = (seam: SeamResult, manner: Manner = USUAL_MANNER): string => {
  const { strengthFactor, flowFactor, match, matchOf, broke } = seam;
  if (strengthFactor === undefined && flowFactor === undefined) return COUPON_ENGLISH['seam alone'];
  const ratio = (value: number | undefined): string =>
    value === undefined ? '–' : say(manner, 'ratio', value);
  const verdicts = new Set(match.map(({ verdict }) => verdict));
  const [only] = verdicts;
  const matched: CouponSentence =
    match.length === 0 ? 'match none' : verdicts.size === 1 ? `match ${only}` : 'match mixed';
  return filled(matchOf === 'metal' ? 'seam metal' : 'seam gauge', {
    strength: ratio(strengthFactor),
    flow: ratio(flowFactor),
    match: COUPON_ENGLISH[matched],
    broke: COUPON_ENGLISH[`broke ${broke}`],
  });
};

const keyOf = (finding: CouponFinding): CouponSentence => {
  switch (finding.kind) {
    case 'no-slope':
      return `no-slope ${finding.why}`;
    case 'no-rate':
      return `no-rate ${finding.why}`;
    case 'lone-point':
      return `lone-point ${finding.of}`;
    case 'unlike':
      return `unlike ${finding.of}`;
    default:
      return finding.kind;
  }
};

const filled = (key: CouponSentence, values: Readonly<Record<string, string>>): string =>
  COUPON_ENGLISH[key].replace(/\{(\w+)\}/g, (_, hole: string) => {
    if (values[hole] === undefined)
      throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
    return values[hole];
  });

/** Every figure of a finding, written in the digits of its quantity. */
const fillingOf = (finding: CouponFinding, manner: Manner): Record<string, string> => {
  const texts: Record<string, string> = {};
  for (const [name, value] of Object.entries(finding))
    texts[name] = typeof value === 'number' ? figureText(name, value, finding, manner) : value;
  return texts;
};

const figureText = (name: string, value: number, finding: CouponFinding, manner: Manner): string => {
  switch (name) {
    case 'strain':
    case 'plastic':
      return say(manner, 'strain', value);
    case 'stress':
    case 'from':
    case 'to':
    case 'drop':
      return say(manner, 'stress', value);
    case 'value':
      return say(manner, strainValued(finding) ? 'strain' : 'stress', value);
    case 'ratio':
      return say(manner, 'share', value);
    case 'scatter':
      return Number.isFinite(value) ? `${fixed(manner, 100 * value, 1)} %` : 'without limit';
    case 'young':
      return fixed(manner, value / 1000, 0);
    case 'factor':
      return fixed(manner, value, 0);
    case 'rate':
      return value.toExponential(1);
    default:
      return String(value);
  }
};

const strainValued = (finding: CouponFinding): boolean =>
  'of' in finding && (finding.of === 'strain' || finding.of === 'Ag');
