/** The drawing of the tank on the board, from the last good forecast and from where the hand stands. */
import {
  type Field,
  type FieldName,
  marginField,
  type Stance,
  strainField,
  tankDrawing,
  type Times,
  wallField,
} from '@hoopwright/report/drawing';
import type { Manner } from '@hoopwright/report/figure';
import type { Scene } from '@hoopwright/report/sheet';
import { momentOf } from '../work/moment.ts';
import type { Drawn } from '../work/ask.ts';

export interface Shown {
  readonly drawn: Drawn;
  readonly stance: Stance | undefined;
  readonly times: Times | undefined;
  readonly colour: FieldName | undefined;
  readonly manner: Manner;
}

export function tankScene({ drawn, stance, times, colour, manner }: Shown): Scene {
  const field = colour === undefined || stance === undefined ? undefined : fieldOf(drawn, stance, colour);
  return tankDrawing({
    tank: drawn.tank,
    ...(stance === undefined ? {} : { stance }),
    ...(times === undefined ? {} : { times }),
    ...(field === undefined ? {} : { field }),
    block: { title: drawn.tank.name, forecast: 'current', invented: false },
    manner,
  });
}

function fieldOf({ forecast }: Drawn, stance: Stance, colour: FieldName): Field | undefined {
  if (colour === 'strain') return strainField(stance.profile);
  if (colour === 'wall') return wallField(stance.profile);
  const limit = momentOf(forecast, { kind: 'stop', stop: 'maximum' })?.plastic.barrel;
  return limit === undefined ? undefined : marginField(stance.profile, limit);
}
