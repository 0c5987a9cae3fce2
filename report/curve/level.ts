/** Pressures that both panels share: first yield, the barrel at 0.2 %, the stretch pressure. */
import { sayStated } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { lettering, type Mark, type Run, SMALL, stroke } from '../sheet/mark.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import type { Places } from '../sheet/settle.ts';
import { partWords } from '../words/parts.ts';
import { type Panel, yOf } from './panel.ts';
import type { CurveForecast } from './path.ts';

export interface Level {
  readonly pressure: number;
  readonly words: readonly Run[];
  /** Set under the line. */
  readonly under?: string;
  readonly of: string;
}

export function levelsOf(forecast: CurveForecast, manner: Manner): Level[] {
  const { firstYield, barrelYield, target } = forecast;
  const at = (value: number) => ({ quantity: 'pressure', value }) as const;
  const levels: Level[] = [];
  if (firstYield !== undefined)
    levels.push({
      pressure: firstYield.pressure,
      words: sentenceRuns(manner, 'levelFirstYield', {
        pressure: at(firstYield.pressure),
      }),
      under: partWords(manner, firstYield.at),
      of: 'first yield',
    });
  if (barrelYield !== undefined)
    levels.push({
      pressure: barrelYield,
      words: sentenceRuns(manner, 'levelBarrelYield', {
        strain: sayStated(manner, 'strain', 0.002),
        pressure: at(barrelYield),
      }),
      of: 'barrel 0.2 %',
    });
  if (target !== undefined)
    levels.push({
      pressure: target,
      words: sentenceRuns(manner, 'levelTarget', { pressure: at(target) }),
      of: 'stretch pressure',
    });
  return levels;
}

/** Lines across the panel. */
export const levelLines = (panel: Panel, levels: readonly Level[]): Mark[] =>
  inside(panel, levels).map(({ pressure, of }) => {
    const y = yOf(panel, pressure);
    return stroke(
      'narrow',
      [
        [panel.left, y],
        [panel.right, y],
      ],
      of,
    );
  });

/** Words on the lines, and under them; `from` gives places along x to choose from, best first. */
export const levelPlaces = (
  panel: Panel,
  levels: readonly Level[],
  from: (level: Level) => readonly number[],
): Places[] =>
  inside(panel, levels).map((level) =>
    from(level).map((x) => {
      const y = yOf(panel, level.pressure);
      const how = { size: SMALL, clear: true, of: `label: ${level.of}` };
      return [
        lettering([x, y - 4], level.words, how),
        ...(level.under === undefined ? [] : [lettering([x, y + SMALL + 2], level.under, how)]),
      ];
    }),
  );

const inside = (panel: Panel, levels: readonly Level[]): Level[] =>
  levels.filter(({ pressure }) => pressure <= panel.y.most);
