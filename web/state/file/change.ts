/** What the hand may change on the board. */
import { words } from '../../words/say.ts';
import { settledSteel } from './assumed.ts';
import { baseFor } from './base.ts';
import { useBoard } from '../board.ts';
import { drawDraft } from '../draw.ts';
import { type FileDraft, redimensioned, valueAt, without } from './edit.ts';
import { saveSoon } from '../server/keep.ts';

/** A figure changed where it stands; `value` in the unit of its key. */
export function changeFigure(path: string, value: number): void {
  const base = baseFor(path, useBoard.getState().draft);
  const changed = redimensioned(base, path, value);
  changeDraft(changed);
  if (valueAt(base, MEASURED) !== undefined && valueAt(changed, MEASURED) === undefined)
    useBoard.setState({ told: words('measuredOut') });
}

const MEASURED = 'steel.wallMeasured_mm';

export function changeDraft(changed: FileDraft): void {
  const draft = settledSteel(changed);
  useBoard.setState({ saving: 'unsaved', told: undefined });
  void drawDraft(draft);
  saveSoon();
}

/** The draft that stands, changed. */
export const changeWith = (make: (draft: FileDraft) => FileDraft): void =>
  changeDraft(make(useBoard.getState().draft));

/** A field's text cannot be read: the sentence stands beside it and the last good forecast is out of date. */
export function reportFault(path: string, sentence: string | undefined): void {
  const { [path]: before, ...others } = useBoard.getState().faults;
  if (before === sentence) return;
  useBoard.setState({ faults: sentence === undefined ? others : { ...others, [path]: sentence } });
}

/** Takes a number out of the file, where it need not be stated. */
export function removeFigure(path: string): void {
  changeDraft(without(useBoard.getState().draft, path));
}
