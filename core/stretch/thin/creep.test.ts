import { expect, test } from 'vitest';
import { flowOf } from '../../steel/flow.ts';
import { metalOf } from '../../steel/plane.ts';
import { arrival, creepFor, creepRate, logarithmicCreep, settle } from './creep.ts';
import { longCylinder, pressureMaximum, sphere } from './vessel.ts';

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
