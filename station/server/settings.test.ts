import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Surroundings, settingsFrom } from './settings.ts';

const home = join('/', 'u', 'ann');
const from = (env: Surroundings['env'], platform: NodeJS.Platform = 'linux') =>
  settingsFrom({ env, platform, home });

describe('the settings', () => {
  it('come from PORT and HOOPWRIGHT_DATA', () => {
    const read = from({ PORT: '9000', HOOPWRIGHT_DATA: 'stick' });
    expect(read).toEqual({ ok: true, value: { port: 9000, dir: resolve('stick') } });
  });

  it.each([
    ['linux', {}, join(home, '.local', 'share', 'hoopwright')],
    ['linux', { XDG_DATA_HOME: join('/', 'd') }, join('/', 'd', 'hoopwright')],
    ['darwin', {}, join(home, 'Library', 'Application Support', 'Hoopwright')],
    ['win32', {}, join(home, 'AppData', 'Local', 'Hoopwright')],
  ] as const)('are the usual ones on %s where nothing is said (%j)', (platform, env, dir) => {
    expect(from(env, platform)).toEqual({ ok: true, value: { port: 8417, dir } });
    expect(from({ ...env, PORT: '', HOOPWRIGHT_DATA: '' }, platform)).toMatchObject({
      value: { port: 8417, dir },
    });
  });

  it.each(['http', '-1', '80.5', '65536', '8417 '])('refuse the port "%s" and say what to write', (PORT) => {
    expect(from({ PORT })).toMatchObject({ ok: false, issues: [{ path: 'PORT', received: PORT }] });
  });

  it('take port 0 for any that is free', () => {
    expect(from({ PORT: '0' })).toMatchObject({ value: { port: 0 } });
  });
});
