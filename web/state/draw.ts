/** From a change of the draft to the drawing: rough at once, exact after a pause; the newest change wins. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { Cursor, Fineness } from '../work/ask.ts';
import { useBoard } from './board.ts';
import type { FileDraft } from './file/edit.ts';
import { rangeFor, steelAtHand, steelFor } from './server/steel.ts';
import { ask, stanceAt } from './server/threads.ts';

/** Time without a change after which the exact forecast is made, ms. */
const PAUSE = 160;

let pause: ReturnType<typeof setTimeout> | undefined;

/** Draws a new draft. `pauseFor` 0: nobody is typing, the exact answer may follow at once. */
export async function drawDraft(draft: FileDraft, pauseFor = PAUSE): Promise<void> {
  const number = useBoard.getState().number + 1;
  useBoard.setState({ draft, number });
  clearTimeout(pause);
  await drawAs('rough', number);
  if (useBoard.getState().number !== number) return;
  pause = setTimeout(() => void drawAs('exact', number), pauseFor);
}

async function drawAs(fineness: Fineness, number: number): Promise<void> {
  const { draft, cursor } = useBoard.getState();
  const steel = await steelOf(fineness, draft);
  if (useBoard.getState().number !== number) return;
  const reply = await ask({ file: draft, fineness, cursor, ...(steel === undefined ? {} : { steel }) });
  if (reply === undefined || useBoard.getState().number !== number) return;
  if (reply.kind === 'refused') {
    useBoard.setState({ issues: reply.issues });
    return;
  }
  const moved = useBoard.getState().cursor !== cursor;
  useBoard.setState({
    issues: [],
    drawn: reply,
    drawnFor: number,
    ...(moved ? {} : { stance: reply.stance }),
  });
  if (moved) await moveHand(useBoard.getState().cursor);
  if (fineness === 'exact') await rangeOf(draft);
}

/** A first pass takes the steel that is at hand; an exact answer waits for that of the draft itself. */
function steelOf(fineness: Fineness, draft: FileDraft): Promise<SteelDraw | undefined> {
  const { project } = useBoard.getState();
  const atHand = steelAtHand(draft);
  if (project === undefined || (fineness === 'rough' && atHand !== undefined)) return Promise.resolve(atHand);
  return steelFor(project.id, draft);
}

async function rangeOf(draft: FileDraft): Promise<void> {
  const { project } = useBoard.getState();
  if (project !== undefined) await rangeFor(project.id, draft);
}

export async function moveHand(cursor: Cursor): Promise<void> {
  useBoard.setState({ cursor });
  const { drawn } = useBoard.getState();
  if (drawn === undefined) return;
  const stance = await stanceAt(drawn.fineness, cursor);
  if (useBoard.getState().cursor === cursor && useBoard.getState().drawn === drawn)
    useBoard.setState({ stance });
}
