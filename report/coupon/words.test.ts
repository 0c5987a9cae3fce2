import type { CouponFinding } from '@hoopwright/core/steel';
import { expect, test } from 'vitest';
import { findingText, verdictText } from './words.ts';

const FINDINGS: readonly CouponFinding[] = [
  { kind: 'no-slope', why: 'few', points: 4 },
  { kind: 'no-slope', why: 'poor', points: 23, scatter: 0.047 },
  { kind: 'no-slope', why: 'poor', points: 23, scatter: Infinity },
  { kind: 'no-slope', why: 'outside', young: 141_300 },
  { kind: 'toe', strain: 0.0012 },
  { kind: 'toe-left', strain: 0.0007 },
  { kind: 'slack' },
  { kind: 'begins-loaded', stress: 61 },
  { kind: 'begins-late', strain: 0.0043 },
  { kind: 'loop', at: 31, from: 312, to: 47 },
  { kind: 'let-go', at: 90, stress: 402 },
  { kind: 'lone-point', at: 12, of: 'strain', value: 0.31 },
  { kind: 'lone-point', at: 13, of: 'stress', value: 4120 },
  { kind: 'slip', at: 57, strain: 0.0083, plastic: 0.031 },
  { kind: 'dip', at: 58, drop: 23 },
  { kind: 'grip-slip', at: 59, drop: 71, strain: 0.019, plastic: 0.04 },
  { kind: 'gap', at: 60, strain: 0.02 },
  { kind: 'gauge-off', at: 61, strain: 0.151 },
  { kind: 'outside-gauge', at: 62 },
  { kind: 'no-neck', at: 63, strain: 0.21 },
  { kind: 'ends-rising', stress: 451, strain: 0.118 },
  { kind: 'flat-top', at: 64, stress: 500 },
  { kind: 'ends-at-maximum' },
  { kind: 'ends-before-break', ratio: 0.81 },
  { kind: 'crosshead' },
  { kind: 'sparse', of: 'Rp0.2', from: 215, to: 244 },
  { kind: 'few-points', points: 6 },
  { kind: 'short', plastic: 0.034 },
  { kind: 'no-rate', why: 'no time' },
  { kind: 'no-rate', why: 'time runs back' },
  { kind: 'no-rate', why: 'few points' },
  { kind: 'rate-varies', factor: 27 },
  { kind: 'rate-unusual', rate: 0.0147 },
  { kind: 'unlike', of: 'Rp0.2', value: 41 },
  { kind: 'unlike', of: 'Rm', value: 3999 },
  { kind: 'unlike', of: 'Ag', value: 2.1 },
];

test('every kind of finding has its sentence, with all its figures written', () => {
  for (const finding of FINDINGS) {
    const text = findingText(finding);
    expect(text).not.toMatch(/[{}]|undefined|NaN/);
    expect(text.length).toBeGreaterThan(20);
  }
});

test('a finding with a place names its line in the file', () => {
  const text = findingText({ kind: 'slip', at: 57, strain: 0.0083, plastic: 0.031 }, (at) => at + 4);
  expect(text).toBe(
    'line 61: the extension jumps by 0.83 % while the force does not follow: the extensometer slipped; strains from here on are not used',
  );
});

test('a verdict says why a test is not used', () => {
  expect(verdictText({ usable: true, reasons: [] })).toBe('may be used');
  expect(verdictText({ usable: false, reasons: [{ kind: 'short', plastic: 0.034 }] })).toBe(
    'not used: the curve can be trusted only up to 3.40 % plastic strain, less than a stretch needs',
  );
});
