/** Heading and notes of the drawing: which state it shows, what is drawn larger than it is, what it cannot show. */
import type { Tank } from '@hoopwright/core/tank';
import { say, sayStated } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { FRAME } from '../sheet/frame.ts';
import { LARGE, lettering, type Mark, SMALL } from '../sheet/mark.ts';
import { sentence } from '../words/sentence.ts';
import { INSET, type Laid } from './layOut.ts';
import type { TankSheet } from './tankSheet.ts';

export const stateOf = ({ stance }: TankSheet, manner: Manner): string => {
  if (stance === undefined) return sentence(manner, 'stateWelded');
  if (stance.phase === 'release' && stance.pressure < 1e-9) return sentence(manner, 'stateLeft');
  return sentence(manner, 'stateUnder', { pressure: say(manner, 'pressure', stance.pressure) });
};

export function heading(sheet: TankSheet, { times }: Laid, manner: Manner): Mark[] {
  const [x, y] = [FRAME.left + INSET, FRAME.top + 14 + LARGE];
  const growth =
    times === 1 ? sentence(manner, 'growthOne') : sentence(manner, 'growthTimes', { times: String(times) });
  return [
    lettering([x, y], [{ text: stateOf(sheet, manner), bold: true }], { size: LARGE, of: 'heading' }),
    ...(sheet.stance === undefined
      ? []
      : [lettering([x, y + LARGE + 2], growth, { size: SMALL + 2, of: 'growth drawn' })]),
  ];
}

/** What stands on the drawing larger than it is, a sentence each: the growth where something has grown, the walls. */
export function enlargedOf(
  { stance }: TankSheet,
  { view, times, before }: Laid,
  manner: Manner,
): { readonly growth: string | undefined; readonly walls: string } {
  const growth =
    times === 1
      ? sentence(manner, 'noteGrowthOne')
      : sentence(manner, 'noteGrowth', { times: String(times) });
  const walls =
    view.walls === 1
      ? sentence(manner, 'noteWallsOne')
      : view.walls === view.thick || !before.some((piece) => piece.kind === 'thick')
        ? sentence(manner, 'noteWalls', { times: String(view.walls) })
        : sentence(manner, 'noteWallsThick', { times: String(view.walls), thick: String(view.thick) });
  return { growth: stance === undefined ? undefined : growth, walls };
}

export function notesOf(sheet: TankSheet, laid: Laid, manner: Manner): string[] {
  const { tank } = laid;
  const { growth, walls } = enlargedOf(sheet, laid, manner);
  return [
    sentence(manner, 'noteDimensions'),
    ...(growth === undefined ? [] : [`${sentence(manner, 'noteInitial')} ${growth}`]),
    walls,
    ...standNotes(tank, manner),
    ...(tank.longSeam === undefined
      ? []
      : [sentence(manner, 'noteLongSeam', { width: sayStated(manner, 'length', tank.longSeam.width) })]),
    sentence(manner, 'noteWrinkles'),
    sentence(manner, 'noteCaution'),
  ];
}

function standNotes({ stand }: Tank, manner: Manner): string[] {
  if (stand === undefined) return [];
  if (stand.axis === 'lying') return [sentence(manner, 'noteLying')];
  return [sentence(manner, 'noteUpright', { gauge: sayStated(manner, 'length', stand.gauge) })];
}
