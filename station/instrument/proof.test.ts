import { expect, test } from 'vitest';
import { startProof } from './proof.ts';
import type { SourceState } from './source.ts';

function proofOf(numbers: readonly (string | undefined)[], begins?: string) {
  const states: SourceState[] = [];
  let next = 0;
  const proof = startProof({
    serialNumber: () => numbers[next++],
    state: (state) => void states.push(state),
    ...(begins === undefined ? {} : { begins }),
  });
  return { proof, kinds: () => states.map(({ kind }) => kind), last: () => states.at(-1) };
}

test('the first time a source is taken to be itself', () => {
  const { proof, kinds } = proofOf([undefined]);
  proof.opened();
  expect(kinds()).toEqual(['open']);
  expect(proof.line('P=3.5')).toBe(true);
});

test('it comes back by itself with the serial number it had', () => {
  const { proof, kinds } = proofOf(['A7', 'A7']);
  proof.opened();
  proof.opened();
  expect(kinds()).toEqual(['open', 'open']);
});

test('with another serial number it waits, and says which; its lines are not taken until somebody accepts it', () => {
  const { proof, last } = proofOf(['A7', 'B2']);
  proof.opened();
  proof.opened();
  expect(last()).toEqual({ kind: 'unproved', why: 'its serial number was A7 and is B2' });
  expect(proof.line('P=3.5')).toBe(false);
  proof.accept();
  expect(last()).toEqual({ kind: 'open' });
  expect(proof.line('P=3.5')).toBe(true);
});

test('without a serial number a line that it begins with proves it, and is no reading', () => {
  const { proof, kinds } = proofOf([undefined, undefined], '#box 7');
  proof.opened();
  expect(proof.line('#box 7, firmware 2')).toBe(false);
  proof.opened();
  expect(proof.line('P=3.5')).toBe(false);
  expect(proof.line('#box 7, firmware 2')).toBe(false);
  expect(proof.line('P=3.5')).toBe(true);
  expect(kinds()).toEqual(['open', 'unproved', 'open']);
});

test('a name that comes after twenty lines of somebody else proves nothing', () => {
  const { proof, kinds } = proofOf([undefined, undefined], '#box 7');
  proof.opened();
  proof.opened();
  for (let i = 0; i < 20; i++) proof.line('P=3.5');
  proof.line('#box 7');
  expect(kinds()).toEqual(['open', 'unproved']);
});

test('to accept what nobody doubts does nothing', () => {
  const { proof, kinds } = proofOf(['A7']);
  proof.opened();
  proof.accept();
  expect(kinds()).toEqual(['open']);
});
