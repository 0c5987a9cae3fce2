import { afterEach, expect, test } from 'vitest';
import { begun, type DayScene, dayScene, ordered, shown } from './dayScene.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

test('a pressure over the limit for a tenth of a second is latched, though rows by wire stand further apart', async () => {
  const day = (open = dayScene());
  const sources = [{ kind: 'http', name: 'node', names: { p: 'gauge A' } }];
  const record = await begun(day, { sources });
  await ordered(day, record, { order: 'vent shut' });
  await ordered(day, record, { order: 'go on', from: '1' });
  const node = day.days.find(record)?.http.get('node');
  const send = async (bar: number): Promise<void> => {
    const line = async function* (): AsyncGenerator<Uint8Array> {
      yield await Promise.resolve(Buffer.from(`{"p": ${bar}}\n`));
    };
    await node?.send(line());
    await day.time.pass(100);
  };
  expect(node).toBeDefined();
  for (let i = 0; i < 12; i++) await send(29.5 + 0.01 * (i % 3));
  await send(30.4);
  for (let i = 0; i < 12; i++) await send(29.5 + 0.01 * (i % 3));
  const { causes } = (await shown(day, record)).state;
  expect(causes).toMatchObject([{ limit: 'pressure_bar', value: 30.4, state: 'stop and release' }]);
});
