import { afterEach, expect, test } from 'vitest';
import { begun, type DayScene, dayScene, ordered as orderedBy } from '../../day/dayScene.ts';
import { follow } from './follow.ts';
import { ordered } from './listen.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

async function followed(change: object = {}) {
  const day = (open = dayScene());
  const record = await begun(day, { ...change });
  const lines: string[] = [];
  const { records } = day.store;
  const out = (line: string): void => void lines.push(line);
  const following = follow({ records, record, out, later: day.time.later, every: 10 });
  return { day, record, lines, following };
}
const by = 'A. Invented';

test('state, decisions and figures are told as they become durable, advice at once, and the end by its name', async () => {
  const { day, record, lines, following } = await followed();
  await orderedBy(day, record, { order: 'vent shut' });
  await orderedBy(day, record, { order: 'go on', from: '1' });
  const row = { order: 'row', how: 'by hand' } as const;
  await orderedBy(day, record, { ...row, values: { 'gauge A': 1.5, low: 1263.1 } });
  await day.time.pass(2000);
  await orderedBy(day, record, { ...row, values: { 'gauge A': 31.5 } });
  await day.time.pass(500);
  expect(lines.some((line) => /^head ([0-9a-f]{4} ?){8}$/.test(line))).toBe(true);
  expect(lines).toContainEqual(expect.stringContaining('UNDER WAY  step 2, seat, 1.5 bar'));
  expect(lines).toContainEqual(expect.stringMatching(/^1\.50 bar {2}growth of low 0\.\d{3} %/));
  expect(lines).toContainEqual(expect.stringContaining('STOP AND RELEASE  gauge A shows 31.5 bar'));
  // Within ten seconds of the first figures there are no others.
  expect(lines.filter((line) => line.includes('growth of')).length).toBe(1);
  await orderedBy(day, record, { order: 'end', end: 'broken off', why: 'rain' });
  await day.time.pass(500);
  expect((await following.ended).end?.name).toBe('broken off');
});

test('what is foreseen is told in a line, the same again is not', async () => {
  const range = (median: number): object => ({ median, half: [2.4, 2.9], wide: [2.1, 3.3] });
  const says = [2.6, 2.6, 2.7];
  const day = (open = dayScene({
    adviser: () => ({
      heard: (_now, write) => {
        const median = says.shift();
        if (median !== undefined) write('forecast', { growth_percent: { ...range(median) } });
      },
      close: () => {},
    }),
  }));
  const record = await begun(day);
  const lines: string[] = [];
  const { records } = day.store;
  const out = (line: string): void => void lines.push(line);
  follow({ records, record, out, later: day.time.later, every: 0 });
  await orderedBy(day, record, { order: 'vent shut' });
  await day.time.pass(2000);
  const foreseen = lines.filter((line) => line.includes('Foreseen'));
  expect(foreseen).toEqual([
    expect.stringContaining('2.60 % of growth (2.10 to 3.30 %)'),
    expect.stringContaining('2.70 % of growth'),
  ]);
});

test('every line of a rehearsal says that it is one', async () => {
  const { day, lines } = await followed({
    kind: 'rehearsal',
    rehearsal: { seed: 3, speed: 20, faults: [], readings: 'by hand' },
  });
  await day.time.pass(500);
  expect(lines.length).toBeGreaterThan(1);
  expect(lines.every((line) => line.startsWith('REHEARSAL  '))).toBe(true);
});

test('orders are lines of JSON; what is wrong with one is said', async () => {
  const { day, record } = await followed();
  const say = async (line: string): Promise<string> => {
    const answer = ordered(day.days, record, line);
    await day.time.pass(100);
    return answer;
  };
  expect(await say('vent shut')).toContain('one line of JSON');
  expect(await say('{"order": "vent shut"}')).toContain('by');
  expect(await say(JSON.stringify({ order: 'go on', by, from: '1' }))).toContain('vent');
  expect(await say(JSON.stringify({ order: 'vent shut', by }))).toMatch(/^taken: entry \d+$/);
});
