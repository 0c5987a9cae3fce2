/** What the crew's screens ask of the server. */
import type { Begin, DayLine, DayLink, Order, Snapshot } from '@hoopwright/wire/day';
import type { Issue } from '@hoopwright/wire/issue';
import type { FrozenPlan, PlanLine } from '@hoopwright/wire/plan';
import { call, ServerRefusal } from '../../state/server/server.ts';

export interface PhotoKept {
  readonly sha256: string;
  readonly seq: number;
}

/** ms after which a question to the laptop is given up and asked again. */
const PATIENCE = 4000;
const patient = (): AbortSignal => AbortSignal.timeout(PATIENCE);

const at = (record: string): string => `/days/${encodeURIComponent(record)}`;

export const dayServer = {
  days: () => call<readonly DayLine[]>('/days'),
  begin: (begin: Begin) => call<DayLine>('/days', 'POST', begin),
  plans: (project: string) =>
    call<{ plans: readonly (PlanLine & { readonly outdated?: string })[] }>(
      `/projects/${project}/plans`,
    ).then(({ plans }) => plans),
  plan: (project: string, digest: string) =>
    call<{ plan: FrozenPlan }>(`/projects/${project}/plans/${digest}`).then(({ plan }) => plan),
  snapshot: (record: string) => call<Snapshot>(at(record), 'GET', undefined, patient()),
  asItStood: (record: string, ms: number, signal: AbortSignal) =>
    call<Snapshot>(`${at(record)}/at?ms=${Math.round(ms)}`, 'GET', undefined, signal),
  order: (record: string, order: Order) =>
    call<{ readonly seq: number }>(`${at(record)}/orders`, 'POST', order, patient()),
  links: (record: string) => call<readonly DayLink[]>(`${at(record)}/links`),
  makeLink: (record: string, role: DayLink['role'], name: string) =>
    call<{ readonly link: string; readonly links: readonly string[] }>(`${at(record)}/links`, 'POST', {
      role,
      name,
    }),
  revoke: (record: string, id: string) => call<unknown>(`${at(record)}/links/${id}/revoke`, 'POST', {}),
  streamAddress: (record: string, since: number): string => `/api${at(record)}/stream?since=${since}`,
  exportAddress: (record: string, as: 'csv' | 'ndjson' | 'record', decimal: string): string =>
    `/api${at(record)}/export?as=${as}&decimal=${encodeURIComponent(decimal)}`,
  photoAddress: (record: string, sha256: string): string => `/api${at(record)}/photos/${sha256}`,
  /** Text of the tank file of the plan; undefined where the server has none. */
  tank: async (record: string): Promise<string | undefined> => {
    const response = await fetch(`/api${at(record)}/tank`);
    return response.ok ? response.text() : undefined;
  },
  /** Byte for byte as the camera made it; tied to the step that runs, and to a place. */
  photo: async (record: string, file: Blob, given: { by: string; place?: string }): Promise<PhotoKept> => {
    const type = file.type === '' ? 'application/octet-stream' : file.type;
    const response = await fetch(`/api${at(record)}/photos?${new URLSearchParams(given).toString()}`, {
      method: 'POST',
      headers: { 'Content-Type': type },
      body: file,
    });
    if (!response.ok) throw new ServerRefusal(response.status, await issuesOf(response));
    const kept: PhotoKept = await response.json();
    return kept;
  },
} as const;

async function issuesOf(response: Response): Promise<readonly Issue[]> {
  try {
    const { issues = [] }: { readonly issues?: readonly Issue[] } = await response.json();
    return issues;
  } catch {
    return [];
  }
}
