import { describe, expect, it } from 'vitest';
import { type Ask, type Scene, ask, scene } from './visitor.ts';

/** Reads a stream of events block by block. */
const follow = async (here: Scene, path = '/api/changes', given: Ask = {}) => {
  const answer = await ask(here, path, given);
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  const next = async (): Promise<Record<string, string> | undefined> => {
    while (!text.includes('\n\n')) {
      const piece = await reader?.read();
      if (!piece || piece.done) return undefined;
      text += piece.value;
    }
    const [block, ...rest] = text.split('\n\n');
    text = rest.join('\n\n');
    return Object.fromEntries(block.split('\n').map((line) => line.split(/: ?(.*)/s).slice(0, 2)));
  };
  return { answer, next, stop: async () => reader?.cancel() };
};

const create = (here: Scene) => here.store.projects.create({ name: 'Dunlin', file: '{}' }).project.id;
const save = (here: Scene, id: string, basedOn: number) =>
  here.store.projects.save(id, { basedOn, file: `{"wall_mm":${basedOn}}`, by: 'other window' });

describe('the stream of changes', () => {
  it('tells a window what another one changed', async () => {
    const here = scene();
    const id = create(here);
    const stream = await follow(here);
    expect(stream.answer.headers.get('content-type')).toMatch(/^text\/event-stream/);
    expect(await stream.next()).toEqual({ event: 'ready', id: '1', data: '1' });
    save(here, id, 1);
    const told = await stream.next();
    expect([told?.event, told?.id]).toEqual(['change', '2']);
    expect(JSON.parse(told?.data ?? '')).toMatchObject({
      project: id,
      kind: 'saved',
      current: 2,
      by: 'other window',
    });
    await stream.stop();
  });

  it('resumes after the last change that the window saw, without a gap and without a repeat', async () => {
    const here = scene();
    const id = create(here);
    for (const basedOn of [1, 2, 3]) save(here, id, basedOn);
    const stream = await follow(here, '/api/changes', { headers: { 'last-event-id': '2' } });
    expect(await stream.next()).toMatchObject({ event: 'ready', id: '2' });
    expect(await stream.next()).toMatchObject({ id: '3' });
    save(here, id, 4);
    expect(await stream.next()).toMatchObject({ id: '4' });
    expect(await stream.next()).toMatchObject({ id: '5' });
    await stream.stop();
    const asked = await follow(here, '/api/changes?since=4');
    expect([await asked.next(), await asked.next()]).toMatchObject([
      { event: 'ready', id: '4' },
      { id: '5' },
    ]);
    await asked.stop();
  });

  it('says that everything must be asked anew when the window knows more than the base', async () => {
    const here = scene();
    create(here);
    const stream = await follow(here, '/api/changes', { headers: { 'last-event-id': '9' } });
    expect(await stream.next()).toEqual({ event: 'reset', id: '1', data: '1' });
    await stream.stop();
  });

  it('begins with what comes where the last id is nonsense', async () => {
    const here = scene();
    create(here);
    const stream = await follow(here, '/api/changes', { headers: { 'last-event-id': '-1 OR 1' } });
    expect(await stream.next()).toMatchObject({ event: 'ready', id: '1' });
    await stream.stop();
  });

  it('beats while nothing happens', async () => {
    const here = scene();
    const stream = await follow(here);
    await stream.next();
    await new Promise(setImmediate);
    here.timers[0].work();
    expect(await stream.next()).toEqual({ '': '' });
    await stream.stop();
  });

  it('ends when the server closes', async () => {
    const here = scene();
    const stream = await follow(here);
    await stream.next();
    here.closing.abort();
    expect(await stream.next()).toBeUndefined();
  });

  it('ends for a link that is revoked, before the next change is told', async () => {
    const here = scene();
    const id = create(here);
    const { token, secret } = here.store.tokens.make({ label: 'phone', role: 'viewer' });
    const cookie = `hoopwright-8417=${secret}`;
    const stream = await follow(here, '/api/changes', { from: '192.0.2.99', headers: { cookie } });
    expect(await stream.next()).toMatchObject({ event: 'ready' });
    save(here, id, 1);
    expect(await stream.next()).toMatchObject({ id: '2' });
    here.store.tokens.revoke(token.id);
    save(here, id, 2);
    expect(await stream.next()).toBeUndefined();
  });

  it('is refused to more windows than there can sensibly be, and given again when some have closed', async () => {
    const here = scene();
    const streams = await Promise.all(Array.from({ length: 60 }, () => follow(here)));
    expect((await ask(here, '/api/changes')).status).toBe(503);
    await streams[0].next();
    await streams[0].stop();
    await new Promise(setImmediate);
    const next = await follow(here);
    expect(next.answer.status).toBe(200);
    here.closing.abort();
  });
});
