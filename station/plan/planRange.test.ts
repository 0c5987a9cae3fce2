/** The range of a plan: quick days against the shell's own days of the same steels. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { drawnTank, fitQuickTank, forecast, runsFor, shellRun, WANTED_RUNS } from '@hoopwright/core/stretch';
import { drawsOn, planFor } from '@hoopwright/wire/plan';
import { parseTankFile } from '@hoopwright/wire/tank';
import { couponsBeside } from '../range/coupons.ts';
import { plateOf, steelOf } from '../range/steelRange.ts';
import { sha256 } from '../store/hash.ts';

const path = fileURLToPath(new URL('../../examples/dunlin-oxidiser.json', import.meta.url));
const RUNS = runsFor(WANTED_RUNS);
/** Steels that the quick tank has not seen. */
const UNSEEN = [RUNS + 3, RUNS + 71];

/**
 * The quick tank meets held-back shells within 0.5 % of pressure (its own tests); at these pressures a percent of
 * pressure is four to six percent of growth, so that 3 % of growth is what may be asked. Litres carry the heads' error
 * beside the barrel's: half as much again.
 */
const SHARE = 0.03;
const LITRES = 1.5 * SHARE;

test('a quick day is the shell’s day of the same steel, at every step, to 3 % of the growth', async () => {
  const given = parseTankFile(await readFile(path, 'utf8'));
  if (!given.ok) throw new Error(JSON.stringify(given.issues));
  const steel = steelOf(given, await couponsBeside(path, given, (file) => readFile(file)));
  const { duty } = given;
  if (steel === undefined || duty === undefined) throw new Error('the example has evidence and a duty');
  const plate = plateOf(given.tank);
  const target = duty.workingPressure * duty.stretchFactor;
  const fitted = steel.belief.draws
    .slice(0, RUNS)
    .map((draw) => ({ draw, run: shellRun(given.tank, plate, draw, target) }));
  const quick = fitQuickTank(given.tank, plate, fitted);
  const answer = planFor({ ...given, tank: steel.tank, program: 'test', hash: sha256 });
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  const { ladder } = answer.foreseen;
  for (const k of UNSEEN) {
    const draw = steel.belief.draws[k];
    const [day] = drawsOn(answer.foreseen, quick, [draw], (1e6 * 1) / 60).draws;
    const final = { pressure: target, time: day.rest, valve: 'open' } as const;
    const shell = forecast(
      drawnTank(given.tank, plate, draw),
      { ...duty, pump: 1e6 / 60, holds: [...ladder.holds, final] },
      { target, marks: [...ladder.first, ...ladder.stops] },
    );
    for (const pressure of [...ladder.first, ...ladder.stops, target]) {
      const real = shell.path.find((m) => m.phase === 'stretch' && m.pressure >= pressure * (1 - 1e-9));
      const ours = day.marks[`at ${pressure}`];
      const growth = real?.largest.growth ?? NaN;
      expect(Math.abs(ours.largest - growth), `at ${pressure} MPa`).toBeLessThan(SHARE * growth + 2e-5);
      expect(Math.abs(ours.pumped.all / (real?.pumped.all ?? NaN) - 1), `litres at ${pressure}`).toBeLessThan(
        LITRES,
      );
    }
    for (const { pressure } of ladder.holds) {
      const held = shell.path
        .filter((m) => m.phase === 'hold' && Math.abs(m.pressure / pressure - 1) < 1e-6)
        .at(-1);
      const growth = held?.largest.growth ?? NaN;
      expect(
        Math.abs(day.marks[`held ${pressure}`].largest / growth - 1),
        `held at ${pressure}`,
      ).toBeLessThan(SHARE);
    }
    const left = shell.released?.left.largest.growth ?? NaN;
    expect(Math.abs(day.marks['left'].largest / left - 1)).toBeLessThan(SHARE);
  }
});
