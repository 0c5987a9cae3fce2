import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { afterEach, describe, expect, test } from 'vitest';
import { forbidden, permitted } from '@hoopwright/wire/day';
import { freeze } from '@hoopwright/wire/plan';
import { ask, HOST, jsonOf } from '../server/visitor.ts';
import { sha256 } from '../store/hash.ts';
import { begun, type DayScene, dayScene, ordered, shown, waited } from './dayScene.ts';
import { withoutLocation } from './photo.ts';
import { testPlan } from './rehearsed.ts';
import { powerIn } from './surroundings.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

const LATITUDE = [48, 1, 12, 1, 3456, 100];

/** TIFF as phones write it: orientation, and where it was taken. */
function exif(little: boolean): Buffer {
  const tiff = Buffer.alloc(8 + 2 + 24 + 4 + 2 + 24 + 4 + 24);
  const two = (at: number, value: number): unknown =>
    little ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at);
  const four = (at: number, value: number): unknown =>
    little ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at);
  const entry = (at: number, [tag, type, count, value]: readonly number[]): void => {
    two(at, tag);
    two(at + 2, type);
    four(at + 4, count);
    if (type === 3) two(at + 8, value);
    else four(at + 8, value);
  };
  tiff.write(little ? 'II' : 'MM', 0, 'latin1');
  two(2, 42);
  four(4, 8);
  two(8, 2);
  entry(10, [0x112, 3, 1, 6]);
  entry(22, [34_853, 4, 1, 38]);
  two(38, 2);
  entry(40, [1, 2, 2, 0x4e]);
  entry(52, [2, 5, 3, 68]);
  LATITUDE.forEach((value, i) => four(68 + 4 * i, value));
  return tiff;
}

const scan = Buffer.from(Array.from({ length: 500 }, (_, i) => (i * 89) & 0xff));

function jpeg(little: boolean): Buffer {
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), exif(little)]);
  const xmp = Buffer.from('<x:xmpmeta exif:GPSLatitude="48,12.5N" tiff:Make="Invented"/>');
  const head = Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, body.length + 2]);
  const second = Buffer.from([0xff, 0xe1, 0, xmp.length + 2]);
  return Buffer.concat([head, body, second, xmp, Buffer.from([0xff, 0xda]), scan, Buffer.from([0xff, 0xd9])]);
}

describe('a photo', () => {
  test.each([true, false])(
    'without its location keeps the picture and its orientation (little endian: %s)',
    (little) => {
      const photo = jpeg(little);
      const copy = Buffer.from(withoutLocation(photo));
      expect(copy).toHaveLength(photo.length);
      const tiff = exif(little);
      expect(photo.includes(tiff.subarray(68))).toBe(true);
      expect(copy.includes(tiff.subarray(68))).toBe(false);
      expect(copy.includes(tiff.subarray(0, 34))).toBe(true);
      expect(copy.includes(scan)).toBe(true);
      expect(copy.toString('latin1')).not.toContain('48,12.5N');
      expect(copy.toString('latin1')).toContain('tiff:Make="Invented"');
    },
  );

  test('of a kind that carries no location is left as it is, and one that is cut off breaks nothing', () => {
    expect(Buffer.from(withoutLocation(scan)).equals(scan)).toBe(true);
    for (let length = 0; length < 140; length++)
      expect(() => withoutLocation(jpeg(true).subarray(0, length))).not.toThrow();
  });

  test('as PNG has its check sums right afterwards', () => {
    const chunk = (type: string, data: Buffer): Buffer => {
      const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
      const [size, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
      size.writeUInt32BE(data.length);
      sum.writeUInt32BE(crc32(named));
      return Buffer.concat([size, named, sum]);
    };
    const png = Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]),
      chunk('eXIf', exif(false)),
      chunk('IDAT', scan),
    ]);
    const copy = Buffer.from(withoutLocation(png));
    const length = exif(false).length;
    expect(copy.includes(exif(false).subarray(68))).toBe(false);
    expect(copy.readUInt32BE(16 + length)).toBe(crc32(copy.subarray(12, 16 + length)));
    expect(copy.includes(chunk('IDAT', scan))).toBe(true);
  });

  test('is kept byte for byte, tied to step and place, and its location goes on export only', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const photo = jpeg(true);
    const request = new Request(`http://${HOST}/api/days/${record}/photos?by=B&place=low`, {
      method: 'POST',
      headers: { host: HOST, 'content-type': 'image/jpeg' },
      body: Uint8Array.from(photo),
    });
    const env = { incoming: { socket: { remoteAddress: '127.0.0.1' } } };
    const answer = await waited(day, day.here.app.fetch(request, env));
    expect(answer.status).toBe(201);
    const { sha256: digest, seq } = await jsonOf<{ sha256: string; seq: number }>(answer);
    expect(digest).toBe(sha256(photo));
    const place = `/api/days/${record}/photos/${digest}`;
    const kept = Buffer.from(await (await ask(day.here, place)).arrayBuffer());
    expect(kept.equals(photo)).toBe(true);
    const bare = Buffer.from(await (await ask(day.here, `${place}?location=removed`)).arrayBuffer());
    expect(bare.equals(Buffer.from(withoutLocation(photo)))).toBe(true);
    const { state } = await shown(day, record);
    expect(state.remarks).toMatchObject([{ seq, by: 'B', photo: digest, place: 'low', step: '1' }]);
    const remark = { order: 'remark', text: 'weld', photo: 'f'.repeat(64) } as const;
    expect((await ordered(day, record, remark)).status).toBe(409);
  });
});

describe('what may be read', () => {
  test('is never what the plan forbids at the present pressure, nor at one that is not known', async () => {
    const day = (open = dayScene());
    const tape = {
      name: 'tape',
      reads: 'girth',
      by: 'tape',
      from: 'at the tank',
      upTo_bar: 5,
      resolution: 0.5,
    };
    const record = await begun(day, { channels: [tape] });
    const names = async (later_ms = 0): Promise<string[]> => {
      const { state, now_ms } = await shown(day, record);
      return permitted(state, now_ms + later_ms).map(({ channel }) => channel.name);
    };
    expect(await names()).toContain('tape');
    await ordered(day, record, { order: 'vent shut' });
    await ordered(day, record, { order: 'go on', from: '1' });
    await ordered(day, record, { order: 'row', how: 'by hand', values: { 'gauge A': 4.5 } });
    expect(await names()).toContain('tape');
    await ordered(day, record, { order: 'row', how: 'by hand', values: { 'gauge A': 5.5 } });
    expect(await names()).not.toContain('tape');
    const { state, now_ms } = await shown(day, record);
    expect(forbidden(state, 'tape', now_ms)).toContain('up to 5 bar');
    await ordered(day, record, { order: 'row', how: 'by hand', values: { 'gauge A': 0.5 } });
    expect(await names()).toContain('tape');
    // Five minutes and more without a reading: the highest that was read counts.
    expect(await names(400_000)).not.toContain('tape');
  });
});

test('a change on the day is a new revision of the same tank, in the record', async () => {
  const day = (open = dayScene());
  const record = await begun(day);
  const plan = { ...testPlan(), rest: { ...testPlan().rest, atLeast_min: 45 } };
  const second = freeze(plan, { name: 'longer rest', revision: 'B', date: '2026-10-03' }, sha256);
  const order = { order: 'new revision', digest: second.frozen.digest, why: 'it creeps' } as const;
  expect((await ordered(day, record, order)).status).toBe(409);
  day.store.plans.keep(day.project, second);
  expect((await ordered(day, record, order)).status).toBe(200);
  const { state } = await shown(day, record);
  expect(state.plan?.frozen.revision).toBe('B');
  expect(state.heads.filter(({ at }) => at === 'start')).toHaveLength(2);
});

test('mains or battery is read as Linux tells it', () => {
  const root = mkdtempSync(join(tmpdir(), 'hoopwright-power-'));
  const supply = (name: string, parts: Readonly<Record<string, string>>): void => {
    mkdirSync(join(root, name), { recursive: true });
    for (const [key, text] of Object.entries(parts)) writeFileSync(join(root, name, key), `${text}\n`);
  };
  expect(powerIn(join(root, 'none'))).toBe('not known');
  supply('BAT0', { type: 'Battery' });
  expect(powerIn(root)).toBe('battery');
  supply('AC', { type: 'Mains', online: '0' });
  expect(powerIn(root)).toBe('battery');
  supply('AC', { type: 'Mains', online: '1' });
  expect(powerIn(root)).toBe('mains');
  rmSync(root, { recursive: true });
});
