/** Which sheet of which project is open, kept in the address. */
import { create } from 'zustand';

export const SHEETS = ['tank', 'steel', 'growth', 'plan'] as const;
export type SheetName = (typeof SHEETS)[number] | 'projects';

export interface Route {
  readonly sheet: SheetName;
  readonly project?: string | undefined;
  /** Digest of the frozen plan that is looked at; absent: the draft. */
  readonly plan?: string | undefined;
}

export const useRoute = create<Route>(() => routeOf(window.location.pathname));

window.addEventListener('popstate', () => useRoute.setState(routeOf(window.location.pathname), true));

export function routeOf(path: string): Route {
  const [, p, project, sheet, plan] = path.split('/');
  if (p !== 'p' || project === undefined || project === '')
    return { sheet: p === 'projects' ? 'projects' : 'tank' };
  const found = SHEETS.find((one) => one === sheet) ?? 'tank';
  return found === 'plan' && plan !== undefined && plan !== ''
    ? { project, sheet: found, plan }
    : { project, sheet: found };
}

export function addressOf({ sheet, project, plan }: Route): string {
  if (sheet === 'projects' || project === undefined) return '/projects';
  return plan === undefined ? `/p/${project}/${sheet}` : `/p/${project}/${sheet}/${plan}`;
}

/** `replace`: the address was incomplete, so that going back must not lead to it. */
export function go(route: Route, how: 'push' | 'replace' = 'push'): void {
  const address = addressOf(route);
  if (how === 'push') window.history.pushState(undefined, '', address);
  else window.history.replaceState(undefined, '', address);
  useRoute.setState(route, true);
}
