/** What was foreseen, where many forecasts were made: a band with a fine median line. */
import { type Fill, type Mark, stroke } from '../sheet/mark.ts';
import { between, clipped, onPanel, type Panel, type Place } from './panel.ts';

/** Lower and upper line of a range, rising in pressure, x in inside units. */
export interface Range {
  readonly low: readonly Place[];
  readonly high: readonly Place[];
}

export interface Band {
  readonly median: readonly Place[];
  /** The half of all tanks in the middle. */
  readonly fifty: Range;
  /** Nine of ten. */
  readonly ninety: Range;
}

/** Bands of both panels: growth of the largest girth, and volume pumped. */
export interface Ranges {
  readonly growth: Band;
  readonly pumped?: Band;
}

const shade = (opacity: number): Fill => ({ kind: 'tone', tone: 'ink', opacity });

export const bandMarks = (panel: Panel, band: Band): Mark[] => [
  between(panel, shade(0.09), band.ninety.low, band.ninety.high, 'range 90 %'),
  between(panel, shade(0.14), band.fifty.low, band.fifty.high, 'range 50 %'),
  stroke(
    'narrow',
    clipped(panel, band.median).map((place) => onPanel(panel, place)),
    'median',
  ),
];
