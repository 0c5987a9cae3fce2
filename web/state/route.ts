/** Which sheet of which project is open, kept in the address. */
import { create } from 'zustand';

export const SHEETS = ['tank', 'steel', 'growth'] as const;
export type SheetName = (typeof SHEETS)[number] | 'projects';

export interface Route {
  readonly sheet: SheetName;
  readonly project?: string | undefined;
}

export const useRoute = create<Route>(() => routeOf(window.location.pathname));

window.addEventListener('popstate', () => useRoute.setState(routeOf(window.location.pathname), true));

export function routeOf(path: string): Route {
  const [, p, project, sheet] = path.split('/');
  if (p !== 'p' || project === undefined || project === '')
    return { sheet: p === 'projects' ? 'projects' : 'tank' };
  return { project, sheet: SHEETS.find((one) => one === sheet) ?? 'tank' };
}

export const addressOf = ({ sheet, project }: Route): string =>
  sheet === 'projects' || project === undefined ? '/projects' : `/p/${project}/${sheet}`;

/** `replace`: the address was incomplete, so that going back must not lead to it. */
export function go(route: Route, how: 'push' | 'replace' = 'push'): void {
  const address = addressOf(route);
  if (how === 'push') window.history.pushState(undefined, '', address);
  else window.history.replaceState(undefined, '', address);
  useRoute.setState(route, true);
}
