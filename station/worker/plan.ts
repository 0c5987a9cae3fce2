/** Entry of the pool's threads: the day of one tank, and its papers, away from the thread that answers requests. */
import type { MessagePort } from 'node:worker_threads';
import type { ShellRun } from '@hoopwright/core/stretch';
import type { PaperSource } from '@hoopwright/report/plan';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { Plan, Refusal } from '@hoopwright/wire/plan';
import { parseTankFile } from '@hoopwright/wire/tank';
import { pdfOf } from '../paper/press.ts';
import { planHere } from '../plan/planHere.ts';

export interface PlanMessage {
  /** A tank file that can be read. */
  readonly file: unknown;
  readonly files: CouponFiles;
  /** Shell solutions of the range, solved beforehand; empty without evidence. */
  readonly runs: readonly ShellRun[];
  /** Told of the fraction done, 0..1. */
  readonly port: MessagePort;
}

export type Planned =
  | { readonly kind: 'plan'; readonly plan: Plan }
  | { readonly kind: 'refused'; readonly reasons: readonly Refusal[] };

/** The pool calls the exports by their names. Throws where the file cannot be read: whoever asks has seen to that. */
export async function answerPlan({ file, files, runs, port }: PlanMessage): Promise<Planned> {
  const given = parseTankFile(file);
  if (!given.ok) throw new Error(`the tank file cannot be read: ${JSON.stringify(given.issues)}`);
  const run = async (): Promise<ShellRun[]> => [...runs];
  const progress = (fraction: number): void => port.postMessage(fraction);
  const answer = await planHere({ given, files, run, progress });
  return answer.kind === 'plan' ? { kind: 'plan', plan: answer.plan } : answer;
}

export const answerPaper = (source: PaperSource): Promise<Uint8Array> => pdfOf(source);
