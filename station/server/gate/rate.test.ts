import { describe, expect, it } from 'vitest';
import { startBuckets } from './rate.ts';

describe('a rate', () => {
  it('lets a burst through, then so many a second, and says how long to wait', () => {
    let now = 500;
    const wait = startBuckets({ burst: 3, perSecond: 4 }, () => now);
    expect([wait('a'), wait('a'), wait('a'), wait('a')]).toEqual([0, 0, 0, 0.25]);
    now += 100;
    expect(wait('a')).toBeCloseTo(0.15, 12);
    now += 150;
    expect([wait('a'), wait('a')]).toEqual([0, 0.25]);
    now += 1e9;
    expect([wait('a'), wait('a'), wait('a'), wait('a')]).toEqual([0, 0, 0, 0.25]);
  });

  it('counts each place by itself, and does not remember them without end', () => {
    const now = 500;
    const wait = startBuckets({ burst: 1, perSecond: 1 }, () => now);
    expect([wait('a'), wait('b'), wait('a')]).toEqual([0, 0, 1]);
    for (let i = 0; i < 2000; i += 1) wait(`place ${i}`);
    expect(wait('a')).toBe(0);
  });
});
