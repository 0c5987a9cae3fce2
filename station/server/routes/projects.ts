/** Projects: listed, made, opened, renamed, copied, deleted and brought back, handed on. */
import { readJson } from '@hoopwright/wire/issue';
import type { Issue } from '@hoopwright/wire/issue';
import {
  type ProjectFile,
  projectFileText,
  readCopy,
  readCreate,
  readProjectFile,
  readRename,
} from '@hoopwright/wire/project';
import { Hono } from 'hono';
import { projectFileOf, takeIn } from '../../store/projectFile.ts';
import type { Store } from '../../store/store.ts';
import { missing, refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import type { Env } from '../env.ts';
import { attachment } from './download.ts';

/** What is wrong with the text of a tank file; beyond its being JSON that is for the tank file's own reader to say. */
export type CheckFile = (text: string) => readonly Issue[];

export const isJson: CheckFile = (text) => {
  const json = readJson(text);
  return json.ok ? [] : json.issues;
};

export const projectRoutes = (store: Store, check: CheckFile) => {
  const { projects } = store;
  return new Hono<Env>()
    .get('/', (c) =>
      c.json({ projects: projects.list(c.req.query('which') === 'deleted' ? 'deleted' : 'kept') }),
    )
    .post('/', async (c) => {
      const body = await bodyOf(c, readCreate);
      if ('response' in body) return body.response;
      const issues = check(body.value.file);
      return issues.length > 0 ? refuse(c, 422, ...issues) : c.json(projects.create(body.value), 201);
    })
    .post('/import', async (c) => {
      const file = readProjectFile(await c.req.text());
      if (!file.ok) return refuse(c, 422, ...file.issues);
      const issues = check(standingFile(file.value));
      if (issues.length > 0) return refuse(c, 422, ...issues);
      const taken = takeIn(store, file.value);
      return taken.kind === 'done' ? c.json(taken.opened, 201) : refuse(c, 422, ...taken.issues);
    })
    .get('/:id', (c) => {
      const opened = projects.open(c.req.param('id'));
      return opened ? c.json(opened) : missing(c, 'a project');
    })
    .patch('/:id', async (c) => {
      const body = await bodyOf(c, readRename);
      if ('response' in body) return body.response;
      const project = projects.rename(c.req.param('id'), body.value);
      return project ? c.json({ project }) : missing(c, 'a project');
    })
    .delete('/:id', (c) => {
      const project = projects.remove(c.req.param('id'));
      return project ? c.json({ project }) : missing(c, 'a project');
    })
    .post('/:id/restore', (c) => {
      const project = projects.restore(c.req.param('id'));
      return project ? c.json({ project }) : missing(c, 'a deleted project');
    })
    .post('/:id/copy', async (c) => {
      const body = await bodyOf(c, readCopy);
      if ('response' in body) return body.response;
      const opened = projects.copy(c.req.param('id'), body.value);
      return opened ? c.json(opened, 201) : missing(c, 'a project');
    })
    .get('/:id/file', (c) => {
      const opened = projects.open(c.req.param('id'));
      if (!opened) return missing(c, 'a project');
      return attachment(c, `${opened.project.name}.json`, opened.version.file);
    })
    .get('/:id/export', (c) => {
      const file = projectFileOf(
        store,
        c.req.param('id'),
        c.req.query('versions') === 'all' ? 'all' : 'current',
      );
      return file
        ? attachment(c, `${file.name}.project.json`, projectFileText(file))
        : missing(c, 'a project');
    });
};

const standingFile = ({ versions, current }: ProjectFile): string =>
  versions.find(({ number }) => number === current)?.file ?? '';
