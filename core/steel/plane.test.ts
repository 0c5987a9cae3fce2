import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { flowOf } from './flow.ts';
import type { FlowLaw } from './hardening.ts';
import {
  ANSWER_LENGTH,
  HOOP,
  MERIDIONAL,
  type Metal,
  metalOf,
  PLASTIC_EQ,
  PLASTIC_H,
  PLASTIC_M,
  RATE_FLOOR,
  returnToYield,
  TANGENT_HH,
  TANGENT_MH,
  TANGENT_MM,
} from './plane.ts';
import type { RateEffect } from './steel.ts';

const E = 193_000;
const NU = 0.29;
const LAWS: FlowLaw[] = [
  { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
  { law: 'voce', yield: 249, rise: 1031, steepness: 2.18 },
  { law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 },
  { law: 'two-slope', Rp02: 260, Rm: 590 },
];
const RATES: (RateEffect | undefined)[] = [
  undefined,
  { on: 'yield', perEfold: 3.1, reference: 2e-5 },
  { on: 'curve', perEfold: 4.3, reference: 1e-4 },
];
const metals = LAWS.flatMap((law) =>
  RATES.map((rate) => ({
    name: `${law.law}, ${rate === undefined ? 'no rate effect' : `rate on ${rate.on}`}`,
    metal: metalOf(E, NU, flowOf(law), rate),
    rate,
  })),
);

const answerTo = (metal: Metal, m: number, h: number, ep: number, time: number, guess = 0): Float64Array => {
  const out = new Float64Array(ANSWER_LENGTH);
  returnToYield(metal, m, h, ep, time, out, guess);
  return out;
};

const mises = (out: Float64Array): number =>
  Math.sqrt(out[MERIDIONAL] ** 2 - out[MERIDIONAL] * out[HOOP] + out[HOOP] ** 2);

/** Flow stress at a plastic strain reached by `x` within `time`, worked out here from the law. */
function flowAt(metal: Metal, rate: RateEffect | undefined, ep: number, x: number, time: number): number {
  const out = new Float64Array(2);
  metal.flow.at(ep + x, out);
  if (rate === undefined || time === 0) return out[0];
  const efolds = Math.log(x / time + RATE_FLOOR) - Math.log(rate.reference + RATE_FLOOR);
  const proof = new Float64Array(2);
  metal.flow.at(0.002, proof);
  return rate.on === 'yield'
    ? out[0] + rate.perEfold * efolds
    : out[0] * (1 + (rate.perEfold / proof[0]) * efolds);
}

/** Trial strains of every direction, from just past yield to a percent past it. */
function* trials(seed: number, n: number): Generator<{ m: number; h: number; ep: number; time: number }> {
  const dice = diceOf(seed);
  for (let i = 0; i < n; i++) {
    const angle = 2 * Math.PI * dice.uniform();
    const size = 10 ** (-2.7 + 0.9 * dice.uniform());
    const ep = 0.25 * dice.uniform() ** 2;
    yield { m: size * Math.cos(angle), h: size * Math.sin(angle), ep, time: 10 ** (4 * dice.uniform()) };
  }
}

describe.each(metals)('$name', ({ metal, rate }) => {
  test('the stress is Hooke on what is left of the strain, and stands on the curve', () => {
    let yielded = 0;
    for (const { m, h, ep, time } of trials(7, 200)) {
      const out = answerTo(metal, m, h, ep, time);
      const [em, eh] = [m - out[PLASTIC_M], h - out[PLASTIC_H]];
      const wide = E / (1 - NU * NU);
      // What one straight step leaves (see NEAR): under 1e-6 of the stress.
      expect(Math.abs(out[MERIDIONAL] - wide * (em + NU * eh))).toBeLessThan(1e-6 * E * Math.hypot(m, h));
      expect(Math.abs(out[HOOP] - wide * (eh + NU * em))).toBeLessThan(1e-6 * E * Math.hypot(m, h));
      const flow = flowAt(metal, rate, ep, out[PLASTIC_EQ], time);
      if (out[PLASTIC_EQ] > 0) {
        yielded++;
        expect(Math.abs(mises(out) / flow - 1)).toBeLessThan(2e-6);
      } else expect(mises(out)).toBeLessThan(flow * (1 + 1e-6));
    }
    expect(yielded).toBeGreaterThan(100);
  });

  test('plastic strain flows at right angles to the ellipse, and its equivalent is its work over the stress', () => {
    for (const { m, h, ep, time } of trials(11, 100)) {
      const out = answerTo(metal, m, h, ep, time);
      const [s1, s2, x] = [out[MERIDIONAL], out[HOOP], out[PLASTIC_EQ]];
      const s = mises(out);
      expect(Math.abs(out[PLASTIC_M] - (x * (s1 - 0.5 * s2)) / s)).toBeLessThan(1e-6 * x + 1e-18);
      expect(Math.abs(out[PLASTIC_H] - (x * (s2 - 0.5 * s1)) / s)).toBeLessThan(1e-6 * x + 1e-18);
    }
  });

  test('the tangent is the difference of the stresses', () => {
    const d = 1e-7;
    for (const { m, h, ep, time } of trials(13, 100)) {
      const x = answerTo(metal, m, h, ep, time)[PLASTIC_EQ];
      // A tangent has no meaning at the kink between elastic and plastic.
      if (x < 1e-6) continue;
      // From there on the increment is guessed well, as in the last iterations of a step: no straight step is left.
      const out = answerTo(metal, m, h, ep, time, x);
      const at = (dm: number, dh: number): Float64Array => answerTo(metal, m + dm, h + dh, ep, time, x);
      const slope = (dm: number, dh: number, slot: number): number =>
        (at(dm, dh)[slot] - at(-dm, -dh)[slot]) / (2 * d);
      expect(Math.abs(slope(d, 0, MERIDIONAL) - out[TANGENT_MM])).toBeLessThan(2e-4 * E);
      expect(Math.abs(slope(0, d, MERIDIONAL) - out[TANGENT_MH])).toBeLessThan(2e-4 * E);
      expect(Math.abs(slope(d, 0, HOOP) - out[TANGENT_MH])).toBeLessThan(2e-4 * E);
      expect(Math.abs(slope(0, d, HOOP) - out[TANGENT_HH])).toBeLessThan(2e-4 * E);
    }
  });

  test('whatever increment is guessed, the answer is the same', () => {
    for (const { m, h, ep, time } of trials(17, 100)) {
      const out = answerTo(metal, m, h, ep, time);
      for (const guess of [1e-12, 0.3 * out[PLASTIC_EQ], 1.01 * out[PLASTIC_EQ], 4e-3, 0.9]) {
        const other = answerTo(metal, m, h, ep, time, guess);
        expect(Math.abs(other[MERIDIONAL] - out[MERIDIONAL])).toBeLessThan(2e-6 * mises(out));
        expect(Math.abs(other[HOOP] - out[HOOP])).toBeLessThan(2e-6 * mises(out));
      }
    }
  });
});

test('under the curve the answer is elastic, and a point left on the curve stays elastic until strained further', () => {
  const [{ metal }] = metals;
  const before = answerTo(metal, 0.0011, 0.0024, 0.01, 0);
  const [m, h] = [0.0011 - before[PLASTIC_M], 0.0024 - before[PLASTIC_H]];
  const again = answerTo(metal, m, h, 0.01 + before[PLASTIC_EQ], 0);
  expect(again[PLASTIC_EQ]).toBe(0);
  expect(again[TANGENT_MM]).toBeCloseTo(E / (1 - NU * NU), 6);
  expect(answerTo(metal, m * 1.001, h * 1.001, 0.01 + before[PLASTIC_EQ], 0)[PLASTIC_EQ]).toBeGreaterThan(0);
});

test('without time the rate effect is left out', () => {
  const dead = metals[0].metal;
  const quick = metals[1].metal;
  expect(answerTo(quick, 0.0011, 0.0024, 0.01, 0)).toEqual(answerTo(dead, 0.0011, 0.0024, 0.01, 0));
});

test('ten times the time takes off 2.303 times the coefficient', () => {
  const metal = metals[1].metal;
  const [slow, fast] = [300, 30].map((time) => answerTo(metal, 0.0031, 0.0064, 0.02, time));
  // Both at the strain that each reached: the curve between them is straight.
  const flow = new Float64Array(2);
  metal.flow.at(0.02 + slow[PLASTIC_EQ], flow);
  const curve = flow[1] * (fast[PLASTIC_EQ] - slow[PLASTIC_EQ]);
  const rates = Math.log(fast[PLASTIC_EQ] / 30 / (slow[PLASTIC_EQ] / 300));
  expect(mises(fast) - mises(slow) - curve).toBeCloseTo(3.1 * rates, 3);
});

test('at rest the flow stress is finite: the floor of the rate stands under the logarithm', () => {
  const metal = metals[1].metal;
  const out = answerTo(metal, 0.0009, 0.0013, 0.02, 1e12);
  const flow = new Float64Array(2);
  metal.flow.at(0.02, flow);
  expect(Number.isFinite(mises(out))).toBe(true);
  expect(mises(out)).toBeGreaterThan(flow[0] + 3.1 * Math.log(RATE_FLOOR / 2e-5) - 0.1);
});

test('a millionth of a step past the curve is settled as well as a percent past it', () => {
  for (const { metal } of metals) {
    const flow = new Float64Array(2);
    metal.flow.at(0.03, flow);
    // Twice as much around as along: plane strain.
    const strain = flow[0] / (Math.sqrt(0.75) * (E / (1 - NU / 2)));
    for (const past of [1e-9, 1e-7, 1e-5, 1e-3, 1e-2]) {
      const h = strain * (1 + past);
      const out = answerTo(metal, (h * (0.5 - NU)) / (1 - NU / 2), h, 0.03, 50);
      expect(Number.isFinite(out[HOOP] + out[TANGENT_HH])).toBe(true);
    }
  }
});

test('a coefficient too large for any steel still leaves a tenth of the curve at rest', () => {
  const metal = metalOf(E, NU, flowOf(LAWS[0]), { on: 'yield', perEfold: 60, reference: 1e-4 });
  const flow = new Float64Array(2);
  for (const size of [1e-4, 1e-3, 5e-3]) {
    const out = answerTo(metal, 0.2 * size, size, 0.02, 1e9);
    metal.flow.at(0.02 + out[PLASTIC_EQ], flow);
    if (out[PLASTIC_EQ] > 0) expect(mises(out)).toBeGreaterThan(0.0999 * flow[0]);
    else expect(mises(out)).toBeLessThan(0.1001 * flow[0]);
  }
});
