/** The steel of the tank on the board, where its file leaves the steel to the evidence: asked of the server, and kept. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import { create } from 'zustand';
import { type FileDraft, valueAt } from '../file/edit.ts';
import { type RangeAnswer, server, ServerRefusal } from './server.ts';

export interface SteelState {
  /** What the draft of this key got. */
  readonly key: string;
  readonly answer: SteelAnswer | undefined;
  readonly middle: SteelDraw | undefined;
  /** The same carried through to the stretch, and the text of the file it belongs to. */
  readonly range: SteelAnswer | undefined;
  readonly rangeOf: string;
  readonly working: boolean;
}

const NOTHING: SteelState = {
  key: '',
  answer: undefined,
  middle: undefined,
  range: undefined,
  rangeOf: '',
  working: false,
};

export const useSteel = create<SteelState>(() => NOTHING);

export const forgetSteel = (): void => useSteel.setState(NOTHING);

/** True where a range can be had: something was measured or certified. */
export const hasEvidence = (draft: FileDraft): boolean =>
  ['certificate', 'coupons', 'testTanks'].some((name) => {
    const piece = valueAt(draft, `steel.${name}`);
    return Array.isArray(piece) ? piece.length > 0 : piece !== undefined;
  });

/** True where the forecast is made of the steel in the middle of the range. */
export const leavesSteel = (draft: FileDraft): boolean =>
  valueAt(draft, 'steel.flow') === undefined && hasEvidence(draft);

/** What the steel depends on. */
const keyOf = (project: string, draft: FileDraft): string =>
  JSON.stringify([project, draft['steel'], draft['barrel'], draft['water'], attachments]);

/** Counts changes of the coupons of the project. */
let attachments = 0;
export const couponsChanged = (): void => void attachments++;

/** The steel for a draft; undefined where the file states its own, and where the server cannot say. */
export async function steelFor(project: string, draft: FileDraft): Promise<SteelDraw | undefined> {
  if (!hasEvidence(draft)) {
    if (useSteel.getState().key !== '') forgetSteel();
    return undefined;
  }
  const key = keyOf(project, draft);
  if (useSteel.getState().key !== key) {
    const answer = await asked((signal) => server.range(project, draft, signal, 'steel'));
    if (answer === undefined) return undefined;
    useSteel.setState({ key, answer: answer.steel ?? undefined, middle: answer.middle });
  }
  return leavesSteel(draft) ? useSteel.getState().middle : undefined;
}

/** A steel at once, if only that of the draft before: good enough for a first pass. */
export const steelAtHand = (draft: FileDraft): SteelDraw | undefined =>
  leavesSteel(draft) ? useSteel.getState().middle : undefined;

/** The range of the stretch, some seconds of work on the server. */
export async function rangeFor(project: string, draft: FileDraft): Promise<void> {
  const text = JSON.stringify(draft);
  if (!hasEvidence(draft) || useSteel.getState().rangeOf === text + attachments) return;
  useSteel.setState({ working: true });
  const answer = await asked((signal) => server.range(project, draft, signal));
  if (answer !== undefined)
    useSteel.setState({
      range: answer.steel ?? undefined,
      rangeOf: text + attachments,
      working: false,
      ...(answer.steel === null ? {} : { answer: answer.steel, middle: answer.middle }),
    });
}

let newest = new AbortController();

/** Undefined where a newer request took its place or the file was refused: the board says so itself. */
async function asked(ask: (signal: AbortSignal) => Promise<RangeAnswer>): Promise<RangeAnswer | undefined> {
  newest.abort();
  const mine = new AbortController();
  newest = mine;
  try {
    return await ask(mine.signal);
  } catch (error) {
    if (mine.signal.aborted) return undefined;
    useSteel.setState({ working: false });
    if (error instanceof ServerRefusal && (error.status === 409 || error.status === 422)) return undefined;
    throw error;
  }
}

/** The range, if it belongs to this draft. */
export const rangeIsOf = (draft: FileDraft): boolean =>
  useSteel.getState().rangeOf === JSON.stringify(draft) + attachments;
