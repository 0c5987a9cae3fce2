/** The page: a bar, one sheet under it, and what the person must be told. */
import { useEffect } from 'react';
import { useBoard } from '../state/board.ts';
import { show } from '../state/keep.ts';
import { useReading } from '../state/manner.ts';
import { go, type Route, useRoute } from '../state/route.ts';
import { server } from '../state/server.ts';
import { words } from '../words/say.ts';
import { Bar } from './Bar.tsx';
import { GrowthSheet } from './GrowthSheet.tsx';
import { ProjectsSheet } from './ProjectsSheet.tsx';
import { SteelSheet } from './SteelSheet.tsx';
import { TankSheet } from './TankSheet.tsx';
import { Told } from './Told.tsx';

export function App() {
  const look = useReading((r) => r.look);
  const route = useRoute();
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
  useEffect(() => {
    void open(route);
  }, [route]);
  return (
    <>
      <Bar />
      <Told />
      <Sheet route={route} />
    </>
  );
}

function Sheet({ route }: { readonly route: Route }) {
  switch (route.sheet) {
    case 'tank':
      return <TankSheet />;
    case 'steel':
      return <SteelSheet />;
    case 'growth':
      return <GrowthSheet />;
    case 'projects':
      return <ProjectsSheet />;
  }
}

const LAST = 'hoopwright last project';

/** Puts the project of the address on the board; without one, the last that was open here, or the first of the list. */
async function open(route: Route): Promise<void> {
  if (route.sheet === 'projects') return;
  const { project } = useBoard.getState();
  if (route.project !== undefined && route.project === project?.id) return;
  try {
    const id = route.project ?? project?.id ?? localStorage.getItem(LAST) ?? undefined;
    const opened = id === undefined ? undefined : await server.open(id).catch(() => undefined);
    if (opened !== undefined && opened.project.deleted_ms === undefined) {
      localStorage.setItem(LAST, opened.project.id);
      show(opened);
      if (route.project === undefined) go({ ...route, project: opened.project.id }, 'replace');
      return;
    }
    if (route.project !== undefined) {
      useBoard.setState({ told: words('notFound') });
      go({ sheet: 'projects' }, 'replace');
      return;
    }
    const [first] = await server.projects('kept');
    if (first === undefined) go({ sheet: 'projects' }, 'replace');
    else go({ sheet: route.sheet, project: first.id }, 'replace');
  } catch {
    useBoard.setState({ told: words('unreachable') });
  }
}
