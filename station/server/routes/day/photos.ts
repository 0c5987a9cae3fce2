/** Photos from any phone: kept byte for byte, tied to a step and a place. */
import { Hono } from 'hono';
import type { Days } from '../../../day/days.ts';
import type { Store } from '../../../store/store.ts';
import { missing, refuse } from '../../answer.ts';
import { withoutLocation } from '../../../day/photo.ts';
import type { Env } from '../../env.ts';
import { MAY } from '@hoopwright/wire/day';
import { PHOTO_TYPES } from '../../gate/body.ts';
import { askerOf } from './who.ts';

export const photoRoutes = (days: Days, { bytes, records }: Store) =>
  new Hono<Env>()
    .post('/:record/photos', async (c) => {
      const day = days.find(c.req.param('record'))?.day;
      if (day === undefined || !day.takes) return missing(c, 'a day that runs');
      const { state } = day.state;
      const asker = askerOf(c.get('who'), state);
      if (!MAY[asker.role].includes('remark'))
        return refuse(c, 403, {
          path: 'photo',
          expected: 'a role that writes',
          received: `the ${asker.role}`,
        });
      const content = new Uint8Array(await c.req.arrayBuffer());
      if (content.length === 0) return refuse(c, 422, { path: 'photo', expected: 'bytes', received: 'none' });
      const [by, place] = [c.req.query('by')?.slice(0, 60), c.req.query('place')?.slice(0, 60)];
      const sha256 = bytes.keep(content);
      const { entry } = await day.write('photo', {
        photo: sha256,
        bytes: content.length,
        type: typeOf(c.req.header('content-type')),
        by: by ?? asker.name ?? state.crew.noteTaker ?? asker.role,
        step: state.step?.number ?? '',
        ...(place === undefined || place === '' ? {} : { place }),
      });
      return c.json({ sha256, seq: entry.seq }, 201);
    })
    .get('/:record/photos/:sha256', (c) => {
      const { record, sha256 } = c.req.param();
      const content = records.find(record) === undefined ? undefined : bytes.find(sha256);
      if (content === undefined) return missing(c, 'a photo');
      const removed = c.req.query('location') === 'removed';
      const type = kindOf(content);
      return c.body(Uint8Array.from(removed ? withoutLocation(content) : content), 200, {
        'Content-Type': type,
      });
    });

const typeOf = (header: string | undefined): string =>
  PHOTO_TYPES.find((type) => header?.toLowerCase().startsWith(type) === true) ?? 'application/octet-stream';

/** By its first bytes, so that no sender makes a page of it. */
function kindOf(content: Uint8Array): string {
  const starts = (text: string, at = 0): boolean =>
    Buffer.from(content.subarray(at, at + text.length)).toString('latin1') === text;
  if (starts('\xff\xd8\xff')) return 'image/jpeg';
  if (starts('\x89PNG')) return 'image/png';
  if (starts('RIFF') && starts('WEBP', 8)) return 'image/webp';
  if (starts('ftyphei', 4) || starts('ftypmif1', 4)) return 'image/heic';
  return 'application/octet-stream';
}
