/**
 * What the readings say of tank and instruments: the range of the unknowns after them, a normal distribution about the
 * likeliest, by Gauss-Newton on what was seen. The strays of the quick tank are unknowns too, and their size is one of
 * four: where the readings do not go with any steel, the larger sizes win and the range widens.
 */
import { cholesky, logDeterminant, solveCholesky } from '../../math/cholesky.ts';
import type { QuickTank } from '../quick/quick.ts';
import { type Line, linesAbout } from './lines.ts';
import { onceEach, type Seen } from './seen.ts';
import { KNOTS, type Unknowns } from './unknowns.ts';

export interface Knowledge {
  /** Likeliest numbers for strays of the usual size. */
  readonly centre: Float64Array;
  /** By the size of the strays. */
  readonly cases: readonly KnownCase[];
  /** Root mean square of what the likeliest case leaves unexplained, in its standard deviations. */
  readonly misfit: number;
}

export interface KnownCase {
  /** Strays over their usual size. */
  readonly times: number;
  readonly probability: number;
  readonly mean: Float64Array;
  /** Lower factor of the inverse of the covariance. */
  readonly root: Float64Array;
}

/** Sizes of the strays and their chances before anything is seen. Our choice: nine of ten tanks stray as usual. */
const SIZES = [
  { times: 1, chance: 0.7 },
  { times: 2, chance: 0.2 },
  { times: 5, chance: 0.07 },
  { times: 12, chance: 0.03 },
] as const;

const TURNS = 8;
/** Change of the likeliest numbers that counts as none, in standard deviations before the readings. */
const CLOSE = 0.01;
/**
 * Fall of the cost that counts as none: about half a standard deviation after the readings may be left of the way. The cost
 * jumps by more where a reading is taken otherwise, and steps halved before such a jump would creep up to it.
 */
const GAIN = 0.1;

/** @param from numbers to start at: those of the last time, or zeros */
export function knowFrom(
  quick: QuickTank,
  unknowns: Unknowns,
  seen: readonly Seen[],
  from: Float64Array = new Float64Array(unknowns.size),
): Knowledge {
  const { centre, lines } = likeliest(quick, unknowns, onceEach(seen), from);
  const solved = SIZES.map(({ times }) => caseOf(unknowns, lines, { centre, times }));
  const logs = solved.map((one, k) => one.evidence + Math.log(SIZES[k].chance));
  const most = Math.max(...logs);
  const all = logs.reduce((sum, x) => sum + Math.exp(x - most), 0);
  const cases = solved.map(({ mean, root, times }, k) => ({
    mean,
    root,
    times,
    probability: Math.exp(logs[k] - most) / all,
  }));
  return { centre, cases, misfit: solved[0].misfit };
}

interface About {
  readonly centre: Float64Array;
  readonly lines: readonly Line[];
  /** Half the sum of squares that the likeliest numbers make least. */
  readonly cost: number;
}

/** Gauss-Newton with the step halved until it helps. */
function likeliest(quick: QuickTank, unknowns: Unknowns, seen: readonly Seen[], from: Float64Array): About {
  let at = about(quick, unknowns, seen, from);
  for (let turn = 0; turn < TURNS; turn++) {
    const { mean } = caseOf(unknowns, at.lines, { centre: at.centre, times: START });
    const { centre, cost } = at;
    // What is left of the way is in the cases, which are straight about the centre.
    if (mean.every((value, k) => Math.abs(value - centre[k]) < CLOSE)) break;
    const next = better(at, mean, (there) => about(quick, unknowns, seen, there));
    if (next === undefined) break;
    at = next;
    if (cost - at.cost < GAIN) break;
  }
  return at;
}

/** Size of the strays for which the likeliest numbers are sought. */
const START = 1;
const HALVINGS = 5;

function better(at: About, mean: Float64Array, look: (centre: Float64Array) => About): About | undefined {
  for (let k = 0, f = 1; k < HALVINGS; k++, f *= 0.4) {
    const next = look(at.centre.map((value, i) => value + f * (mean[i] - value)));
    if (next.cost < at.cost) return next;
  }
  return undefined;
}

function about(quick: QuickTank, unknowns: Unknowns, seen: readonly Seen[], centre: Float64Array): About {
  const lines = linesAbout(quick, unknowns, seen, centre);
  let cost = 0;
  for (const z of centre) cost += 0.5 * z * z;
  for (const { miss, variance, loose } of lines) cost += (0.5 * (miss * miss)) / (variance + loose);
  return { centre, lines, cost };
}

interface Solved extends Omit<KnownCase, 'probability'> {
  /** ln of the density of what was seen, but for a constant. */
  readonly evidence: number;
  readonly misfit: number;
}

/** The normal distribution for strays of one size: u = z, prior standard normal, lines made straight about `centre`. */
function caseOf(
  { size }: Unknowns,
  lines: readonly Line[],
  { centre, times }: { readonly centre: Float64Array; readonly times: number },
): Solved {
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (let a = 0; a < size; a++) normal[a * size + a] = 1;
  const from = size - KNOTS.length;
  const row = new Float64Array(size);
  let evidence = 0;
  let square = 0;
  for (const line of lines) {
    // Numbers of the strays are in units of the size at hand; `centre` holds them in units of the usual one.
    let target = line.miss;
    for (let k = 0; k < size; k++) {
      row[k] = k < from ? line.row[k] : line.row[k] * times;
      target += line.row[k] * centre[k];
    }
    const weight = 1 / (line.variance + line.loose * times * times);
    evidence += 0.5 * Math.log(weight);
    square += weight * target * target;
    for (let a = 0; a < size; a++) {
      if (row[a] === 0) continue;
      const scaled = weight * row[a];
      right[a] += scaled * target;
      for (let b = 0; b <= a; b++) normal[a * size + b] += scaled * row[b];
    }
  }
  for (let a = 0; a < size; a++)
    for (let b = a + 1; b < size; b++) normal[a * size + b] = normal[b * size + a];
  const root = cholesky(normal, size);
  const mean = solveCholesky(root, right);
  let explained = 0;
  for (let a = 0; a < size; a++) explained += mean[a] * right[a];
  const left = Math.max(0, square - explained);
  return {
    times,
    mean,
    root,
    evidence: evidence - 0.5 * logDeterminant(root, size) - 0.5 * left,
    misfit: Math.sqrt(left / Math.max(1, lines.length)),
  };
}
