/** What stands at which height of the barrel: girths, seams, baffles, openings, and the tangent line they count from. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../../figure/manner.ts';
import type { Run } from '../../sheet/mark.ts';
import { figureRuns, sentenceRuns } from '../../sheet/runs.ts';

export interface Level {
  readonly kind: 'girth' | 'girth seam' | 'baffle' | 'opening' | 'tangent line';
  readonly of: string;
  /** As welded, mm. */
  readonly z: number;
  readonly name: readonly Run[];
  readonly height: readonly Run[];
  /** Height of what is drawn on the line, mm: wall of a baffle, diameter of an opening. */
  readonly thick?: number;
}

export function levelsOf(tank: Tank, manner: Manner): Level[] {
  const height = (value: number, path?: string): Run[] =>
    figureRuns(manner, { quantity: 'length', value, stated: true, ...(path === undefined ? {} : { path }) });
  const length = (value: number, path: string) =>
    ({ quantity: 'length', value, stated: true, path }) as const;
  const wall = (value: number, path: string) => ({ quantity: 'wall', value, stated: true, path }) as const;
  const levels: Level[] = [
    {
      kind: 'tangent line',
      of: 'bottom tangent line',
      z: 0,
      name: sentenceRuns(manner, 'bottomTangent').map((run) => ({ ...run, tone: 'faint' })),
      height: [{ text: '0' }],
    },
    ...tank.girths.map(
      ({ name, at }, i): Level => ({
        kind: 'girth',
        of: `girth ${name}`,
        z: at,
        name: [{ text: name, bold: true }],
        height: height(at, `girths[${i}].at_mm`),
      }),
    ),
    ...tank.girthSeams.map(
      ({ at, width }, i): Level => ({
        kind: 'girth seam',
        of: `girth seam ${i + 1}`,
        z: at,
        name: sentenceRuns(manner, 'girthSeam', { width: length(width, `seams.girth[${i}].width_mm`) }),
        height: height(at, `seams.girth[${i}].at_mm`),
      }),
    ),
    ...tank.baffles.map(
      ({ at, width, thickness }, i): Level => ({
        kind: 'baffle',
        of: `baffle ${i + 1}`,
        z: at,
        name: sentenceRuns(manner, 'baffle', {
          width: { ...length(width, `baffles[${i}].width_mm`), bare: true },
          thickness: wall(thickness, `baffles[${i}].thickness_mm`),
        }),
        height: height(at, `baffles[${i}].at_mm`),
        thick: thickness,
      }),
    ),
    ...tank.openings.flatMap(({ part, at, diameter }, i): Level[] =>
      part !== 'barrel' || at === undefined
        ? []
        : [
            {
              kind: 'opening',
              of: `opening ${i + 1}`,
              z: at,
              name: sentenceRuns(manner, 'opening', {
                diameter: length(diameter, `openings[${i}].diameter_mm`),
              }),
              height: height(at, `openings[${i}].at_mm`),
              thick: diameter,
            },
          ],
    ),
  ];
  return levels.sort((a, b) => b.z - a.z);
}
