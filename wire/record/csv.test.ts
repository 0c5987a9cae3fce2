import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { readingsCsv } from './csv.ts';
import type { Entry } from './entry.ts';
import { sampleAbout } from './sample.ts';

const at = { run: 1, wall_ms: Date.UTC(2026, 4, 3, 9, 30, 1, 250) };
const entries: Entry[] = [
  { ...at, seq: 1, mono_ms: 1500.5, kind: 'reading', body: { values: { P1: 12.75, G2: 1257.125 } } },
  { ...at, seq: 2, mono_ms: 1600, kind: 'remark', body: { text: 'not a reading' } },
  { ...at, seq: 3, mono_ms: 1700, kind: 'gap', body: { cause: 'parted', parted_ms: 4200 } },
  { ...at, seq: 4, mono_ms: 1800, kind: 'correction', body: { corrects: 1, values: { G2: -0.5 } } },
];
const columns = [
  { channel: 'P1', unit: 'bar' },
  { channel: 'G2', unit: 'mm, tape' },
];

describe('readings as CSV', () => {
  it('read back by a CSV library are the readings, corrections and gaps, and nothing for a silent channel', () => {
    const text = [...readingsCsv(sampleAbout, entries, { columns, decimal: '.' })].join('\r\n');
    const rows = parse(text, { columns: true });
    expect(rows).toHaveLength(3);
    expect(rows[0]).toMatchObject({ entry: '1', 'P1 [bar]': '12.75', 'G2 [mm, tape]': '1257.125' });
    expect(rows[0]).toMatchObject({ UTC: '2026-05-03T09:30:01.250Z', 'since start [s]': '1.5005' });
    expect(rows[1]).toMatchObject({ what: 'gap', 'P1 [bar]': '', 'G2 [mm, tape]': '' });
    expect(rows[2]).toMatchObject({
      what: 'correction',
      corrects: '1',
      'P1 [bar]': '',
      'G2 [mm, tape]': '-0.5',
    });
  });

  it('say in every row that a rehearsal is one', () => {
    const [, ...rows] = readingsCsv(sampleAbout, entries, { columns, decimal: '.' });
    expect(rows.every((row) => row.startsWith('rehearsal,'))).toBe(true);
  });

  it('with a decimal comma are parted by semicolons', () => {
    const [head, first] = readingsCsv(sampleAbout, entries, { columns, decimal: ',' });
    expect(head).toContain('G2 [mm, tape]');
    expect(first).toContain('12,75;1257,125');
  });

  it('never hand a spreadsheet a formula', () => {
    const hostile = [{ channel: '=1+cmd', unit: '"' }];
    const [head] = readingsCsv(sampleAbout, [], { columns: hostile, decimal: '.' });
    expect(head).toContain(`"'=1+cmd [""]"`);
  });
});
