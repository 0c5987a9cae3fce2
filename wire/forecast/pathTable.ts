/** The path as a table: one row a moment, units in the head of the column. */
import type { ForecastFile, MomentFile } from './forecastFile.ts';

export type DecimalMark = '.' | ',';

/**
 * CSV of the path after RFC 4180. With a decimal comma the columns are parted by semicolons.
 * Figures are written to eight significant digits; a reader rounds, the file does not.
 */
export function pathTable(file: ForecastFile, mark: DecimalMark = '.'): string {
  const comma = mark === ',';
  const parted = comma ? ';' : ',';
  const girths = file.path[0]?.girths ?? [];
  const head = [
    'phase',
    'time_s',
    'pressure_bar',
    'growth_L',
    'pumped_L',
    'pumped_growth_L',
    'pumped_compression_L',
    'pumped_trapped_air_L',
    ...girths.flatMap(({ name }) => [quoted(`${name} girth_mm`), quoted(`${name} growth_percent`)]),
    'largest_growth_percent',
    'rise_mm',
    'thinnest_wall_mm',
  ];
  const rows = file.path.map((moment) => cells(moment, (x) => figure(x, mark)).join(parted));
  return `${[head.join(parted), ...rows].join('\r\n')}\r\n`;
}

function cells(moment: MomentFile, text: (x: number) => string): string[] {
  const { growth, compression, trappedAir } = moment.pumpedShares_L;
  return [
    moment.phase,
    ...[
      moment.time_s,
      moment.pressure_bar,
      moment.growth_L,
      moment.pumped_L,
      growth,
      compression,
      trappedAir,
    ].map(text),
    ...moment.girths.flatMap((g) => [text(g.girth_mm), text(g.growth_percent)]),
    ...[moment.largest.growth_percent, moment.rise_mm, moment.thinnestWall_mm].map(text),
  ];
}

const figure = (x: number, mark: DecimalMark): string => String(Number(x.toPrecision(8))).replace('.', mark);

const quoted = (text: string): string => (/[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
