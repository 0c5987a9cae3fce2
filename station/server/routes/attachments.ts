/** Attachments of a project, such as coupon CSV files: bytes in, the same bytes out. */
import { readAttach } from '@hoopwright/wire/project';
import { Hono } from 'hono';
import type { Attachments, Projects } from '../../store/store.ts';
import { missing } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import type { Env } from '../env.ts';
import { attachment } from './download.ts';

export const attachmentRoutes = (attachments: Attachments, projects: Projects) =>
  new Hono<Env>()
    .get('/:id/attachments', (c) => {
      const [id, which] = [
        c.req.param('id'),
        c.req.query('which') === 'deleted' ? 'deleted' : 'kept',
      ] as const;
      return projects.find(id)
        ? c.json({ attachments: attachments.list(id, which) })
        : missing(c, 'a project');
    })
    .post('/:id/attachments', async (c) => {
      const body = await bodyOf(c, readAttach);
      if ('response' in body) return body.response;
      const { base64, ...given } = body.value;
      const added = attachments.add(c.req.param('id'), { ...given, bytes: Buffer.from(base64, 'base64') });
      return added ? c.json({ attachment: added }, 201) : missing(c, 'a project');
    })
    .get('/:id/attachments/:attachment', (c) => {
      const { id, attachment: key } = c.req.param();
      const bytes = attachments.bytes(id, key);
      const all = [...attachments.list(id, 'kept'), ...attachments.list(id, 'deleted')];
      const name = all.find((one) => one.id === key)?.name ?? key;
      return bytes ? attachment(c, name, Uint8Array.from(bytes)) : missing(c, 'an attachment');
    })
    .delete('/:id/attachments/:attachment', (c) => {
      const { id, attachment: key } = c.req.param();
      const removed = attachments.remove(id, key);
      return removed ? c.json({ attachment: removed }) : missing(c, 'an attachment');
    })
    .post('/:id/attachments/:attachment/restore', (c) => {
      const { id, attachment: key } = c.req.param();
      const restored = attachments.restore(id, key);
      return restored ? c.json({ attachment: restored }) : missing(c, 'a deleted attachment');
    });
