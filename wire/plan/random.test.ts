/** 300 random tanks, pumps and sets of instruments: each gives a plan or a reason. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { type Dice, diceOf } from '@hoopwright/core/gauge';
import { canonical } from '../record/canonical.ts';
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';
import type { Foreseen } from './foresight/foresee.ts';
import { type Draw, heldKey, marksOf, type PlanRange } from './foresight/range.ts';
import type { Plan, Ranged } from './plan.ts';
import { type PlanAnswer, planFor } from './planFor.ts';

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
const TANKS = 300;
/** The plan's own logic is on trial here, not the mesh: a coarse shell is ten times as fast. */
const COARSE = { elements: 16, layers: 3 };

const between = (dice: Dice, low: number, high: number): number => low + (high - low) * dice.uniform();
const oneOf = <T>(dice: Dice, list: readonly T[]): T => list[dice.below(list.length)];
const maybe = <T extends object>(dice: Dice, chance: number, make: () => T): T | object =>
  dice.uniform() < chance ? make() : {};

function randomFile(dice: Dice): TankFile {
  const diameter = Math.round(between(dice, 120, 900));
  const wall = Number(between(dice, 0.8, 3.2).toFixed(1));
  const length = Math.round(diameter * between(dice, 0.5, 3));
  const yieldStress = between(dice, 210, 320);
  // Hoop stress at the stretch pressure from well under yield to far over what the steel bears.
  const hoop = between(dice, 180, 700);
  const target = (20 * hoop * wall) / diameter;
  const factor = oneOf(dice, [1.33, 1.5, 1.6]);
  const girths = ['low', 'middle', 'high'].map((name, i) => ({ name, at_mm: ((i + 1) * length) / 4 }));
  return {
    hoopwright: 1,
    name: 'random',
    barrel: { insideDiameter_mm: diameter, length_mm: length, wall_mm: wall },
    heads: { top: randomHead(dice, wall), bottom: randomHead(dice, wall) },
    girths,
    steel: {
      flow: {
        law: 'ludwik',
        yield_MPa: yieldStress,
        K_MPa: between(dice, 900, 1400),
        n: between(dice, 0.6, 0.8),
      },
      flowRate_per_s: 1e-4,
      ...maybe(dice, 0.8, () => ({
        rate: { on: 'yield', perEfold_MPa: between(dice, 1, 6), reference_per_s: 1e-5 } as const,
      })),
    },
    ...maybe(dice, 0.7, () => ({ stand: { axis: oneOf(dice, ['upright', 'lying'] as const) } })),
    water: { temperature_C: between(dice, 3, 28), trappedAir_L: between(dice, 0, 2) },
    duty: {
      workingPressure_bar: target / factor,
      stretchFactor: factor,
      ...maybe(dice, 0.7, () => ({ pump_L_per_min: between(dice, 0.02, 5) })),
      ...maybe(dice, 0.4, () => ({
        holds: [between(dice, 0.02, 0.98) * target, target].map((pressure_bar) => ({
          pressure_bar,
          minutes: between(dice, 5, 90),
        })),
      })),
    },
    day: randomDay(dice, target),
  };
}

const randomHead = (dice: Dice, wall: number): TankFile['heads']['top'] =>
  oneOf(dice, [
    { shape: 'semi-ellipsoidal', ratio: between(dice, 1.6, 2.4), wall_mm: wall * between(dice, 1, 2) },
    { shape: 'torispherical', standard: 'DIN 28013', wall_mm: wall * between(dice, 1, 2) },
    { shape: 'hemispherical', wall_mm: wall },
  ] as TankFile['heads']['top'][]);

const randomDay = (dice: Dice, target: number): object => ({
  ...maybe(dice, 0.6, () => ({
    pump: {
      mL_per_stroke: between(dice, 2, 60),
      strokes_per_min: between(dice, 5, 60),
      highest_bar: target * between(dice, 0.9, 4),
    },
  })),
  ...maybe(dice, 0.5, () => ({ approachPressure_bar: between(dice, 0, target / 8) })),
  ...maybe(dice, 0.6, () => ({
    gauges: [1, 2].map((k) => ({
      name: `gauge ${k}`,
      range_bar: target * between(dice, 0.9, 3),
      resolution_bar: target / between(dice, 40, 400),
      ...maybe(dice, 0.2, () => ({ from: 'at the tank' as const })),
    })),
  })),
  ...maybe(dice, 0.7, () => ({
    readings: ['low', 'middle', 'high'].map((girth) => ({
      girth,
      by: oneOf(dice, ['tape', 'draw-wire', 'laser', 'taped scale and camera'] as const),
      resolution_mm: between(dice, 0.02, 1),
    })),
  })),
  ...maybe(dice, 0.5, () => ({
    relief: { opens_bar: target * between(dice, 0.95, 1.2), flow_L_per_min: between(dice, 0.5, 10) },
  })),
  ...maybe(dice, 0.5, () => ({ thermometer: { resolution_K: 0.1 } })),
});

/** Days of other steels, made up around the one foreseen: what the plan does with ranges is on trial, not their size. */
function madeUpRange(dice: Dice, foreseen: Foreseen): PlanRange {
  const marks = marksOf(foreseen);
  const draws = Array.from({ length: 40 }, (): Draw => {
    const k = Math.exp(0.15 * dice.normal());
    const scaled = [...marks].map(([key, mark]) => [
      key,
      {
        ...mark,
        pumped: { ...mark.pumped, all: k * mark.pumped.all },
        girths: mark.girths.map((girth, i) => girth * (1 + (k - 1) * mark.growths[i])),
        growths: mark.growths.map((growth) => k * growth),
        largest: k * mark.largest,
      },
    ]);
    return { marks: Object.fromEntries(scaled), rest: k * foreseen.rest.time, pumping: k };
  });
  return { draws, burst: 0, basis: ['made up'] };
}

function answerFor(seed: number): {
  readonly file: TankFile;
  readonly answer: PlanAnswer;
  readonly ranged: boolean;
} {
  const dice = diceOf(seed);
  const file = randomFile(dice);
  const parsed = parseTankFile(file, { asGiven: true });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const ranged = dice.uniform() < 0.5;
  const answer = planFor({
    ...parsed,
    program: 'test',
    hash,
    shell: COARSE,
    ...(ranged ? { range: (foreseen: Foreseen) => madeUpRange(dice.named('range'), foreseen) } : {}),
  });
  return { file, answer, ranged };
}

const all = Array.from({ length: TANKS }, (_, i) => ({ seed: 7000 + i, ...answerFor(7000 + i) }));
const plans = all.flatMap(({ seed, answer, ranged }) =>
  answer.kind === 'plan' ? [{ seed, plan: answer.plan, foreseen: answer.foreseen, ranged }] : [],
);

describe('300 random tanks, pumps and sets of instruments', () => {
  test('each give a plan or a reason', () => {
    for (const { seed, answer } of all)
      if (answer.kind === 'refused') expect(answer.reasons, `seed ${seed}`).not.toHaveLength(0);
    expect(plans.length).toBeGreaterThan(TANKS / 6);
    const codes = new Set(
      all.flatMap(({ answer }) => (answer.kind === 'refused' ? answer.reasons.map((r) => r.code) : [])),
    );
    expect([...codes].sort()).toEqual([
      'air over limit',
      'bursts before target',
      'gauge range',
      'pump pressure',
      'pump too slow',
      'relief too small',
      'relief under stretch',
      'someone at the tank',
    ]);
  });

  test('steps rise, but to come down for a reading at the tank', () => {
    for (const { plan, seed } of plans) {
      const climb = plan.steps.filter((s) => !['fill', 'approach', 'release', 'drain'].includes(s.kind));
      climb.slice(1).forEach((step, i) => {
        const rise = step.pressure_bar - climb[i].pressure_bar;
        if (step.kind === 'hold' || step.kind === 'final hold') expect(rise, `seed ${seed}`).toBe(0);
        else expect(rise, `seed ${seed}`).toBeGreaterThan(0);
      });
      expect(climb.at(-1)?.pressure_bar).toBe(plan.target.pressure_bar);
    }
  });

  test('release and drain stand last, the vent is shut first', () => {
    for (const { plan } of plans) {
      expect(plan.steps[0].kind).toBe('fill');
      expect(plan.steps.slice(-2).map((s) => s.kind)).toEqual(['release', 'drain']);
      expect(plan.steps.at(-1)?.pressure_bar).toBe(0);
    }
  });

  test('litres add up, step by step and share by share', () => {
    for (const { plan } of plans) {
      let sum = 0;
      for (const { expected } of plan.steps) {
        if (expected === undefined) continue;
        sum += expected.more_L;
        expect(sum).toBeCloseTo(expected.pumped_L.value, 9);
      }
      const { growth, compression, trappedAir } = plan.water.shares_L;
      expect(growth + compression + trappedAir).toBeCloseTo(plan.water.pump_L.value, 9);
      const end = plan.steps.find((s) => s.kind === 'final hold');
      expect(end?.expected?.pumped_L.value).toBeCloseTo(plan.water.pump_L.value, 9);
    }
  });

  test('ranges contain their medians, and stand where there is a range of steel and only there', () => {
    for (const { plan, ranged } of plans) {
      for (const one of rangesIn(plan)) {
        if (!ranged) expect(one).toEqual({ value: one.value });
        else {
          expect(one.low).toBeLessThanOrEqual(one.value);
          expect(one.high).toBeGreaterThanOrEqual(one.value);
        }
      }
    }
  });

  test('every step that reads has figures for every girth, and every figure is a number', () => {
    for (const { plan } of plans) {
      expect(() => canonical(plan)).not.toThrow();
      for (const step of plan.steps.filter((s) => s.reads.length > 0))
        expect(step.expected?.girths.map((g) => g.name)).toEqual(['low', 'middle', 'high']);
    }
  });

  test('nobody reads at the tank above the approach pressure', () => {
    let near = 0;
    for (const { plan } of plans) {
      const atTank = plan.places.filter((p) => p.from === 'at the tank').map((p) => p.name);
      for (const step of plan.steps) {
        const there = step.reads.filter((name) => atTank.includes(name));
        near += there.length;
        if (there.length > 0) expect(step.pressure_bar).toBeLessThanOrEqual(plan.approach_bar);
      }
    }
    expect(near).toBeGreaterThan(0);
  });

  test('a step at the tank is come down to from above', () => {
    for (const { plan } of plans)
      plan.steps.forEach((step, i) => {
        if (step.kind === 'approach')
          expect(plan.steps[i - 1].pressure_bar).toBeGreaterThanOrEqual(step.pressure_bar);
      });
  });

  test('a hold of 10 min or more stands near a quarter of the growth, or on the nearest line it may stand on', () => {
    let quarters = 0;
    for (const { plan, foreseen, seed } of plans) {
      const held = marksOf(foreseen).get(heldKey(foreseen.ladder.target))?.largest ?? NaN;
      const under = plan.target.pressure_bar - 1.01 * plan.unit_bar;
      const over = 10 * foreseen.ladder.first[2] + 1.01 * plan.unit_bar;
      const long = plan.steps.filter((s) => s.kind === 'hold' && (s.hold?.minutes.value ?? 0) >= 10);
      expect(long.length, `seed ${seed}`).toBeGreaterThan(0);
      if (long.some((s) => s.pressure_bar >= under || s.pressure_bar <= over)) continue;
      quarters++;
      const shares = long.map((s) => growthAt(foreseen, s.pressure_bar / 10) / held);
      expect(Math.min(...shares.map((x) => Math.abs(x - 0.25))), `seed ${seed}`).toBeLessThan(0.16);
    }
    expect(quarters).toBeGreaterThan(20);
  });

  test('the same file gives the same plan, to the last digit', () => {
    const { seed, plan } = plans[0];
    const again = answerFor(seed).answer;
    expect(again.kind === 'plan' && canonical(again.plan)).toBe(canonical(plan));
  });
});

function growthAt({ forecast }: Foreseen, pressure: number): number {
  const climb = forecast.path.filter((m) => m.phase === 'stretch');
  return climb.find((m) => m.pressure >= pressure * (1 - 1e-6))?.largest.growth ?? NaN;
}

function rangesIn(plan: Plan): Ranged[] {
  const steps = plan.steps.flatMap(({ expected, hold, kind }) => [
    ...(expected === undefined
      ? []
      : [expected.pumped_L, ...expected.girths.flatMap((g) => [g.girth_mm, g.change_mm, g.growth_percent])]),
    ...(hold === undefined || kind === 'hold' ? [] : [hold.minutes]),
  ]);
  return [...steps, plan.water.pump_L, ...Object.values(plan.target.growth_percent)];
}
