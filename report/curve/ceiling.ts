/** The growth that published practice does not pass, on what is left after release. */
import type { Manner } from '../figure/manner.ts';
import { statedFigure, written } from '../figure/figure.ts';
import { area, hatch, lettering, type Mark, type Point, SMALL, stroke } from '../sheet/mark.ts';
import { sentence } from '../words/sentence.ts';
import { clipped, onPanel, type Panel, type Place, xOf, yOf } from './panel.ts';

export interface Ceiling {
  /** Left on the diameter, a fraction. */
  readonly growth: number;
  readonly source: string;
}

/** Practice reported for vessels stretched to ASME VIII-1 Appendix 44: up to 7 % on diameter, 14 % on volume. */
export const PUBLISHED_CEILING: Ceiling = {
  growth: 0.07,
  source:
    'practice reported for vessels to ASME VIII-1 Mandatory Appendix 44 (7 % on diameter, 14 % on volume)',
};

const STRIP = 12;

/**
 * Hatched edge: releases that begin to the right of the line leave more than the ceiling. The line leans as the tank
 * springs back, `recovery` of growth per MPa.
 */
export function ceilingMarks(panel: Panel, { growth }: Ceiling, recovery: number, manner: Manner): Mark[] {
  const edge: Place[] = clipped(panel, [
    [growth, 0],
    [growth + recovery * panel.y.most, panel.y.most],
  ]);
  if (edge.length < 2) return [];
  const line = edge.map((place) => onPanel(panel, place));
  const strip: Point[] = [
    ...line,
    ...line.map(([x, y]): Point => [Math.min(x + STRIP, panel.right), y]).reverse(),
  ];
  const words = sentence(manner, 'ceilingLabel', {
    growth: written(statedFigure(manner, 'growth', growth)),
  });
  return [
    area(hatch('forbidden'), strip, 'ceiling'),
    stroke('narrow', line, 'ceiling'),
    lettering([xOf(panel, growth) - 5, yOf(panel, 0) - 8], words, {
      size: SMALL,
      upright: true,
      clear: true,
      of: 'ceiling label',
    }),
  ];
}
