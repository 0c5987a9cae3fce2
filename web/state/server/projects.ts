/** What can be done with whole projects. */
import type { Opened, Project } from '@hoopwright/wire/project';
import { changeDraft } from '../file/change.ts';
import { useBoard } from '../board.ts';
import { draftOf, textOf } from '../file/edit.ts';
import { save, show } from './keep.ts';
import { type FourNumbers, ownTank } from '../file/newTank.ts';
import { go } from '../route.ts';
import { server, ServerRefusal } from './server.ts';
import { issueSentence } from '../../words/issue.ts';
import { words } from '../../words/say.ts';

/** Opens a project on the board. What was not saved of the one before is saved first. */
export async function openProject(id: string): Promise<void> {
  await save();
  go({ sheet: 'tank', project: id });
}

export async function drawOwn(four: FourNumbers): Promise<string | undefined> {
  return taken(server.create(four.name, textOf(ownTank(four))));
}

export const copyProject = ({ id, name }: Project): Promise<string | undefined> =>
  taken(server.copy(id, words('copyName', { name })));

/** A tank file or a project file, as text. Gives a sentence where it is neither. */
export async function importText(name: string, text: string): Promise<string | undefined> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return words('importNoJson', { name });
  }
  if (isTankFile(value)) return taken(server.create(tankName(value, name), text));
  return taken(server.importProject(value));
}

const isTankFile = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && 'barrel' in value;

const tankName = (value: Readonly<Record<string, unknown>>, file: string): string =>
  (typeof value['name'] === 'string' ? value['name'] : file.replace(/\.json$/i, '')).slice(0, 120);

/** Opens what was made; gives a sentence where it was refused. */
async function taken(made: Promise<Opened>): Promise<string | undefined> {
  try {
    const opened = await made;
    await save();
    show(opened);
    go({ sheet: 'tank', project: opened.project.id });
    return undefined;
  } catch (error) {
    return noOf(error);
  }
}

/** The server's no, or its silence, as a sentence. */
export function noOf(error: unknown): string {
  const first = error instanceof ServerRefusal ? error.issues[0] : undefined;
  return first === undefined
    ? words('unreachable')
    : words('refusedAt', { path: first.path, why: issueSentence(first) });
}

/** An older version comes back onto the board, and is saved as the next one. */
export async function putBack(id: string, number: number): Promise<void> {
  const { version } = await server.version(id, number);
  if (useBoard.getState().project?.id === id) changeDraft(draftOf(version.file));
}
