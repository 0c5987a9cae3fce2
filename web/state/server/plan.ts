/** The plan of the tank on the board: asked of the server, with its progress; a newer question ends an older one. */
import type { Plan, Refusal } from '@hoopwright/wire/plan';
import type { Attachment } from '@hoopwright/wire/project';
import { create } from 'zustand';
import type { FileDraft } from '../file/edit.ts';
import { ServerRefusal, WINDOW } from './server.ts';

export type Planned =
  | { readonly kind: 'plan'; readonly plan: Plan }
  | { readonly kind: 'refused'; readonly reasons: readonly Refusal[] };

export interface PlanState {
  readonly answer?: Planned | undefined;
  /** What the answer belongs to, as `planKey` gives it. */
  readonly of: string;
  readonly state: 'idle' | 'working' | 'stopped' | 'failed';
  /** 0..1 while it is being made. */
  readonly done: number;
  /** What is being made, or was last asked for. */
  readonly asked: string;
}

export const usePlan = create<PlanState>(() => ({ of: '', state: 'idle', done: 0, asked: '' }));

/** What a plan is made of: the tank file, and the files of the project that speak for its steel. */
export interface PlanOf {
  readonly project: string;
  readonly draft: FileDraft;
  readonly files: readonly Attachment[];
}

/** In one text. */
export const planKey = ({ project, draft, files }: PlanOf): string =>
  `${project} ${JSON.stringify([files.map(({ name, sha256 }) => [name, sha256]), draft])}`;

let newest = new AbortController();
let lastAsked: PlanOf | undefined;

/** After a stop or a failure. */
export async function askAgain(): Promise<void> {
  if (lastAsked !== undefined) await askPlan(lastAsked);
}

export async function askPlan(wanted: PlanOf): Promise<void> {
  const { project, draft } = wanted;
  const key = planKey(wanted);
  const { of, asked, state } = usePlan.getState();
  if (of === key && state === 'idle') return;
  if (asked === key && state === 'working') return;
  lastAsked = wanted;
  newest.abort();
  const mine = new AbortController();
  newest = mine;
  usePlan.setState({ state: 'working', done: 0, asked: key });
  try {
    const answer = await made(project, draft, mine.signal);
    if (mine.signal.aborted || answer === undefined) return;
    usePlan.setState({ answer, of: key, state: 'idle', done: 1 });
  } catch (error) {
    if (mine.signal.aborted) return;
    // What is wrong with the file is told by the board.
    const known = error instanceof ServerRefusal && error.status === 422;
    usePlan.setState({ state: known ? 'idle' : 'failed' });
  }
}

export function stopPlan(): void {
  newest.abort();
  usePlan.setState({ state: 'stopped' });
}

interface Line {
  readonly kind: string;
  readonly fraction?: number;
}

async function made(project: string, file: FileDraft, signal: AbortSignal): Promise<Planned | undefined> {
  const response = await fetch(`/api/plan?project=${project}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ window: WINDOW, file }),
    signal,
  });
  if (!response.ok || response.body === null) throw new ServerRefusal(response.status, []);
  let last: Planned | undefined;
  for await (const line of linesOf(response.body)) {
    const said: Line = JSON.parse(line);
    if (said.kind === 'progress') usePlan.setState({ done: said.fraction ?? 0 });
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- our own server says which kinds there are
    else if (said.kind === 'plan' || said.kind === 'refused') last = said as Planned;
  }
  return last;
}

async function* linesOf(body: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<string> {
  const reader = body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    const parts = (rest + value).split('\n');
    rest = parts.pop() ?? '';
    yield* parts;
  }
  if (rest !== '') yield rest;
}

/** The papers of the draft, set as the command line sets them. */
export async function draftPapers(project: string, file: FileDraft, query: string): Promise<Blob> {
  const response = await fetch(`/api/plan/paper?project=${project}&${query}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ window: WINDOW, file }),
  });
  if (!response.ok) throw new ServerRefusal(response.status, []);
  return response.blob();
}
