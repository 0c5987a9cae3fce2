/** Hears what other windows change, and brings this one up to date or tells its person. */
import type { Change } from '@hoopwright/wire/project';
import type { QueryClient } from '@tanstack/react-query';
import { words } from '../../words/say.ts';
import { useBoard } from '../board.ts';
import { show } from './keep.ts';
import { server, WINDOW } from './server.ts';

export function hearChanges(queries: QueryClient): () => void {
  const stream = new EventSource('/api/changes');
  stream.addEventListener('change', ({ data }: MessageEvent<string>) => {
    const change: Change = JSON.parse(data);
    void queries.invalidateQueries();
    void heard(change);
  });
  stream.addEventListener('reset', () => void queries.invalidateQueries());
  return () => stream.close();
}

async function heard({ project: id, current, by, kind }: Change): Promise<void> {
  const { project, version, saving } = useBoard.getState();
  if (project?.id !== id || by === WINDOW) return;
  if (kind === 'deleted') {
    useBoard.setState({ told: words('deletedElsewhere') });
    return;
  }
  const opened = await server.open(id);
  if (kind === 'renamed') useBoard.setState({ project: opened.project });
  if (current === version || opened.version.number === useBoard.getState().version) return;
  if (saving === 'saved') show(opened, words('changedElsewhere', { number: opened.version.number }));
  else useBoard.setState({ newer: opened });
}
