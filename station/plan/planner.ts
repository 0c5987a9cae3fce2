/** Plans for the server: of several requests from one window only the newest is worth finishing; answers are kept. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import type { ShellRun } from '@hoopwright/core/stretch';
import type { PaperSource } from '@hoopwright/report/plan';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { openAnswers } from '../range/answers.ts';
import type { ShellRunner } from '../range/runner.ts';
import { openThreads } from '../threads/threads.ts';
import { answerPaper, answerPlan, type Planned, type PlanMessage } from '../worker/plan.ts';
import { madeFromNow } from './madeFrom.ts';
import { RANGE_SHARE } from './planHere.ts';
import { shellsFor } from './planRange.ts';

export interface PlanWanted {
  readonly given: Extract<ParsedTank, { ok: true }>;
  readonly files: CouponFiles;
}

export interface Watch {
  /** Fraction done, 0..1, never falling. */
  readonly progress?: (fraction: number) => void;
  /** Asks to stop: nobody waits for the answer any more. */
  readonly signal?: AbortSignal;
}

export interface Planner {
  /** The plan as `hoopwright plan` makes it. `overtaken`: a newer request of the window took its place, or nobody waits. */
  plan(window: string, wanted: PlanWanted, watch?: Watch): Promise<Planned | 'overtaken'>;
  paper(source: PaperSource): Promise<Uint8Array>;
  close(): Promise<void>;
}

/** Bundle of station/worker/plan.ts, beside the program. */
const ENTRY = new URL('./worker-plan.mjs', import.meta.url);
/** Steps in which progress is told. */
const TOLD = 0.01;

/** @param run solves the shells of the range; @param entry where it is not there, all is done in this thread */
export function openPlanner(run: ShellRunner, entry = ENTRY): Planner {
  const worker = existsSync(fileURLToPath(entry)) ? inThreads(entry) : HERE;
  const newest = new Map<string, AbortController>();
  // Freezing a plan that is on the screen does not make it again.
  const kept = openAnswers<Planned>(4);

  const made = async ({ given, files }: PlanWanted, watch: Required<Watch>): Promise<Planned> => {
    const { progress, signal } = watch;
    const shells = shellsFor(given, files);
    let done = 0;
    const told = { done: () => progress((RANGE_SHARE * ++done) / shells.length), signal };
    const runs = shells.length === 0 ? [] : await run(shells, told);
    return worker.plan({ file: given.file, files, runs }, progress, signal);
  };

  return {
    plan: async (window, wanted, { progress = () => {}, signal } = {}) => {
      newest.get(window)?.abort();
      const mine = new AbortController();
      newest.set(window, mine);
      const either = signal === undefined ? mine.signal : AbortSignal.any([mine.signal, signal]);
      try {
        const key = keyOf(wanted);
        const answer = kept.of(key) ?? (await made(wanted, { progress: rising(progress), signal: either }));
        kept.keep(key, answer);
        return answer;
      } catch (error) {
        if (either.aborted) return 'overtaken';
        throw error;
      } finally {
        if (newest.get(window) === mine) newest.delete(window);
      }
    },
    paper: (source) => worker.paper(source),
    close: () => worker.close(),
  };
}

interface Worker {
  plan(
    message: Omit<PlanMessage, 'port' | 'runs'> & { readonly runs: readonly ShellRun[] },
    progress: (fraction: number) => void,
    signal: AbortSignal,
  ): Promise<Planned>;
  paper(source: PaperSource): Promise<Uint8Array>;
  close(): Promise<void>;
}

function inThreads(entry: URL): Worker {
  const pool = openThreads(entry, { least: 0, most: 1 });
  return {
    plan: async (message, progress, signal) => {
      const { port1, port2 } = new MessageChannel();
      port1.on('message', progress);
      try {
        const options = { name: 'answerPlan', signal, transferList: [port2] };
        return await pool.run<Planned>({ ...message, port: port2 }, options);
      } finally {
        port1.close();
      }
    },
    paper: (source) => pool.run<Uint8Array>(source, { name: 'answerPaper' }),
    close: () => pool.close(),
  };
}

/** In this thread, and told of no progress: for tests and where the program was not built. */
const HERE: Worker = {
  plan: async (message) => {
    const { port1, port2 } = new MessageChannel();
    try {
      return await answerPlan({ ...message, port: port2 });
    } finally {
      port1.close();
      port2.close();
    }
  },
  paper: answerPaper,
  close: async () => {},
};

/** Whatever a plan depends on: the tank file, and the coupons that speak for its steel. */
const keyOf = ({ given, files }: PlanWanted): string => {
  const { tank, evidence } = madeFromNow(given, files);
  return `${tank} ${evidence ?? ''}`;
};

const rising = (tell: (fraction: number) => void): ((fraction: number) => void) => {
  let last = 0;
  return (fraction) => {
    if (fraction < last + TOLD) return;
    last = fraction;
    tell(fraction);
  };
};
