import { expect, test } from 'vitest';
import {
  airCompliance,
  airSwallows,
  airVolume,
  drawnPerPressure,
  waterCompliance,
  waterCompression,
  waterDensity,
} from './water.ts';

test('the compliances are the derivatives of what is drawn', () => {
  const d = 1e-4;
  for (const p of [0.03, 0.7, 2.6]) {
    const water = (waterCompression(351e6, p + d, 13) - waterCompression(351e6, p - d, 13)) / (2 * d);
    expect(water / waterCompliance(351e6, p, 13)).toBeCloseTo(1, 6);
    const air = (airSwallows(1.3e6, p + d) - airSwallows(1.3e6, p - d)) / (2 * d);
    // Second derivative of 1/p over p: (d/p)^2, 1e-6 at 0.03 MPa gauge.
    expect(air / airCompliance(1.3e6, p)).toBeCloseTo(1, 5);
  }
});

test('air and what it swallows make up the air at filling', () => {
  expect(airVolume(1.3e6, 1.7) + airSwallows(1.3e6, 1.7)).toBeCloseTo(1.3e6, 6);
});

test('the shares of a litre per bar add up', () => {
  const barrel = { volume: 351e6, radius: 301, wall: 2.1, young: 193e3, poisson: 0.29 };
  const drawn = drawnPerPressure(barrel, 13, 0.4e6, 0.3);
  expect(drawn.wall + drawn.water + drawn.air).toBeCloseTo(drawn.all, 6);
  expect(drawn.air).toBeGreaterThan(0);
});

test('ice and steam are refused', () => {
  expect(() => waterDensity(-1)).toThrow('between 0 and 100');
  expect(() => waterDensity(Number.NaN)).toThrow('between 0 and 100');
});
