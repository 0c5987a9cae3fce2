import { expect, test } from 'vitest';
import { judgedDays } from './days.ts';

// Three days here; the soak (bench/advice.soak.ts) has five hundred.
test('rehearsed days with faults: no advice over the stretch pressure, none quiet with old readings, no stop without reason and reading', () => {
  const found = judgedDays(3, 90_005);
  expect(found).toMatchObject({ over: 0, quietWhileStale: 0, bareStops: 0 });
  expect(found.staleLooks).toBeGreaterThan(30);
  expect(found.forecasts).toBeGreaterThan(20);
  expect(found.advices).toBeGreaterThan(8);
});
