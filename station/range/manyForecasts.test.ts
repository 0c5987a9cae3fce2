import { readFileSync } from 'node:fs';
import { parseTankFile } from '@hoopwright/wire/tank';
import { afterAll, describe, expect, it } from 'vitest';
import type { ManyMessage } from '../worker/many.ts';
import { openManyForecasts } from './manyForecasts.ts';

const many = openManyForecasts(new URL('../worker/many.ts', import.meta.url), 2);
afterAll(() => many.close());

const parsed = parseTankFile(readFileSync(new URL('../../examples/c3.json', import.meta.url), 'utf8'));
if (!parsed.ok) throw new Error('the example has issues');
const { tank } = parsed;
const [course] = tank.courses;

/** Walls that are all different, thinnest first. */
const messages = (count: number): ManyMessage[] =>
  Array.from({ length: count }, (_, i) => ({
    tank: { ...tank, courses: [{ ...course, wall: 1.9 + 0.013 * i }] },
    until: 0.013,
  }));

describe('very many forecasts', () => {
  it('come back in their order, and say how many are done', async () => {
    const told: number[] = [];
    const answers = await many.run(messages(5), { progress: (done) => told.push(done) });
    expect(told).toEqual([1, 2, 3, 4, 5]);
    const pressures = answers.map(({ pressure }) => pressure);
    expect(answers.every(({ growth }) => growth >= 0.013)).toBe(true);
    // A thicker wall carries more at the same growth; steps end within a few percent of one another.
    expect(pressures[4]).toBeGreaterThan(pressures[0]);
  });

  it('stop when they are asked to, with most of them never begun', async () => {
    const stop = new AbortController();
    let last = 0;
    const run = many.run(messages(400), {
      signal: stop.signal,
      progress: (done) => {
        last = done;
        if (done === 3) stop.abort();
      },
    });
    await expect(run).rejects.toThrow(/abort/i);
    expect(last).toBeLessThan(20);
    // The threads are there for the next.
    expect(await many.run(messages(1))).toHaveLength(1);
  });
});
