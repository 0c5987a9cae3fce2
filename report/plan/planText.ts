/** A plan in a terminal: plain lines, the steps as a table, dangers largest first. */
import type { PlanSheet } from './planSheet.ts';
import type { Block, Section } from './sections.ts';

export function planText(sheet: PlanSheet): string[] {
  const onCard = new Set(sheet.card.cautions.map(({ id }) => id));
  return [
    sheet.serial === '' ? sheet.tank : `${sheet.tank}, ${sheet.serial}`,
    sheet.revision,
    ...(sheet.digest === '' ? [] : [sheet.digest]),
    ...(sheet.outOfDate === undefined ? [] : [sheet.outOfDate]),
    sheet.forecast,
    '',
    ...sheet.card.cautions.map((caution) => caution.text),
    '',
    ...stepTable(sheet),
    ...sheet.log.cautions.filter(({ id }) => !onCard.has(id)).map((caution) => caution.text),
    '',
    ...sheet.card.stops.map((stop, i) => (i === 0 ? `STOP and release on: ${stop}` : `  ${stop}`)),
    '',
    ...sheet.card.ifs,
    '',
    ...sheet.sections.flatMap(sectionLines),
  ];
}

function stepTable(sheet: PlanSheet): string[] {
  const { units } = sheet;
  const head = [
    '',
    '',
    units.pressure,
    ...sheet.girths.map((girth) => `${girth} +${units.girth}`),
    units.litres,
    ...(sheet.counts === 'strokes' ? ['strokes'] : []),
    'hold',
  ];
  const rows = sheet.steps.map((step) => [
    step.number,
    step.name,
    step.pressure,
    ...sheet.girths.map((_, i) => step.changes[i] ?? ''),
    step.litres,
    ...(sheet.counts === 'strokes' ? [step.strokes] : []),
    step.hold,
  ]);
  return aligned([head, ...rows], 2);
}

function sectionLines({ title, blocks }: Section): string[] {
  return [title.toUpperCase(), ...blocks.flatMap(blockLines), ''];
}

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case 'lines':
      return [...block.lines];
    case 'figures':
      return block.rows.map((row) => row.text);
    case 'cautions':
      return block.cautions.map((caution) => caution.text);
    case 'boxes':
      return block.items.map((item) => `[ ] ${item}`);
    case 'table':
      return aligned([block.head, ...block.rows], Infinity);
  }
}

/** Columns of one width each; those from `right` on stand to the right. */
function aligned(rows: readonly (readonly string[])[], right: number): string[] {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows.map((row) =>
    widths
      .map((width, i) => (i < right ? (row[i] ?? '').padEnd(width) : (row[i] ?? '').padStart(width)))
      .join('  ')
      .trimEnd(),
  );
}
