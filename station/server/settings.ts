/** Where the server listens and where it keeps its data: from the environment, or as is usual on this system. */
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Issue } from '@hoopwright/wire/issue';

export interface Settings {
  readonly port: number;
  readonly dir: string;
}

/** Registered to nobody (IANA port numbers, from memory). */
export const USUAL_PORT = 8417;

export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly home: string;
}

const REAL = (): Surroundings => ({ env: process.env, platform: process.platform, home: homedir() });

export const settingsFrom = (
  { env, platform, home }: Surroundings = REAL(),
):
  | { readonly ok: true; readonly value: Settings }
  | { readonly ok: false; readonly issues: readonly Issue[] } => {
  const asked = env['PORT'] ?? '';
  const port = asked === '' ? USUAL_PORT : Number(asked);
  if (!/^\d*$/.test(asked) || port > 65_535) {
    const expected = 'a port from 1 to 65535, or 0 for any that is free';
    const suggestion = `PORT=${USUAL_PORT} npm start`;
    return { ok: false, issues: [{ path: 'PORT', expected, received: asked, suggestion }] };
  }
  const folder = env['HOOPWRIGHT_DATA'] ?? '';
  return {
    ok: true,
    value: { port, dir: folder === '' ? usualFolder({ env, platform, home }) : resolve(folder) },
  };
};

const usualFolder = ({ env, platform, home }: Surroundings): string => {
  if (platform === 'win32') return join(env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Hoopwright');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Hoopwright');
  return join(env['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'hoopwright');
};
