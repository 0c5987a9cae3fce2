import { describe, expect, test } from 'vitest';
import { midPlastic, outsideRadius, placeAt, thicknessAt } from '../shell/read.ts';
import { shellOf } from '../shell/shell.ts';
import { solverFor } from '../shell/solve.ts';
import { CREEPING, EVEN } from '../shell/specimen.ts';
import { cloneState } from '../shell/state.ts';
import type { Tank } from '../tank/tank.ts';
import { type Datum, datumOf, momentAt, pumpedFor } from './growth.ts';
import { hold } from './hold.ts';
import { elasticStride, rise } from './rise.ts';
import { creepFor } from './thin/creep.ts';
import { longCylinder } from './thin/vessel.ts';
import { type Walk, walkFrom } from './walk.ts';

const CREEPS: Tank = {
  ...EVEN,
  length: 1900,
  courses: [{ length: 1900, wall: 2.1, steel: CREEPING }],
  girths: [{ name: 'middle', at: 950 }],
};

interface Standing {
  readonly walk: Walk;
  readonly datum: Datum;
}

/** Up to a pressure at the rate of the curve. */
function standing(tank: Tank, pressure: number): Standing {
  const walk = walkFrom(solverFor(shellOf(tank, { elements: 60, layers: 5 }), 0, 0));
  const datum = datumOf(walk.solver, cloneState(walk.now));
  const up = { marks: [pressure], beyond: false, seconds: () => 0, watch: () => false };
  elasticStride(walk, up);
  expect(rise(walk, datum.state.volume, up).kind).toBe('landed');
  return { walk, datum };
}

/** Radius of the mid-surface at mid-barrel. */
function middleOf({ walk, datum }: Standing): number {
  const { shell } = datum.solver;
  return outsideRadius(shell, walk.now, 950) - thicknessAt(shell, walk.now, placeAt(shell, 950).element) / 2;
}

test.each([60, 600, 7200])(
  'held for %i s, the middle of a long barrel creeps as the closed form says',
  (time) => {
    const held = standing(CREEPS, 3.35);
    const { walk, datum } = held;
    const { shell } = datum.solver;
    const middle = placeAt(shell, 950).element;
    const vessel = longCylinder(shell.metals[shell.metal[middle]], 431 / 2 + 1.05, 2.1);
    const from = { plastic: midPlastic(shell, walk.now, middle), pressure: walk.now.pressure };
    const before = middleOf(held);
    expect(hold(walk, datum, { valve: 'open', time, watch: () => false }).kind).toBe('held');
    const crept = Math.log(middleOf(held) / before);
    const [start, end] = [0, time].map((seconds) => creepFor(vessel, from, seconds).state.hoop);
    expect(walk.now.pressure).toBeCloseTo(3.35, 8);
    expect(end - start).toBeGreaterThan(1e-4);
    // Steps that lengthen by a fifth, each with the rate at its end: 0.2 %.
    expect(Math.abs(crept / (end - start) - 1)).toBeLessThan(0.003);
  },
);

describe('with the valve shut', () => {
  test('no water comes or goes: what the wall takes up, water and air give back', () => {
    const { walk, datum } = standing({ ...CREEPS, water: { temperature: 11, trappedAir: 4e5 } }, 3.35);
    const grown = (): number => momentAt(datum, walk.now, 'hold', 0).growth;
    const drawn = (): number => pumpedFor(datum, grown(), walk.now.pressure).all;
    const [water, growth] = [drawn(), grown()];
    expect(hold(walk, datum, { valve: 'shut', time: 600, watch: () => false }).kind).toBe('held');
    expect(walk.now.pressure).toBeLessThan(3.34);
    expect(grown()).toBeGreaterThan(growth + 1e4);
    // The last step alone trusts the volume under the mid-surface.
    expect(Math.abs(drawn() - water)).toBeLessThan(2e-3 * (grown() - growth));
  });

  test('the barrel creeps less than with the valve open', () => {
    const [open, shut] = (['open', 'shut'] as const).map((valve) => {
      const held = standing(CREEPS, 3.35);
      hold(held.walk, held.datum, { valve, time: 600, watch: () => false });
      return middleOf(held);
    });
    expect(shut).toBeLessThan(open);
  });
});

test('without a rate effect only the clock goes on', () => {
  const { walk, datum } = standing(EVEN, 3.1);
  const before = cloneState(walk.now);
  let seen = 0;
  const watch = (): boolean => {
    seen++;
    return false;
  };
  expect(hold(walk, datum, { valve: 'open', time: 900, watch })).toEqual({ kind: 'held' });
  expect([walk.time, seen]).toEqual([900, 1]);
  expect(walk.now.move).toEqual(before.move);
});

test('a hold ends when the watch says so, not before', () => {
  const { walk, datum } = standing(CREEPS, 3.35);
  let seen = 0;
  const watch = (): boolean => {
    seen++;
    return seen === 7;
  };
  hold(walk, datum, { valve: 'open', time: 3600, watch });
  expect(seen).toBe(7);
  expect(walk.time).toBeLessThan(60);
});

test('held where it cannot stand, the wall gives way and the hold says after how long', () => {
  const { walk, datum } = standing(CREEPS, 3.35);
  const up = { marks: [], beyond: true, seconds: () => 0, watch: () => false };
  expect(rise(walk, datum.state.volume, up).kind).toBe('past maximum');
  const end = hold(walk, datum, { valve: 'open', time: 36_000, watch: () => false });
  expect(end.kind).toBe('gives way');
  if (end.kind === 'gives way') expect(end.after).toBeLessThan(36_000);
});
