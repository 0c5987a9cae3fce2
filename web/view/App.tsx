/** The page: a bar, one sheet under it, and what the person must be told. */
import { lazy, Suspense, useEffect } from 'react';
import { useBoard } from '../state/board.ts';
import { show } from '../state/server/keep.ts';
import { useReading } from '../state/manner.ts';
import { go, type Route, useRoute } from '../state/route.ts';
import type { Opened } from '@hoopwright/wire/project';
import { server, ServerRefusal } from '../state/server/server.ts';
import { words } from '../words/say.ts';
import { Bar } from './Bar.tsx';
import { TankSheet } from './TankSheet.tsx';
import { Told } from './said/Told.tsx';

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
      <Suspense fallback={<main className="sheet" />}>
        <Sheet route={route} />
      </Suspense>
    </>
  );
}

// The tank is what most people open first; the other sheets are fetched when they are asked for.
const GrowthSheet = lazy(() => import('./GrowthSheet.tsx').then((m) => ({ default: m.GrowthSheet })));
const PlanSheet = lazy(() => import('./PlanSheet.tsx').then((m) => ({ default: m.PlanSheet })));
const SteelSheet = lazy(() => import('./SteelSheet.tsx').then((m) => ({ default: m.SteelSheet })));
const ProjectsSheet = lazy(() => import('./ProjectsSheet.tsx').then((m) => ({ default: m.ProjectsSheet })));

function Sheet({ route }: { readonly route: Route }) {
  switch (route.sheet) {
    case 'tank':
      return <TankSheet />;
    case 'steel':
      return <SteelSheet />;
    case 'growth':
      return <GrowthSheet />;
    case 'plan':
      return <PlanSheet frozen={route.plan} />;
    case 'projects':
      return <ProjectsSheet />;
  }
}

const LAST = 'hoopwright last project';

/** Puts the project of the address on the board; without one, the last that was open here, or the first of the list. */
async function open(route: Route): Promise<void> {
  const { project } = useBoard.getState();
  if (project !== undefined && (route.project ?? project.id) === project.id) return;
  try {
    const opened = await found(route.project);
    if (opened !== undefined) {
      localStorage.setItem(LAST, opened.project.id);
      show(opened);
      if (route.sheet !== 'projects' && route.project === undefined)
        go({ ...route, project: opened.project.id }, 'replace');
      return;
    }
    if (route.project !== undefined) useBoard.setState({ told: words('notFound') });
    if (route.sheet !== 'projects') go({ sheet: 'projects' }, 'replace');
  } catch {
    useBoard.setState({ told: words('unreachable') });
  }
}

/** The project asked for, or the one to begin with; undefined where there is none. */
async function found(asked: string | undefined): Promise<Opened | undefined> {
  if (asked !== undefined) return standing(asked);
  const last = localStorage.getItem(LAST);
  const there = last === null ? undefined : await standing(last);
  if (there !== undefined) return there;
  const [first] = await server.projects('kept');
  return first === undefined ? undefined : standing(first.id);
}

async function standing(id: string): Promise<Opened | undefined> {
  try {
    const opened = await server.open(id);
    return opened.project.deleted_ms === undefined ? opened : undefined;
  } catch (error) {
    if (error instanceof ServerRefusal && error.status === 404) return undefined;
    throw error;
  }
}
