import { describe, expect, it } from 'vitest';
import type { Opened } from '@hoopwright/wire/project';
import { type Scene, ask, jsonOf, scene } from './visitor.ts';

const FILE = '{ "name": "Dunlin (invented)",\r\n "wall_mm": 1.50 }\n';

const made = async (here: Scene, name = 'Dunlin'): Promise<Opened> =>
  jsonOf<Opened>(await ask(here, '/api/projects', { body: { name, file: FILE } }));

const save = (here: Scene, id: string, basedOn: number, wall: number) =>
  ask(here, `/api/projects/${id}/versions`, {
    body: { basedOn, file: `{"wall_mm":${wall}}`, by: 'left window' },
  });

describe('projects', () => {
  it('are made, listed, opened, renamed, copied, deleted and brought back', async () => {
    const here = scene();
    const { project } = await made(here);
    expect(await jsonOf(await ask(here, '/api/projects'))).toMatchObject({
      projects: [{ id: project.id, name: 'Dunlin' }],
    });
    const renamed = await ask(here, `/api/projects/${project.id}`, {
      method: 'PATCH',
      body: { name: 'Dunlin II' },
    });
    expect(await jsonOf(renamed)).toMatchObject({ project: { name: 'Dunlin II' } });
    const copied = await ask(here, `/api/projects/${project.id}/copy`, { body: { name: 'thicker' } });
    expect([copied.status, await jsonOf(copied)]).toMatchObject([201, { version: { file: FILE } }]);
    expect((await ask(here, `/api/projects/${project.id}`, { method: 'DELETE' })).status).toBe(200);
    expect(await jsonOf(await ask(here, '/api/projects?which=deleted'))).toMatchObject({
      projects: [{ id: project.id }],
    });
    expect(await jsonOf(await ask(here, '/api/projects'))).toMatchObject({ projects: [{ name: 'thicker' }] });
    expect((await ask(here, `/api/projects/${project.id}/restore`, { body: {} })).status).toBe(200);
    expect(await jsonOf(await ask(here, `/api/projects/${project.id}`))).toMatchObject({
      project: { name: 'Dunlin II' },
      version: { number: 1, file: FILE },
    });
  });

  it('that are not there are missing in every place', async () => {
    const here = scene();
    const places: [string, string, unknown][] = [
      ['GET', '', undefined],
      ['GET', '/file', undefined],
      ['GET', '/export', undefined],
      ['GET', '/versions', undefined],
      ['GET', '/versions/1', undefined],
      ['GET', '/difference?from=1&to=2', undefined],
      ['GET', '/attachments', undefined],
      ['GET', '/attachments/x', undefined],
      ['PATCH', '', { name: 'x' }],
      ['DELETE', '', undefined],
      ['DELETE', '/attachments/x', undefined],
      ['POST', '/restore', {}],
      ['POST', '/copy', { name: 'x' }],
      ['POST', '/versions', { basedOn: 1, file: '{}' }],
      ['POST', '/undo', { from: 1 }],
      ['POST', '/redo', { from: 1 }],
      ['POST', '/attachments', { name: 'x', base64: '' }],
    ];
    for (const [method, path, body] of places) {
      const answer = await ask(here, `/api/projects/nobody${path}`, { method, body });
      expect([method, path, answer.status]).toEqual([method, path, 404]);
    }
  });

  it('whose tank file is no JSON are refused with line and column', async () => {
    const answer = await ask(scene(), '/api/projects', {
      body: { name: 'Dunlin', file: '{"wall_mm": 1,5}' },
    });
    expect([answer.status, await jsonOf(answer)]).toMatchObject([
      422,
      { issues: [{ path: expect.stringMatching(/^line 1, column 1\d$/) }] },
    ]);
  });

  it('are checked by the reader of tank files where one is given', async () => {
    const issue = { path: 'wall_mm', expected: 'a number over 0', received: '-1' };
    const here = scene({ check: (text) => (text.includes('-1') ? [issue] : []) });
    const { project } = await made(here);
    const answer = await save(here, project.id, 1, -1);
    expect([answer.status, await jsonOf(answer)]).toEqual([422, { issues: [issue] }]);
    expect((await save(here, project.id, 1, 2)).status).toBe(201);
    const body = await (await ask(here, `/api/projects/${project.id}/export`)).text();
    const refused = await ask(here, '/api/projects/import', { body: body.replace(':2}', ':-1}') });
    expect([refused.status, await jsonOf(refused)]).toEqual([422, { issues: [issue] }]);
  });

  it('go out as the tank file, character for character, to be saved and not opened', async () => {
    const here = scene();
    const { project } = await made(here, 'Dunlin / "II" é');
    const answer = await ask(here, `/api/projects/${project.id}/file`);
    expect(await answer.text()).toBe(FILE);
    expect(answer.headers.get('content-type')).toBe('application/octet-stream');
    expect(answer.headers.get('content-disposition')).toBe(
      `attachment; filename="Dunlin _ _II_ _.json"; filename*=UTF-8''Dunlin%20%2F%20%22II%22%20%C3%A9.json`,
    );
  });

  it('go out whole and come in whole', async () => {
    const here = scene();
    const { project } = await made(here);
    await save(here, project.id, 1, 2);
    const base64 = Buffer.from([0, 255, 10]).toString('base64');
    await ask(here, `/api/projects/${project.id}/attachments`, { body: { name: 'c1.csv', base64 } });
    const body = await (await ask(here, `/api/projects/${project.id}/export?versions=all`)).text();
    const taken = await ask(here, '/api/projects/import', { body });
    const opened = await jsonOf<Opened>(taken);
    expect([taken.status, opened.project.undo]).toEqual([201, 1]);
    expect(here.store.projects.version(opened.project.id, 1)?.file).toBe(FILE);
    const spoilt = await ask(here, '/api/projects/import', { body: body.replace('AP8K', 'AP8L') });
    expect([spoilt.status, await jsonOf(spoilt)]).toMatchObject([
      422,
      { issues: [{ path: 'attachments[0].sha256' }] },
    ]);
  });
});

describe('two windows on one project', () => {
  it('never lose a save: the second is told what stands now', async () => {
    const here = scene();
    const { id } = (await made(here)).project;
    expect((await save(here, id, 1, 2)).status).toBe(201);
    const second = await save(here, id, 1, 3);
    expect(second.status).toBe(409);
    expect(await jsonOf(second)).toMatchObject({
      issues: [{ path: 'basedOn', expected: 'version 2, which stands now', received: 'version 1' }],
      newer: { project: { current: 2 }, version: { number: 2, file: '{"wall_mm":2}', by: 'left window' } },
    });
    expect(here.store.projects.versions(id)).toHaveLength(2);
  });

  it('undo and redo what stands, or are told', async () => {
    const here = scene();
    const { id } = (await made(here)).project;
    await save(here, id, 1, 2);
    const undone = await ask(here, `/api/projects/${id}/undo`, { body: { from: 2 } });
    expect(await jsonOf(undone)).toMatchObject({ project: { current: 1, redo: 2 }, version: { file: FILE } });
    expect((await ask(here, `/api/projects/${id}/undo`, { body: { from: 2 } })).status).toBe(409);
    const ended = await ask(here, `/api/projects/${id}/undo`, { body: { from: 1 } });
    expect(await jsonOf(ended)).toMatchObject({
      issues: [{ path: 'from', received: 'version 1, which has none' }],
    });
    const redone = await ask(here, `/api/projects/${id}/redo`, { body: { from: 1 } });
    expect(await jsonOf(redone)).toMatchObject({ project: { current: 2 } });
  });

  it('see the difference between two versions place by place', async () => {
    const here = scene();
    const { id } = (await made(here)).project;
    await save(here, id, 1, 2);
    expect(await jsonOf(await ask(here, `/api/projects/${id}/difference?from=1&to=2`))).toEqual({
      differences: [
        { path: 'name', before: 'Dunlin (invented)' },
        { path: 'wall_mm', before: 1.5, after: 2 },
      ],
    });
    expect((await ask(here, `/api/projects/${id}/difference?from=1&to=9`)).status).toBe(404);
    const lines = await jsonOf<{ versions: object[] }>(await ask(here, `/api/projects/${id}/versions`));
    expect(lines.versions).toMatchObject([{ number: 2, parent: 1, by: 'left window' }, { number: 1 }]);
    expect(lines.versions[0]).not.toHaveProperty('file');
    expect(await jsonOf(await ask(here, `/api/projects/${id}/versions/1`))).toMatchObject({
      version: { file: FILE },
    });
    expect((await ask(here, `/api/projects/${id}/versions/1e0`)).status).toBe(404);
  });
});

describe('attachments', () => {
  it('come back byte for byte, are deleted and brought back', async () => {
    const here = scene();
    const { id } = (await made(here)).project;
    const bytes = Uint8Array.from({ length: 256 }, (_, i) => 255 - i);
    const base64 = Buffer.from(bytes).toString('base64');
    const added = await ask(here, `/api/projects/${id}/attachments`, { body: { name: '<b>.csv', base64 } });
    const { attachment } = await jsonOf<{ attachment: { id: string } }>(added);
    const place = `/api/projects/${id}/attachments/${attachment.id}`;
    const back = await ask(here, place);
    expect([...new Uint8Array(await back.arrayBuffer())]).toEqual([...bytes]);
    expect(back.headers.get('content-disposition')).toMatch(/^attachment; filename="_b_\.csv"/);
    expect((await ask(here, place, { method: 'DELETE' })).status).toBe(200);
    expect(await jsonOf(await ask(here, `/api/projects/${id}/attachments`))).toEqual({ attachments: [] });
    expect((await ask(here, `${place}/restore`, { body: {} })).status).toBe(200);
    expect(await jsonOf(await ask(here, `/api/projects/${id}/attachments`))).toMatchObject({
      attachments: [{ name: '<b>.csv', bytes: 256 }],
    });
  });

  it('of 16 MB are taken, and what is larger is refused', async () => {
    const here = scene();
    const { id } = (await made(here)).project;
    const add = (bytes: number) => {
      const base64 = Buffer.alloc(bytes, 7).toString('base64');
      return ask(here, `/api/projects/${id}/attachments`, { body: { name: 'long.csv', base64 } });
    };
    expect((await add(16 << 20)).status).toBe(201);
    expect((await add(17 << 20)).status).toBe(422);
    expect((await add(18 << 20)).status).toBe(413);
  });
});

describe('the health of the server', () => {
  it('says how many projects are kept', async () => {
    const here = scene();
    await made(here);
    expect(await jsonOf(await ask(here, '/api/health'))).toEqual({ ok: true, projects: 1, changes: 1 });
  });
});
