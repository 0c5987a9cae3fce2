import { describe, expect, it } from 'vitest';
import { clockGap } from './gap.ts';

const before = { run: 2, mono_ms: 5000, wall_ms: 1_790_000_000_000 };
const later = (mono: number, wall: number) => ({
  run: 2,
  mono_ms: 5000 + mono,
  wall_ms: before.wall_ms + wall,
});

describe('the clocks of a record', () => {
  it('leave no gap while they go the same way, however long the pause', () => {
    expect(clockGap(before, later(600_000, 600_400))).toBeUndefined();
  });
  it('leave a gap when the laptop slept: the wall clock ran on alone', () => {
    expect(clockGap(before, later(50, 60_050))).toEqual({ cause: 'parted', parted_ms: 60_000 });
  });
  it('leave a gap when the wall clock was set back', () => {
    expect(clockGap(before, later(2000, 700))).toEqual({ cause: 'parted', parted_ms: -1300 });
  });
  it('part at over 1 s, not at 1 s', () => {
    expect(clockGap(before, later(50, 1050))).toBeUndefined();
    expect(clockGap(before, later(50, 1051))).toMatchObject({ cause: 'parted' });
  });
  it('leave a gap when the program was started anew, whatever they show', () => {
    expect(clockGap(before, { ...later(50, 50), run: 3 })).toEqual({ cause: 'restart', parted_ms: 50 });
  });
});
