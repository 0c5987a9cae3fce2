/** What one plan says, and why others are refused. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';
import { freeze, isWhole, outdated, readFrozen } from './freeze.ts';
import type { Plan } from './plan.ts';
import { type PlanAnswer, planFor, tankDigest } from './planFor.ts';
import type { Refusal } from './refusals.ts';

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
const fuel = JSON.parse(
  readFileSync(new URL('../../examples/dunlin-fuel.json', import.meta.url), 'utf8'),
) as TankFile;

type Day = NonNullable<TankFile['day']>;
const withDay = (change: Partial<Day>): TankFile => ({ ...fuel, day: { ...fuel.day, ...change } });
const withDuty = (change: Partial<NonNullable<TankFile['duty']>>): TankFile => ({
  ...fuel,
  duty: { ...(fuel.duty as NonNullable<TankFile['duty']>), ...change },
});

function answerFor(file: TankFile, range?: Parameters<typeof planFor>[0]['range']): PlanAnswer {
  const parsed = parseTankFile(file);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return planFor({
    ...parsed,
    program: 'test',
    hash,
    shell: { elements: 64, layers: 5 },
    ...(range && { range }),
  });
}

function planOf(file: TankFile): Plan {
  const answer = answerFor(file);
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  return answer.plan;
}

function refusal(file: TankFile, range?: Parameters<typeof answerFor>[1]): Refusal {
  const answer = answerFor(file, range);
  if (answer.kind === 'plan') throw new Error('a plan came, a refusal was wanted');
  expect(answer.reasons).toHaveLength(1);
  return answer.reasons[0];
}

const plan = planOf(fuel);

describe('a plan is refused, with the figures of its reason,', () => {
  test('where somebody would be needed at the tank above the approach pressure', () => {
    const readings: Day['readings'] = [{ girth: 'lower course', by: 'tape', resolution_mm: 0.5 }];
    expect(refusal(withDay({ readings }))).toEqual({
      code: 'someone at the tank',
      reads: 'girth',
      pressure_bar: 27,
      approach_bar: 2,
    });
  });

  test('where a girth is read at the tank and nobody may approach at any pressure', () => {
    const { approachPressure_bar: _, ...day } = fuel.day as Day;
    expect(refusal({ ...fuel, day })).toMatchObject({ code: 'someone at the tank', reads: 'zero' });
  });

  test('where the only gauge stands at the tank', () => {
    const gauges: Day['gauges'] = [{ name: 'dial', range_bar: 60, resolution_bar: 0.5, from: 'at the tank' }];
    expect(refusal(withDay({ gauges }))).toMatchObject({ code: 'someone at the tank', reads: 'pressure' });
  });

  test('where the relief valve opens under or at the stretch pressure', () => {
    expect(refusal(withDay({ relief: { opens_bar: 27, flow_L_per_min: 6 } }))).toEqual({
      code: 'relief under stretch',
      opens_bar: 27,
      target_bar: 27,
    });
  });

  test('where the relief valve passes less than the pump gives', () => {
    expect(refusal(withDay({ relief: { opens_bar: 28.5, flow_L_per_min: 0.5 } }))).toMatchObject({
      code: 'relief too small',
      flow_L_per_min: 0.5,
      pump_L_per_min: 0.75,
    });
  });

  test('where a gauge ends under the pressure at which the relief valve opens', () => {
    const gauges: Day['gauges'] = [{ name: 'short', range_bar: 28, resolution_bar: 0.2 }];
    expect(refusal(withDay({ gauges }))).toEqual({
      code: 'gauge range',
      name: 'short',
      range_bar: 28,
      needs_bar: 28.5,
    });
  });

  test('where the pump is made for less', () => {
    const pump: Day['pump'] = { mL_per_stroke: 25, strokes_per_min: 30, highest_bar: 25 };
    expect(refusal(withDay({ pump }))).toMatchObject({
      code: 'pump pressure',
      highest_bar: 25,
      target_bar: 27,
    });
  });

  test('where the pump cannot keep up with the first growth', () => {
    const pump: Day['pump'] = { mL_per_stroke: 2, strokes_per_min: 20, highest_bar: 60 };
    const reason = refusal(withDay({ pump, supply: { by: 'strokes', resolution_mL: 2 } }));
    expect(reason).toMatchObject({ code: 'pump too slow', flow_mL_per_min: 40 });
    // Ten times what the wall takes up at 0.1 %/h.
    if (reason.code === 'pump too slow')
      expect(reason.needs_mL_per_min).toBeCloseTo(10 * plan.leak.uptake_mL_per_min, 0);
  });

  test('where there is more air than the limit', () => {
    const wet = { ...fuel, water: { temperature_C: 16, trappedAir_L: 3 } };
    expect(refusal(wet)).toMatchObject({ code: 'air over limit', air_L: 3 });
    const own = withDay({
      limits: { trappedAir_L: { value: 4, by: 'person D', why: 'an old bleed valve' } },
    });
    expect(answerFor({ ...own, water: wet.water }).kind).toBe('plan');
  });

  test('where the target is above the pressure that 99 of 100 such tanks survive', () => {
    const range = () => ({ draws: [], burst: 0, survive99: { value: 28, assured: 26.5 / 10 }, basis: [] });
    expect(refusal(fuel, range)).toMatchObject({
      code: 'over 99 of 100',
      target_bar: 27,
      survive99_bar: 26.5,
    });
  });

  test('where the wall is strained beyond the evidence for its curve', () => {
    const flow = { law: 'points', plastic: [0, 0.01, 0.02, 0.03], stress_MPa: [240, 300, 335, 365] } as const;
    const short = {
      ...fuel,
      steel: {
        ...fuel.steel,
        flow: { ...flow, plastic: [...flow.plastic], stress_MPa: [...flow.stress_MPa] },
      },
    };
    expect(refusal(short)).toMatchObject({ code: 'beyond evidence', evidence_percent: 3 });
  });

  test('where the metal gives way before the target', () => {
    const reason = refusal({ ...withDuty({ workingPressure_bar: 40, holds: [] }), day: {} });
    expect(reason).toMatchObject({ code: 'bursts before target', target_bar: 60, end: { kind: 'seam' } });
  });

  test('where a reading names no girth of the tank', () => {
    const readings: Day['readings'] = [
      { girth: 'lower course', by: 'laser', resolution_mm: 0.1 },
      { girth: 'midle', by: 'laser', resolution_mm: 0.1 },
    ];
    expect(refusal(withDay({ readings }))).toMatchObject({ code: 'girth not drawn', girth: 'midle' });
  });

  test('where there is no duty', () => {
    const { duty: _, ...idle } = fuel;
    expect(refusal(idle)).toEqual({ code: 'no duty' });
  });

  test('with every reason at once, not the first one only', () => {
    const answer = answerFor(
      withDay({ relief: { opens_bar: 20 }, gauges: [{ name: 'short', range_bar: 10, resolution_bar: 0.1 }] }),
    );
    expect(answer.kind === 'refused' && answer.reasons.map((r) => r.code)).toEqual([
      'gauge range',
      'relief under stretch',
    ]);
  });
});

describe('the demo plan', () => {
  test('goes up to the duty, far below yield first, and never over the stretch pressure', () => {
    expect(plan.target.pressure_bar).toBe(27);
    const first = plan.steps.filter((s) => s.kind === 'first step' || s.kind === 'seat');
    for (const step of first)
      expect(step.pressure_bar).toBeLessThan(0.55 * (plan.target.firstYield_bar ?? 0));
    expect(first).toHaveLength(3);
    for (const step of plan.steps) expect(step.pressure_bar).toBeLessThanOrEqual(27);
  });

  test('counts strokes: litres over the stroke', () => {
    for (const { expected } of plan.steps)
      if (expected?.strokes) expect(expected.strokes.value).toBeCloseTo(expected.pumped_L.value / 0.025, 9);
    expect(plan.water.strokes?.value).toBeGreaterThan(400);
  });

  test('has its zero at the seating pressure, and for the tape where it is first read', () => {
    const seat = plan.steps.find((s) => s.kind === 'seat');
    const first = plan.steps.find((s) => s.kind === 'approach');
    expect(seat?.expected?.girths[1].change_mm.value).toBe(0);
    expect(first?.expected?.girths[0].change_mm.value).toBe(0);
    expect(first?.pressure_bar).toBe(2);
  });

  test('comes down elastically: what is left after the last reading at the tank is within 0.3 mm of the release', () => {
    const down = plan.steps.filter((s) => s.kind === 'approach').at(-1);
    const left = plan.steps.find((s) => s.kind === 'release');
    const slope = plan.firstStep.slopes[0].mm_per_bar;
    down?.expected?.girths.forEach((girth, i) => {
      const released = left?.expected?.girths[i].girth_mm.value ?? NaN;
      expect(girth.girth_mm.value - 2 * slope - released).toBeLessThan(0.3);
      expect(girth.girth_mm.value).toBeGreaterThan(released);
    });
  });

  test('gives the trapped air by hand, from two points of the first step', () => {
    const seat = plan.steps.find((s) => s.kind === 'seat')?.expected?.pumped_L.value ?? NaN;
    const last = plan.steps.filter((s) => s.kind === 'first step').at(-1)?.expected?.pumped_L.value ?? NaN;
    const { tank_L, share } = plan.firstStep.byHand;
    expect((last - seat - tank_L) / share).toBeCloseTo(0.2, 9);
    // Boyle: 6.0 and 1.0 bar, or where the points stand.
    const swallowed = (bar: number): number => bar / (bar + 1.01325);
    const [low, high] = [plan.steps[1], plan.steps[3]].map((s) => swallowed(s.pressure_bar));
    expect(share).toBeCloseTo(high - low, 9);
  });

  test('dangers stand largest first: energies, then forces', () => {
    const energies = plan.dangers.flatMap((d) => (d.kind === 'energy' ? [d.energy_J] : []));
    const forces = plan.dangers.flatMap((d) => (d.kind === 'plug' ? [d.force_kN] : []));
    expect(energies).toEqual([...energies].sort((a, b) => b - a));
    expect(forces).toEqual([...forces].sort((a, b) => b - a));
    expect(plan.dangers[0].kind).toBe('energy');
  });

  test('with three litres of air the air stands first', () => {
    const airy = planOf({
      ...withDay({ limits: { trappedAir_L: { value: 40, by: 'person D', why: 'to see it first' } } }),
      water: { temperature_C: 16, trappedAir_L: 30 },
    });
    expect(airy.dangers[0]).toMatchObject({ kind: 'energy', of: 'air', filling_L: 30 });
  });

  test('an edited limit stands beside its default, with name and reason', () => {
    expect(plan.limits.find((l) => l.limit === 'growthLeft_percent')).toEqual({
      limit: 'growthLeft_percent',
      value: 6,
      usual: 7,
      set: { by: 'person D (invented)', why: 'the skirt flange takes no more' },
    });
  });

  test('the growth allowed under pressure is the growth left and what springs back', () => {
    const under = plan.limits.find((l) => l.limit === 'growthUnderPressure_percent')?.value ?? NaN;
    const { held, left } = plan.target.growth_percent;
    expect(under - 6).toBeCloseTo(((held.value - left.value) * 1.06) / (1 + left.value / 100), 6);
  });

  test('without a day everything is assumed or open, and said so', () => {
    const { day: _, ...bare } = fuel;
    const plain = planOf(bare);
    expect(plain.assumed).toContain('approach pressure');
    expect(plain.open).toEqual(
      expect.arrayContaining(['relief valve', 'release', 'second gauge', 'chloride']),
    );
    expect(plain.approach_bar).toBe(0);
    expect(plain.places.every((p) => p.from === 'behind the wall')).toBe(true);
  });
});

describe('a frozen plan', () => {
  const seal = { name: 'first stretch', revision: 'A', date: '2026-10-03' };
  const frozen = freeze(plan, seal, hash);

  test('is whole as long as no character of it changes', () => {
    expect(isWhole(frozen, hash)).toBe(true);
    expect(isWhole({ ...frozen, frozen: { ...frozen.frozen, revision: 'B' } }, hash)).toBe(false);
    const bolder = { ...plan, target: { ...plan.target, pressure_bar: 27.1 } };
    expect(isWhole({ ...frozen, plan: bolder }, hash)).toBe(false);
  });

  test('comes back from its text, and does not where one digit was changed', () => {
    const text = JSON.stringify(frozen);
    expect(readFrozen(text, hash)).toEqual({ ok: true, frozen });
    const read = readFrozen(text.replace('"pressure_bar":27,', '"pressure_bar":28,'), hash);
    expect(read.ok ? [] : read.issues.map((i) => i.path)).toEqual(['frozen.digest']);
    expect(readFrozen('{"plan":1}', hash).ok).toBe(false);
    expect(readFrozen('{"plan":', hash).ok).toBe(false);
  });

  test('another revision has another digest', () => {
    expect(freeze(plan, { ...seal, revision: 'B' }, hash).frozen.digest).not.toBe(frozen.frozen.digest);
    expect(freeze(plan, seal, hash).frozen.digest).toBe(frozen.frozen.digest);
  });

  test('is out of date once the tank file or the program changes, not when its keys are set in another order', () => {
    const now = { tank: tankDigest(fuel, hash), program: 'test' };
    expect(outdated(plan, now)).toBeUndefined();
    const turned = Object.fromEntries(Object.entries(fuel).reverse()) as TankFile;
    expect(outdated(plan, { ...now, tank: tankDigest(turned, hash) })).toBeUndefined();
    expect(outdated(plan, { ...now, tank: tankDigest(withDuty({ workingPressure_bar: 17 }), hash) })).toBe(
      'tank changed',
    );
    expect(outdated(plan, { ...now, program: '0.2.0' })).toBe('program changed');
  });
});
