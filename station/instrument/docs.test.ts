/** The set-ups that docs/test-day.md shows are ones that the program takes. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { channelShape, lineFormatShape, sourceShape } from '@hoopwright/wire/reading';

const text = readFileSync(new URL('../../docs/test-day.md', import.meta.url), 'utf8');
/** Indented blocks that begin with a brace. */
const blocks = [...text.matchAll(/(?:^ {4}.*\n)+/gm)]
  .map(([block]) => block.trim())
  .filter((block) => block.startsWith('{'))
  .flatMap((block) => block.split(/\n\s*\n/));
const lines = [...text.matchAll(/`(\{"form".*?\})` \|/g)].map(([, line]) => line);

test('every kind of source is shown', () => {
  const kinds = blocks.map((block) => (JSON.parse(block) as { kind?: string }).kind ?? 'channel');
  expect(kinds).toEqual(['channel', 'csv', 'serial', 'mqtt', 'http', 'modbus tcp', 'modbus rtu']);
});

test.each(blocks)('%s', (block) => {
  const value: unknown = JSON.parse(block);
  const shape = typeof value === 'object' && value !== null && 'kind' in value ? sourceShape : channelShape;
  expect(shape.safeParse(value).error?.issues).toBeUndefined();
});

test('every form of a line is shown', () => {
  const forms = lines.map((line) => lineFormatShape.parse(JSON.parse(line)).form);
  expect(forms).toEqual(['fields', 'pairs', 'json']);
});
