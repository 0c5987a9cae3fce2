import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { openPool } from './pool.ts';
import { ask, jsonOf, scene } from './visitor.ts';

const pool = openPool(new URL('../worker/forecast.ts', import.meta.url), 1);
afterAll(() => pool.close());

const file = readFileSync(new URL('../../examples/minimal.json', import.meta.url), 'utf8');

describe('the pool', () => {
  it('works a forecast out in a thread of its own', async () => {
    const answer = await pool.run('left', { kind: 'forecast', file });
    expect(answer).toMatchObject({ kind: 'forecast', forecast: { hoopwrightForecast: 1 } });
  });

  it('gives the issues of a tank file that cannot be used', async () => {
    const answer = await pool.run('left', { kind: 'forecast', file: '{' });
    expect(answer).toMatchObject({ kind: 'refused', issues: [{ path: expect.stringMatching(/^line 1/) }] });
  });

  it('finishes only the newest request of a window, and every window its own', async () => {
    const answers = await Promise.all([
      pool.run('left', { kind: 'forecast', file }),
      pool.run('left', { kind: 'forecast', file }),
      pool.run('right', { kind: 'forecast', file }),
      pool.run('left', { kind: 'forecast', file: '{' }),
    ]);
    expect(answers.map(({ kind }) => kind)).toEqual(['overtaken', 'overtaken', 'forecast', 'refused']);
  });

  it('answers the page', async () => {
    const here = scene({ pool });
    const done = await ask(here, '/api/forecast', { body: { window: 'left', file } });
    expect([done.status, await jsonOf(done)]).toMatchObject([200, { kind: 'forecast' }]);
    const wrong = await ask(here, '/api/forecast', { body: { window: 'left', file: {} } });
    expect(wrong.status).toBe(422);
    const [older, newer] = await Promise.all([
      ask(here, '/api/forecast', { body: { window: 'left', file } }),
      ask(here, '/api/forecast', { body: { window: 'left', file } }),
    ]);
    expect([older.status, newer.status]).toEqual([409, 200]);
  });
});
