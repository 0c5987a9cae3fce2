import { afterEach, describe, expect, test } from 'vitest';
import type { DayLink, DayRole, Snapshot } from '@hoopwright/wire/day';
import { ask, askFromNetwork, jsonOf } from '../server/visitor.ts';
import { begun, type DayScene, dayScene, ordered, shown, waited } from './dayScene.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

async function linkFor(
  day: DayScene,
  record: string,
  role: DayRole | 'source',
  name: string,
): Promise<string> {
  const answer = await ask(day.here, `/api/days/${record}/links`, { body: { role, name } });
  expect(answer.status).toBe(201);
  const { link } = await jsonOf<{ link: string }>(answer);
  return link.split('#').at(-1) ?? '';
}

/** The cookie that a link becomes. */
async function cookieOf(day: DayScene, secret: string): Promise<string> {
  const answer = await askFromNetwork(day.here, '/api/entrance', { body: { token: secret } });
  return answer.headers.get('set-cookie')?.split(';')[0] ?? '';
}

const entries = (day: DayScene, record: string): number => day.store.records.find(record)?.entries ?? 0;

const row = { order: 'row', by: 'C', how: 'by hand', values: { 'gauge A': 1.5 } };

const sent = async (day: DayScene, record: string, cookie: string, body: object): Promise<number> =>
  (await waited(day, askFromNetwork(day.here, `/api/days/${record}/orders`, { cookie, body }))).status;

describe('from the network', () => {
  test('nothing is read without a token, not even which days there are', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const reads = ['', '/at?ms=0', '/tank', '/stream', '/export?as=csv', '/links', '/photos/00'];
    for (const path of reads)
      expect((await askFromNetwork(day.here, `/api/days/${record}${path}`)).status, path).toBe(401);
    expect((await askFromNetwork(day.here, '/api/days')).status).toBe(401);
  });

  test('a viewer reads everything and writes nothing', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const cookie = await cookieOf(day, await linkFor(day, record, 'viewer', 'V. Invented'));
    const before = entries(day, record);
    const snapshot = await jsonOf<Snapshot>(
      await askFromNetwork(day.here, `/api/days/${record}`, { cookie }),
    );
    expect(snapshot).toMatchObject({ role: 'viewer', name: 'V. Invented', own: false });
    expect(await sent(day, record, cookie, row)).toBe(403);
    const photo = { cookie, method: 'POST', body: 'xx', headers: { 'content-type': 'image/jpeg' } };
    expect((await askFromNetwork(day.here, `/api/days/${record}/photos`, photo)).status).toBe(403);
    for (const path of ['/links', '/faults']) {
      const answer = await askFromNetwork(day.here, `/api/days/${record}${path}`, { cookie, body: {} });
      expect(answer.status, path).toBe(403);
    }
    expect((await askFromNetwork(day.here, '/api/days', { cookie, body: {} })).status).toBe(403);
    await day.time.pass(100);
    expect(entries(day, record)).toBe(before);
  });

  test('each role gives its own orders, and none edits a project', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const note = await cookieOf(day, await linkFor(day, record, 'note taker', 'N'));
    const pump = await cookieOf(day, await linkFor(day, record, 'pump', 'P'));
    const director = await cookieOf(day, await linkFor(day, record, 'director', 'D'));
    expect(await sent(day, record, note, row)).toBe(200);
    expect(await sent(day, record, pump, row)).toBe(200);
    for (const cookie of [note, pump, director]) {
      expect(await sent(day, record, cookie, { order: 'vent shut', by: 'D' })).toBe(403);
      const made = await askFromNetwork(day.here, '/api/projects', {
        cookie,
        body: { name: 'x', file: '{}' },
      });
      expect(made.status).toBe(403);
    }
  });

  test('a link writes into the day that it was made for, and looks on at every other one', async () => {
    const day = (open = dayScene());
    const first = await begun(day);
    const cookie = await cookieOf(day, await linkFor(day, first, 'note taker', 'N'));
    await ordered(day, first, { order: 'end', end: 'broken off', why: 'rain' });
    const second = await begun(day);
    expect(await sent(day, second, cookie, row)).toBe(403);
    const photo = { cookie, method: 'POST', body: 'xx', headers: { 'content-type': 'image/jpeg' } };
    expect((await askFromNetwork(day.here, `/api/days/${second}/photos`, photo)).status).toBe(403);
    const seen = await jsonOf<Snapshot>(await askFromNetwork(day.here, `/api/days/${second}`, { cookie }));
    expect(seen.role).toBe('viewer');
    expect(await jsonOf<DayLink[]>(await ask(day.here, `/api/days/${second}/links`))).toEqual([]);
    const [{ id }] = await jsonOf<DayLink[]>(await ask(day.here, `/api/days/${first}/links`));
    expect((await ask(day.here, `/api/days/${second}/links/${id}/revoke`, { body: {} })).status).toBe(404);
    const over = { order: 'hand over', by: 'A. Invented', to: 'N' } as const;
    expect((await ordered(day, second, over)).status).toBe(409);
  });

  test('a link that is revoked is worth nothing from then on', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const cookie = await cookieOf(day, await linkFor(day, record, 'note taker', 'N'));
    const [{ id }] = await jsonOf<DayLink[]>(await ask(day.here, `/api/days/${record}/links`));
    expect((await ask(day.here, `/api/days/${record}/links/${id}/revoke`, { body: {} })).status).toBe(200);
    expect(await sent(day, record, cookie, row)).toBe(401);
  });

  test('a page elsewhere, and a name that was pointed here, are refused', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const headers = { origin: 'http://elsewhere.example' };
    expect((await ask(day.here, `/api/days/${record}/orders`, { body: row, headers })).status).toBe(403);
    const host = { host: 'elsewhere.example:8417' };
    expect((await ask(day.here, `/api/days/${record}`, { headers: host })).status).toBe(421);
    const plain = { 'content-type': 'text/plain' };
    expect((await ask(day.here, `/api/days/${record}/orders`, { body: row, headers: plain })).status).toBe(
      415,
    );
  });

  test('a source sends its readings under its own token, sees nothing, and sends for no other', async () => {
    const day = (open = dayScene());
    const sources = ['box', 'other'].map((name) => ({ kind: 'http', name, names: { p: 'gauge A' } }));
    const record = await begun(day, { sources });
    const secret = await linkFor(day, record, 'source', 'box');
    const headers = { authorization: `Bearer ${secret}`, 'content-type': 'application/x-ndjson' };
    const post = (name: string, body: string) =>
      askFromNetwork(day.here, `/api/days/${record}/readings/${name}`, { method: 'POST', body, headers });
    expect(await jsonOf(await post('box', '{"p":1.25}\n{"p":"x"}\n{"p":1.5}\n'))).toMatchObject({
      taken: 2,
      bad: 1,
    });
    expect((await post('other', '{"p":9}\n')).status).toBe(403);
    expect((await askFromNetwork(day.here, `/api/days/${record}`, { headers })).status).toBe(403);
    await day.time.pass(100);
    const { state } = await shown(day, record);
    expect(state.channels.find(({ channel }) => channel.name === 'gauge A')?.last).toMatchObject({
      value: 1.5,
      how: 'by wire',
    });
  });
});

describe('the director', () => {
  test('is one at a time: handed over on purpose, and taken back at the laptop', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const director = await cookieOf(day, await linkFor(day, record, 'director', 'D. Invented'));
    expect((await ordered(day, record, { order: 'hand over', to: 'Nobody' })).status).toBe(409);
    expect((await ordered(day, record, { order: 'hand over', to: 'D. Invented' })).status).toBe(200);
    expect((await shown(day, record)).role).toBe('note taker');
    expect((await ordered(day, record, { order: 'vent shut' })).status).toBe(403);
    expect(await sent(day, record, director, { order: 'vent shut', by: 'D. Invented' })).toBe(200);
    expect((await ordered(day, record, { order: 'hand over', to: 'A. Invented' })).status).toBe(200);
    expect((await shown(day, record)).role).toBe('director');
    expect(await sent(day, record, director, { order: 'go on', by: 'D. Invented', from: '1' })).toBe(403);
    expect((await ordered(day, record, { order: 'go on', from: '1' })).status).toBe(200);
  });
});
