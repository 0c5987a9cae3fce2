import { expect, test } from 'vitest';
import { startSplitter } from './splitter.ts';

function splitOf(...pieces: (string | Uint8Array)[]) {
  const lines: string[] = [];
  let dropped = 0;
  const splitter = startSplitter({
    line: (text) => void lines.push(text),
    tooLong: () => void (dropped += 1),
  });
  for (const piece of pieces) splitter.take(Buffer.from(piece));
  return { lines, dropped, end: () => splitter.end() };
}

test('lines end at LF, CR or both, wherever the pieces part', () => {
  expect(splitOf('ab\r', '\nc', 'd\re', '\n\n').lines).toEqual(['ab', 'cd', 'e']);
});

test('what has no end yet is no line, until the end', () => {
  const lines = splitOf('ab\ncd');
  expect(lines.lines).toEqual(['ab']);
  lines.end();
  expect(lines.lines).toEqual(['ab', 'cd']);
});

test('a character may be cut in two', () => {
  const bytes = Buffer.from('3,5 µm\n');
  expect(splitOf(bytes.subarray(0, 5), bytes.subarray(5)).lines).toEqual(['3,5 µm']);
});

test('a line of 10 MB is dropped once, and the next one is read', () => {
  const { lines, dropped } = splitOf('x'.repeat(10_000_000), 'y\nP=4\n');
  expect([lines, dropped]).toEqual([['P=4'], 1]);
});
