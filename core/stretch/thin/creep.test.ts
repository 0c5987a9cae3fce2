import { expect, test } from 'vitest';
import { flowOf } from '../../steel/flow.ts';
import { metalOf } from '../../steel/plane.ts';
import { arrival, creepFor, creepRate, logarithmicCreep, netHardening, settle } from './creep.ts';
import { equivalentUnder, longCylinder, pressureMaximum, sphere, thinState, underHold } from './vessel.ts';

const flow = flowOf({ law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 });
const PER_HOUR = 1e-3 / 3600;

const held = (perEfold: number, on: 'yield' | 'curve' = 'yield') =>
  longCylinder(metalOf(200e3, 0.3, flow, { on, perEfold, reference: 1e-5 }), 301, 2);

test('growth in a hold and the time to settle agree: creeping for the settling time ends in the same state', () => {
  for (const vessel of [held(2.6), held(6.1, 'curve')]) {
    const start = arrival(vessel, 0.04, 2e-5);
    const settled = settle(vessel, start, PER_HOUR);
    const crept = creepFor(vessel, start, settled.time);
    expect(crept.state.hoop).toBeCloseTo(settled.state.hoop, 9);
    expect(settled.kind).toBe('settled');
  }
});

test('the rate at arrival is the rate asked for, up to the elastic strain', () => {
  const vessel = held(2.6);
  const start = arrival(vessel, 0.04, 2e-5);
  // The elastic hoop strain adds (1 - nu/2) 2/sqrt3 ds/(E dep), about 0.5 %.
  expect(creepRate(vessel, start.plastic, start.pressure).hoop / 2e-5).toBeCloseTo(1, 2);
});

test('a short hold follows the logarithmic law with its first net hardening', () => {
  const vessel = held(2.6);
  const start = arrival(vessel, 0.04, 2e-5);
  const { plastic: rate, decline } = creepRate(vessel, start.plastic, start.pressure);
  const law = logarithmicCreep(2.6, 2.6 * decline, rate, 60);
  const gained = creepFor(vessel, start, 60).state.plastic - start.plastic;
  // Over 60 s the strain grows by 0.001 and the hardening changes by about 2 %.
  expect(gained / law).toBeGreaterThan(0.985);
  expect(gained / law).toBeLessThan(1.015);
});

test('past the pressure maximum a hold runs away', () => {
  const vessel = held(2.6);
  const maximum = pressureMaximum(vessel);
  const start = arrival(vessel, 1.05 * (maximum?.hoop ?? 0), 2e-5);
  expect(settle(vessel, start, PER_HOUR).kind).toBe('runs away');
});

test('a sphere settles as well, and a steel without rate effect is refused', () => {
  const round = sphere(held(2.6).metal, 301, 2);
  expect(settle(round, arrival(round, 0.03, 2e-5), PER_HOUR).kind).toBe('settled');
  const dead = longCylinder(metalOf(200e3, 0.3, flow), 301, 2);
  expect(() => creepFor(dead, { plastic: 0.04, pressure: 2.5 }, 60)).toThrow('rate effect');
});

test('under a hold, stress and hoop strain follow the plastic strain as their differences say', () => {
  for (const vessel of [held(2.6), sphere(held(2.6).metal, 301, 2)]) {
    const [p, ep, d] = [2.41, 0.053, 1e-5];
    const at = (x: number) => thinState(vessel, x, equivalentUnder(vessel, x, p));
    const { stress, hoop } = underHold(vessel, at(ep).equivalent);
    expect((at(ep + d).equivalent - at(ep - d).equivalent) / (2 * d) / stress).toBeCloseTo(1, 7);
    expect((at(ep + d).hoop - at(ep - d).hoop) / (2 * d) / hoop).toBeCloseTo(1, 7);
    expect(at(ep).pressure).toBeCloseTo(p, 12);
  }
});

test('the flow stress at the creep rate is the stress that the pressure asks for', () => {
  const out = new Float64Array(2);
  for (const on of ['yield', 'curve'] as const) {
    const vessel = held(4.3, on);
    const { plastic, pressure } = arrival(vessel, 0.045, 3e-5);
    flow.at(plastic, out);
    const efolds = Math.log(creepRate(vessel, plastic, pressure).plastic / 1e-5);
    const proof = new Float64Array(2);
    flow.at(0.002, proof);
    const rise = 4.3 * efolds * (on === 'curve' ? out[0] / proof[0] : 1);
    // The floor of 1e-9 /s on the rate moves the logarithm by 1e-4.
    expect(equivalentUnder(vessel, plastic, pressure) - out[0]).toBeCloseTo(rise, 2);
  }
});

test('the rate falls by net hardening over the coefficient, and a shut valve hardens by the fall of pressure', () => {
  const vessel = held(2.6);
  const { plastic, pressure } = arrival(vessel, 0.04, 2e-5);
  const d = 1e-6;
  const [before, after] = [-d, d].map((x) =>
    Math.log(creepRate(vessel, plastic + x, pressure).plastic + 1e-9),
  );
  const hardening = netHardening(vessel, plastic, pressure);
  expect(((before - after) / (2 * d)) * 2.6).toBeCloseTo(hardening, 1);
  const s = equivalentUnder(vessel, plastic, pressure);
  const perPressure =
    (equivalentUnder(vessel, plastic, pressure + d) - equivalentUnder(vessel, plastic, pressure - d)) /
    (2 * d);
  expect(perPressure / (s / pressure)).toBeCloseTo(1, 2);
  expect(netHardening(vessel, plastic, pressure, 700) - hardening).toBeCloseTo((700 * s) / pressure, 6);
});
