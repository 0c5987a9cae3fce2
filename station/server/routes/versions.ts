/** Versions of a project: saved, listed, compared, gone back and forth. */
import { difference, readSave, readStep } from '@hoopwright/wire/project';
import { Hono } from 'hono';
import type { Edit, Projects } from '../../store/store.ts';
import { missing, refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import type { Asked, Env } from '../env.ts';
import type { CheckFile } from './projects.ts';

export const versionRoutes = (projects: Projects, check: CheckFile) =>
  new Hono<Env>()
    .get('/:id/versions', (c) => {
      const id = c.req.param('id');
      return projects.find(id) ? c.json({ versions: projects.versions(id) }) : missing(c, 'a project');
    })
    .get('/:id/versions/:number', (c) => {
      const version = projects.version(c.req.param('id'), numberOf(c.req.param('number')));
      return version ? c.json({ version }) : missing(c, 'a version');
    })
    .get('/:id/difference', (c) => {
      const side = (name: string) => projects.version(c.req.param('id'), numberOf(c.req.query(name)));
      const [before, after] = [side('from'), side('to')];
      if (!before || !after) return missing(c, 'two versions, as ?from=1&to=2,');
      return c.json({ differences: difference(JSON.parse(before.file), JSON.parse(after.file)) });
    })
    .post('/:id/versions', async (c) => {
      const body = await bodyOf(c, readSave);
      if ('response' in body) return body.response;
      const issues = check(body.value.file);
      if (issues.length > 0) return refuse(c, 422, ...issues);
      return edited(c, projects.save(c.req.param('id'), body.value), body.value.basedOn);
    })
    .post('/:id/undo', async (c) => {
      const body = await bodyOf(c, readStep);
      if ('response' in body) return body.response;
      return edited(c, projects.undo(c.req.param('id'), body.value), body.value.from);
    })
    .post('/:id/redo', async (c) => {
      const body = await bodyOf(c, readStep);
      if ('response' in body) return body.response;
      return edited(c, projects.redo(c.req.param('id'), body.value), body.value.from);
    });

/** Not a number: no version has that number. */
const numberOf = (text: string | undefined): number => (text && /^\d{1,9}$/.test(text) ? Number(text) : 0);

const edited = (c: Asked, edit: Edit, shown: number): Response => {
  if (edit.kind === 'done') return c.json(edit.opened, 201);
  if (edit.kind === 'missing') return missing(c, 'a project');
  const issue =
    edit.kind === 'stale'
      ? {
          path: 'basedOn',
          expected: `version ${edit.opened.project.current}, which stands now`,
          received: `version ${shown}`,
          suggestion: 'it was changed in another window: compare the two, then save again',
        }
      : { path: 'from', expected: 'a version to go to', received: `version ${shown}, which has none` };
  return c.json({ issues: [issue], ...(edit.kind === 'stale' ? { newer: edit.opened } : {}) }, 409);
};
