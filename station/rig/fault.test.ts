import { expect, test } from 'vitest';
import { readFault } from './fault.ts';

test('a fault is a name and a time after the vent is shut', () => {
  expect(readFault('leak@45min')).toEqual({ ok: true, fault: { name: 'leak', at: 2700 } });
  expect(readFault('burst@1h10min')).toEqual({ ok: true, fault: { name: 'burst', at: 4200 } });
  expect(readFault('wire-slipping@90s')).toEqual({ ok: true, fault: { name: 'wire-slipping', at: 90 } });
});

test('what is in the tank from the start has no time', () => {
  expect(readFault('soft-course')).toEqual({ ok: true, fault: { name: 'soft-course', at: 0 } });
  expect(readFault('air@20min')).toEqual({ ok: false, why: expect.stringContaining('from the start') });
});

test.each(['leak', 'leak@', 'leak@soon', 'flood@3min', 'leak@3min@4min', ''])(
  '"%s" is refused in words',
  (text) => {
    const read = readFault(text);
    expect(read).toEqual({ ok: false, why: expect.stringMatching(/^--fault .*wanted/) });
  },
);
