/** What a head is, in a few lines on a leader: shape with its radii, wall, flange, boss, skirt, openings. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../../figure/manner.ts';
import { lettering, type Mark, type Point, type Run, stroke, TEXT } from '../../sheet/mark.ts';
import { runsWidth } from '../../sheet/measure.ts';
import { type Shown, sentenceRuns } from '../../sheet/runs.ts';
import { arrow } from './dimension.ts';

type End = 'top' | 'bottom';

export function headLines(tank: Tank, end: End, manner: Manner): Run[][] {
  const head = tank.heads[end];
  const length = (value: number, key: string): Shown => shown('length', value, `heads.${end}.${key}`);
  const lines = [shapeLine(tank, end, manner)];
  const wall = sentenceRuns(manner, 'headWall', { wall: shown('wall', head.wall, `heads.${end}.wall_mm`) });
  const flange = sentenceRuns(manner, 'headFlange', {
    flange: length(head.straightFlange, 'straightFlange_mm'),
  });
  lines.push(head.straightFlange > 0 ? [...wall, { text: ', ' }, ...flange] : wall);
  if (head.boss !== undefined)
    lines.push(
      sentenceRuns(manner, 'headBoss', {
        diameter: { ...length(head.boss.diameter, 'boss.diameter_mm'), bare: true },
        thickness: length(head.boss.thickness, 'boss.thickness_mm'),
      }),
    );
  return [...lines, ...skirtLines(tank, end, manner), ...openingLines(tank, end, manner)];
}

const shown = (quantity: Shown['quantity'], value: number, path: string): Shown => ({
  quantity,
  value,
  path,
  stated: true,
});

function shapeLine(tank: Tank, end: End, manner: Manner): Run[] {
  const { shape } = tank.heads[end];
  const length = (value: number, key: string): Shown => shown('length', value, `heads.${end}.${key}`);
  switch (shape.kind) {
    case 'semi-ellipsoidal':
      return sentenceRuns(manner, 'headSemiEllipsoidal', { depth: length(shape.depth, 'depth_mm') });
    case 'torispherical':
      return sentenceRuns(manner, 'headTorispherical', {
        crown: length(shape.crownRadius, 'crownRadius_mm'),
        knuckle: length(shape.knuckleRadius, 'knuckleRadius_mm'),
      });
    case 'hemispherical':
      return sentenceRuns(manner, 'headHemispherical', {
        radius: { quantity: 'length', value: tank.insideDiameter / 2, stated: true },
      });
    case 'conical':
      return sentenceRuns(manner, 'headConical', {
        angle: shown('angle', shape.halfAngle, `heads.${end}.halfAngle_deg`),
        knuckle: length(shape.knuckleRadius, 'knuckleRadius_mm'),
      });
    case 'flat':
      return sentenceRuns(manner, 'headFlat');
  }
}

const skirtLines = (tank: Tank, end: End, manner: Manner): Run[][] =>
  tank.skirts.flatMap((skirt, i) =>
    skirt.end !== end
      ? []
      : [
          sentenceRuns(manner, 'headSkirt', {
            length: { ...shown('length', skirt.length, `skirts[${i}].length_mm`), bare: true },
            wall: shown('wall', skirt.wall, `skirts[${i}].wall_mm`),
          }),
        ],
  );

const openingLines = (tank: Tank, end: End, manner: Manner): Run[][] =>
  tank.openings.flatMap((opening, i) =>
    opening.part !== end
      ? []
      : [
          sentenceRuns(manner, 'headOpening', {
            diameter: shown('length', opening.diameter, `openings[${i}].diameter_mm`),
          }),
        ],
  );

const LEADING = TEXT + 3;

export const noteHeight = (lines: readonly (readonly Run[])[]): number => lines.length * LEADING + 6;
export const noteWidth = (lines: readonly (readonly Run[])[]): number =>
  Math.max(...lines.map((runs) => runsWidth({ runs, size: TEXT }))) + 6;

/** Lines above a reference line whose left end is `foot`; the leader runs from there to `target`. */
export function noteMarks(
  lines: readonly (readonly Run[])[],
  foot: Point,
  target: Point,
  of: string,
): Mark[] {
  const [x, y] = foot;
  return [
    stroke('narrow', [target, foot, [x + noteWidth(lines), y]], `leader: ${of}`),
    arrow(target, [target[0] - x, target[1] - y]),
    ...lines.map((runs, i) =>
      lettering([x + 4, y - 4 - (lines.length - 1 - i) * LEADING], runs, { of: `note: ${of} ${i + 1}` }),
    ),
  ];
}
