/** Keeping the draft: saved by itself after a pause, never over somebody else's version. */
import type { Opened } from '@hoopwright/wire/project';
import { words } from '../../words/say.ts';
import { endEdit } from '../file/base.ts';
import { forecastState, UNDER, useBoard } from '../board.ts';
import { draftOf, textOf } from '../file/edit.ts';
import { drawDraft } from '../draw.ts';
import { server, ServerRefusal } from './server.ts';

/** Time without a change after which the draft is saved, ms. */
const PAUSE = 700;

let pause: ReturnType<typeof setTimeout> | undefined;

export function saveSoon(): void {
  clearTimeout(pause);
  pause = setTimeout(() => void save(), PAUSE);
}

/** Puts a version on the board; the hand goes back to its usual place for another project. */
export function show({ project, version }: Opened, told?: string): void {
  endEdit();
  const { project: before } = useBoard.getState();
  useBoard.setState({
    project,
    version: version.number,
    saved: version.file,
    saving: 'saved',
    faults: {},
    newer: undefined,
    told,
    ...(before?.id === project.id
      ? {}
      : { drawn: undefined, stance: undefined, issues: [], drawnFor: -1, cursor: UNDER }),
  });
  void drawDraft(draftOf(version.file), 0);
}

/** Saves the draft if it is whole and differs from what was saved. */
export async function save(): Promise<void> {
  clearTimeout(pause);
  const board = useBoard.getState();
  const { project, draft, version, issues, saving } = board;
  if (project === undefined || saving === 'saving' || saving === 'saved' || board.newer !== undefined) return;
  if (issues.length > 0 || forecastState(board) === 'none') return;
  const text = textOf(draft);
  // A figure that was typed over and brought back makes no version, however the file was laid out when it came in.
  if (board.saved !== undefined && textOf(draftOf(board.saved)) === text) {
    useBoard.setState({ saving: 'saved' });
    return;
  }
  useBoard.setState({ saving: 'saving' });
  try {
    kept(await server.save(project.id, version, text), text);
  } catch (error) {
    failedToKeep(error);
  }
}

function kept({ project, version }: Opened, text: string): void {
  const still = textOf(useBoard.getState().draft) === text;
  useBoard.setState({
    project,
    version: version.number,
    saved: version.file,
    saving: still ? 'saved' : 'unsaved',
  });
  if (!still) saveSoon();
}

function failedToKeep(error: unknown): void {
  if (error instanceof ServerRefusal && error.newer !== undefined) {
    useBoard.setState({ saving: 'unsaved', newer: error.newer });
    return;
  }
  // An issue of the file is told by the board already.
  if (error instanceof ServerRefusal && error.status === 422) {
    useBoard.setState({ saving: 'unsaved' });
    return;
  }
  useBoard.setState({ saving: 'failed', told: words('saveFailed') });
  pause = setTimeout(retry, RETRY);
}

const RETRY = 3000;

function retry(): void {
  if (useBoard.getState().saving === 'failed') useBoard.setState({ saving: 'unsaved' });
  void save();
}

/** Back to the version this one was made from, or on to the one that was made from it. */
export async function step(way: 'undo' | 'redo'): Promise<void> {
  await save();
  const { project, version, saving, newer } = useBoard.getState();
  if (project === undefined || saving !== 'saved' || newer !== undefined) return;
  try {
    show(await server[way](project.id, version));
  } catch (error) {
    failedToKeep(error);
  }
}

/** Another window was faster: theirs is put on the board, or mine is saved on top of it as a new version. */
export async function settle(choice: 'theirs' | 'mine'): Promise<void> {
  const { newer, draft } = useBoard.getState();
  if (newer === undefined) return;
  if (choice === 'theirs') {
    show(newer);
    return;
  }
  useBoard.setState({
    newer: undefined,
    version: newer.project.current,
    project: newer.project,
    saving: 'unsaved',
    draft,
  });
  await save();
}
