/** Talking to the server: JSON both ways; what it refuses comes back as issues. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import type { Issue } from '@hoopwright/wire/issue';
import type { FrozenPlan, Outdated, PlanLine } from '@hoopwright/wire/plan';
import type { Attachment, Difference, Opened, Project, Version, VersionLine } from '@hoopwright/wire/project';

/** The server's no, with its reasons; `newer` where another window was faster. */
export class ServerRefusal extends Error {
  readonly status: number;
  readonly issues: readonly Issue[];
  readonly newer: Opened | undefined;
  constructor(status: number, issues: readonly Issue[], newer?: Opened) {
    super(issues.map(({ path, expected, received }) => `${path}: ${expected}, ${received}`).join('; '));
    this.status = status;
    this.issues = issues;
    this.newer = newer;
  }
}

export interface RangeAnswer {
  readonly steel: SteelAnswer | null;
  readonly middle?: SteelDraw;
}

/** A frozen plan of the list, and why it is out of date. */
export interface PlanListed extends PlanLine {
  readonly outdated?: Outdated;
}

/** Names this window in the project's versions, so that it knows its own saves. */
export const WINDOW = `window ${Math.floor(Math.random() * 0x10000)
  .toString(16)
  .padStart(4, '0')}`;

interface Refused {
  readonly issues?: readonly Issue[];
  readonly newer?: Opened;
}

/** What is sent while the window closes still arrives, if it is short: browsers allow 64 kB. */
const bodyOf = (text: string): RequestInit => ({
  headers: { 'Content-Type': 'application/json' },
  body: text,
  keepalive: text.length < 30_000,
});

/** The server is of the same program as the page: the shape of its answers is not checked again. */
export async function call<T>(
  path: string,
  method = 'GET',
  body?: unknown,
  signal?: AbortSignal,
): Promise<T> {
  const response = await fetch(`/api${path}`, {
    method,
    ...(signal === undefined ? {} : { signal }),
    ...(body === undefined ? {} : bodyOf(JSON.stringify(body))),
  });
  const text = await response.text();
  if (response.ok) return JSON.parse(text);
  const { issues = [], newer }: Refused = text === '' ? {} : JSON.parse(text);
  throw new ServerRefusal(response.status, issues, newer);
}

const by = WINDOW;

export const server = {
  projects: (which: 'kept' | 'deleted') =>
    call<{ projects: Project[] }>(`/projects${which === 'deleted' ? '?which=deleted' : ''}`).then(
      (a) => a.projects,
    ),
  open: (id: string) => call<Opened>(`/projects/${id}`),
  create: (name: string, file: string) => call<Opened>('/projects', 'POST', { name, file, by }),
  rename: (id: string, name: string) =>
    call<{ project: Project }>(`/projects/${id}`, 'PATCH', { name, by }).then((a) => a.project),
  copy: (id: string, name: string) => call<Opened>(`/projects/${id}/copy`, 'POST', { name, by }),
  remove: (id: string) => call<{ project: Project }>(`/projects/${id}`, 'DELETE').then((a) => a.project),
  restore: (id: string) =>
    call<{ project: Project }>(`/projects/${id}/restore`, 'POST', {}).then((a) => a.project),
  importProject: (file: unknown) => call<Opened>('/projects/import', 'POST', file),
  save: (id: string, basedOn: number, file: string) =>
    call<Opened>(`/projects/${id}/versions`, 'POST', { basedOn, file, by }),
  undo: (id: string, from: number) => call<Opened>(`/projects/${id}/undo`, 'POST', { from, by }),
  redo: (id: string, from: number) => call<Opened>(`/projects/${id}/redo`, 'POST', { from, by }),
  versions: (id: string) =>
    call<{ versions: VersionLine[] }>(`/projects/${id}/versions`).then((a) => a.versions),
  version: (id: string, number: number) => call<{ version: Version }>(`/projects/${id}/versions/${number}`),
  difference: (id: string, from: number, to: number) =>
    call<{ differences: Difference[] }>(`/projects/${id}/difference?from=${from}&to=${to}`).then(
      (a) => a.differences,
    ),
  attachments: (id: string, which: 'kept' | 'deleted' = 'kept') =>
    call<{ attachments: Attachment[] }>(
      `/projects/${id}/attachments${which === 'deleted' ? '?which=deleted' : ''}`,
    ).then((a) => a.attachments),
  attach: (id: string, name: string, base64: string) =>
    call<{ attachment: Attachment }>(`/projects/${id}/attachments`, 'POST', { name, base64, by }).then(
      (a) => a.attachment,
    ),
  detach: (id: string, attachment: string) =>
    call<{ attachment: Attachment }>(`/projects/${id}/attachments/${attachment}`, 'DELETE').then(
      (a) => a.attachment,
    ),
  reattach: (id: string, attachment: string) =>
    call<{ attachment: Attachment }>(`/projects/${id}/attachments/${attachment}/restore`, 'POST', {}).then(
      (a) => a.attachment,
    ),
  bytes: async (id: string, attachment: string): Promise<Uint8Array> => {
    const response = await fetch(`/api/projects/${id}/attachments/${attachment}`);
    if (!response.ok) throw new ServerRefusal(response.status, []);
    return new Uint8Array(await response.arrayBuffer());
  },
  /** What the tests say of the steel; with `only` 'steel' not carried through to the stretch. */
  range: (project: string, file: unknown, signal: AbortSignal, only?: 'steel') =>
    call<RangeAnswer>(
      `/range?project=${project}${only === undefined ? '' : `&only=${only}`}`,
      'POST',
      { window: WINDOW, file },
      signal,
    ),
  plans: (id: string) => call<{ plans: PlanListed[] }>(`/projects/${id}/plans`).then((a) => a.plans),
  frozen: (id: string, digest: string) =>
    call<{ plan: FrozenPlan }>(`/projects/${id}/plans/${digest}`).then((a) => a.plan),
  freeze: (id: string, version: number, seal: Pick<PlanLine, 'name' | 'revision' | 'date'>) =>
    call<{ line: PlanLine }>(`/projects/${id}/plans`, 'POST', { window: WINDOW, version, by, ...seal }).then(
      (a) => a.line,
    ),
  enter: (token: string) => call<{ who: string }>('/entrance', 'POST', { token }),
} as const;
