/** The days: listed, begun, shown as they stand and as they stood. See wire/day/stream.ts for all of it. */
import { CHANNEL_UNIT, type Channel } from '@hoopwright/wire/reading';
import { type Entry, readingsCsv } from '@hoopwright/wire/record';
import { readBegin, readFaultNow } from '@hoopwright/wire/day';
import { type Context, Hono } from 'hono';
import { stream } from 'hono/streaming';
import type { Days } from '../../../day/days.ts';
import { tankOf } from '../../../day/tankOf.ts';
import { recordLines } from '../../../store/recordFile.ts';
import type { Store } from '../../../store/store.ts';
import { missing, refuse } from '../../answer.ts';
import type { Env } from '../../env.ts';
import { ownOnly } from '../../gate/access.ts';
import { bodyOf } from '../../gate/body.ts';
import { dispositionOf } from '../download.ts';
import { askerOf } from './who.ts';

export const dayRoutes = (days: Days, store: Store) => {
  const { records } = store;
  return new Hono<Env>()
    .get('/', (c) => c.json(days.list()))
    .post('/', ownOnly, async (c) => {
      const body = await bodyOf(c, readBegin);
      if ('response' in body) return body.response;
      const begun = await days.begin(body.value);
      if (begun.kind === 'refused') return refuse(c, 409, begun.issue);
      return c.json(days.line(begun.day.parts.about.record), 201);
    })
    .get('/:record', async (c) => {
      const snapshot = await days.snapshot(c.req.param('record'));
      if (snapshot === undefined) return missing(c, 'a day');
      const { id: _, ...asker } = askerOf(c.get('who'), snapshot.state);
      return c.json({ ...asker, ...snapshot });
    })
    .get('/:record/at', async (c) => {
      const ms = Number(c.req.query('ms'));
      if (c.req.query('ms') === undefined || !Number.isFinite(ms))
        return refuse(c, 422, {
          path: 'ms',
          expected: 'a time in ms',
          received: c.req.query('ms') ?? 'nothing',
        });
      const snapshot = await days.past.at(c.req.param('record'), ms);
      return snapshot === undefined ? missing(c, 'a day') : c.json({ role: 'viewer', ...snapshot });
    })
    .get('/:record/tank', async (c) => {
      const record = records.find(c.req.param('record'));
      const snapshot = record === undefined ? undefined : await days.snapshot(record.about.record);
      const plan = snapshot?.state.plan;
      const file = plan === undefined ? undefined : tankOf(store, plan, record?.about.project);
      return file === undefined ? missing(c, 'a tank file') : c.text(file);
    })
    .post('/:record/faults', ownOnly, async (c) => {
      const body = await bodyOf(c, readFaultNow);
      if ('response' in body) return body.response;
      const done = days.befall(c.req.param('record'), body.value.fault);
      const wanted = 'a fault that can come at any time, in a rehearsal that runs';
      return done
        ? c.json({ fault: body.value.fault })
        : refuse(c, 409, { path: 'fault', expected: wanted, received: body.value.fault });
    })
    .get('/:record/export', async (c) => {
      const id = c.req.param('record');
      const line = records.find(id);
      if (line === undefined) return missing(c, 'a day');
      const as = c.req.query('as') ?? 'csv';
      const decimal = c.req.query('decimal');
      const comma = decimal === ',' || decimal === 'comma';
      const channels = (await days.snapshot(id))?.state.channels.map(({ channel }) => channel) ?? [];
      const made = exportLines(as, { days, records, id, channels, comma });
      if (made === undefined)
        return refuse(c, 422, { path: 'as', expected: 'csv, ndjson or record', received: as });
      return download(c, `${line.about.kind} ${line.about.title}.${made.ending}`, made.lines);
    });
};

interface Exported {
  readonly days: Days;
  readonly records: Store['records'];
  readonly id: string;
  readonly channels: readonly Channel[];
  readonly comma: boolean;
}

function exportLines(
  as: string,
  { records, id, channels, comma }: Exported,
): { readonly lines: Iterable<string>; readonly ending: string } | undefined {
  const about = records.find(id)?.about;
  if (about === undefined) return undefined;
  switch (as) {
    case 'csv': {
      const columns = channels.map(({ name, reads }) => ({ channel: name, unit: CHANNEL_UNIT[reads] }));
      const rows = readingsCsv(about, entriesOf(records, id), { columns, decimal: comma ? ',' : '.' });
      return { ending: 'csv', lines: withEnds(rows, '\r\n') };
    }
    case 'ndjson':
      return { ending: 'ndjson', lines: withEnds(jsonLines(about.kind, entriesOf(records, id)), '\n') };
    case 'record':
      return { ending: 'record.ndjson', lines: withEnds(recordLines(records, id), '\n') };
    default:
      return undefined;
  }
}

function* entriesOf(records: Store['records'], id: string): Generator<Entry> {
  for (const { entry } of records.entries(id)) yield entry;
}

/** Every line says which kind of record it is from. */
function* jsonLines(record: string, entries: Iterable<Entry>): Generator<string> {
  for (const entry of entries) yield JSON.stringify({ record, ...entry });
}

function* withEnds(lines: Iterable<string>, end: string): Generator<string> {
  for (const line of lines) yield `${line}${end}`;
}

/** Lines that are written at once; between two of these the readings go on. */
const AT_ONCE = 500;

function download(c: Context<Env>, name: string, lines: Iterable<string>): Response {
  c.header('Content-Type', 'application/octet-stream');
  c.header('Content-Disposition', dispositionOf(name));
  return stream(c, async (out) => {
    let text = '';
    let held = 0;
    for (const line of lines) {
      text += line;
      if (++held < AT_ONCE) continue;
      await out.write(text);
      [text, held] = ['', 0];
      await new Promise(setImmediate);
      if (out.aborted) return;
    }
    await out.write(text);
  });
}
