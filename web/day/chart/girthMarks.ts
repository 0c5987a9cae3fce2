/** Each girth at its height beside the tank: its name and what it has grown by. */
import { growthAt } from '../tells/growthNow.ts';
import type { Tank } from '@hoopwright/core/tank';
import type { TankView } from '@hoopwright/report/drawing';
import type { Manner } from '@hoopwright/report/figure';
import { lettering, type Mark, stroke } from '@hoopwright/report/sheet';
import type { DayState } from '@hoopwright/wire/day';
import { growthText } from '../said/figures.ts';

export interface GirthMarks {
  readonly tank: Tank;
  readonly state: DayState;
  readonly view: TankView['laid']['view'];
  readonly manner: Manner;
  readonly place?: string | undefined;
}

const SIZE = 30;
const REACH = 190;

export function girthMarks({ tank, state, view, manner, place }: GirthMarks): Mark[] {
  const edge = view.axis - (tank.insideDiameter / 2) * view.perMm;
  return tank.girths.flatMap(({ name, at }): Mark[] => {
    const y = view.base - at * view.perMm;
    const grown = growthAt(state, name);
    return [
      stroke(
        name === place ? 'bold' : 'narrow',
        [
          [edge - REACH, y],
          [edge - 2, y],
        ],
        `girth ${name}`,
      ),
      lettering([edge - REACH, y - 5], [{ text: name, bold: name === place }], {
        size: SIZE * 0.78,
        clear: true,
        of: `girth ${name}`,
      }),
      ...(grown === undefined
        ? []
        : [
            lettering([edge - REACH, y + SIZE * 0.9], [{ text: growthText(manner, grown), bold: true }], {
              size: SIZE,
              clear: true,
              of: `girth ${name}`,
            }),
          ]),
    ];
  });
}
