/** A check: a number of ours against a number from outside, with the tolerance, its reason and the source beside it. */

/** Where the other number comes from. */
export type Standing =
  | 'published'
  /** Written down from memory of the source named; not seen in print for this project. */
  | 'from memory'
  /** Worked out by hand or by an independent program from the source named. */
  | 'computed from published'
  /** The same from a formula remembered, not seen in print for this project. */
  | 'computed from memory'
  /** By independent programs (solid finite elements, an ODE solver), made for this project. */
  | 'computed for this project'
  | 'common practice, no source';

export interface Tolerance {
  readonly kind: 'absolute' | 'relative';
  readonly value: number;
}

export interface Check {
  /** Unique over all checks: source/number. */
  readonly id: string;
  readonly what: string;
  /** A word is compared letter by letter; tolerance and unit then mean nothing. */
  readonly ours: () => number | string;
  readonly theirs: number | string;
  readonly unit: string;
  readonly tolerance: Tolerance;
  /** Why the tolerance is what it is. */
  readonly reason: string;
  readonly standing: Standing;
}

/** The checks of one source. */
export interface Source {
  /** Key into sources.bib. */
  readonly key: string;
  readonly citation: string;
  readonly checks: readonly Check[];
}

export interface Outcome {
  readonly check: Check;
  readonly ours: number | string;
  /** Ours less theirs, in the unit; undefined between words. */
  readonly difference: number | undefined;
  readonly within: boolean;
  /** What was thrown instead of an answer. */
  readonly failure?: string;
}

export interface SourceOutcome {
  readonly source: Source;
  readonly outcomes: readonly Outcome[];
}

export const plusMinus = (value: number): Tolerance => ({ kind: 'absolute', value });
export const percent = (value: number): Tolerance => ({ kind: 'relative', value: value / 100 });

/** Most checks rest on printed figures. */
export const PRINTED = 'half a unit of the last printed digit';

export const runChecks = (sources: readonly Source[]): SourceOutcome[] =>
  sources.map((source) => ({ source, outcomes: source.checks.map(outcomeOf) }));

/** Runs one check; what it throws becomes a failed outcome, so that one defect does not hide the others. */
export const outcomeOf = (check: Check): Outcome => {
  try {
    return compare(check, check.ours());
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    return { check, ours: 'no answer', difference: undefined, within: false, failure };
  }
};

const compare = (check: Check, ours: number | string): Outcome => {
  const { theirs, tolerance } = check;
  if (typeof ours === 'string' || typeof theirs === 'string') {
    return { check, ours, difference: undefined, within: ours === theirs };
  }
  const difference = ours - theirs;
  const allowed = tolerance.kind === 'absolute' ? tolerance.value : tolerance.value * Math.abs(theirs);
  // A hair of rounding, so that 0.05 of tolerance takes a difference of 0.05.
  return { check, ours, difference, within: Math.abs(difference) <= allowed * (1 + 1e-9) };
};
