/** The checks as a page to read: grouped by source, ours, theirs, difference, tolerance and its reason. Pure. */
import type { Check, Outcome, SourceOutcome, Tolerance } from './check.ts';

/** A piece of the page that is no check, such as a table of convergence; `body` is markdown. */
export interface Appendix {
  readonly title: string;
  readonly body: string;
}

export interface Page {
  readonly sources: readonly SourceOutcome[];
  readonly withoutCheck: readonly string[];
  readonly appendices?: readonly Appendix[];
}

/** The whole page in markdown. The same outcomes give the same bytes. */
export const verificationPage = ({ sources, withoutCheck, appendices = [] }: Page): string => {
  const parts = [
    '# Verification',
    INTRODUCTION,
    summary(sources),
    ...sources.map(sourceSection),
    ...appendices.map(({ title, body }) => `## ${title}\n\n${body}`),
    `## Without a figure from outside\n\n${withoutCheck.map((line) => `- ${line}`).join('\n')}`,
  ];
  return `${parts.join('\n\n')}\n`;
};

const INTRODUCTION = [
  'Made by the checks themselves (`hoopwright verify`); do not edit. Every figure of ours stands against one from outside.',
  'The last column says where that figure comes from: *published* (seen in print), *from memory* (of the source named,',
  'not seen in print), *computed from published* or *from memory* (worked out outside this program from the source named), *computed for',
  'this project* (by independent programs), *common practice, no source*. Keys are those of `sources.bib`.',
].join('\n');

const summary = (sources: readonly SourceOutcome[]): string => {
  const all = sources.flatMap((source) => source.outcomes);
  const failed = all.filter((outcome) => !outcome.within);
  const end = failed.length === 0 ? 'all within their tolerance' : `${failed.length} OUTSIDE their tolerance`;
  return `**${all.length} checks from ${sources.length} sources, ${end}.**`;
};

const sourceSection = ({ source, outcomes }: SourceOutcome): string => {
  const rows = outcomes.map((outcome) => `| ${rowOf(outcome).map(cell).join(' | ')} |`);
  return [`## ${source.citation} [${source.key}]`, '', HEAD, ...rows].join('\n');
};

const HEAD = [
  '| what | ours | theirs | unit | difference | tolerance | why this tolerance | standing |',
  '|---|---:|---:|---|---:|---:|---|---|',
].join('\n');

const rowOf = (outcome: Outcome): string[] => {
  const { check } = outcome;
  return [
    check.what,
    outcome.within ? oursText(outcome) : `**${outcome.failure ?? oursText(outcome)}**`,
    String(check.theirs),
    check.unit,
    differenceText(outcome),
    typeof check.theirs === 'string' ? '' : toleranceText(check.tolerance),
    check.reason,
    check.standing,
  ];
};

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** One digit more than theirs has, so that rounding is seen. */
const oursText = ({ check, ours }: Outcome): string =>
  typeof ours === 'string' ? ours : ours.toFixed(Math.min(decimals(check) + 1, 12));

const decimals = ({ theirs }: Check): number => {
  const text = String(theirs);
  if (text.includes('e-'))
    return Number(text.split('e-')[1]) + (text.split('e')[0].split('.')[1]?.length ?? 0);
  return text.split('.')[1]?.length ?? 0;
};

const differenceText = ({ check, difference }: Outcome): string => {
  if (difference === undefined) return '';
  if (check.theirs === 0) return signed(difference);
  return `${signed((difference / Math.abs(Number(check.theirs))) * 100)} %`;
};

const signed = (value: number): string => {
  const text = Math.abs(value) < 5e-7 ? '0' : String(Number(value.toPrecision(2)));
  return value > 0 && text !== '0' ? `+${text}` : text;
};

const toleranceText = ({ kind, value }: Tolerance): string =>
  kind === 'absolute' ? `±${Number(value.toPrecision(3))}` : `±${Number((value * 100).toPrecision(3))} %`;
