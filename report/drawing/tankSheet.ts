/** What the drawing of a tank is made from. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../figure/manner.ts';
import type { Box } from '../sheet/measure.ts';
import type { TitleBlock } from '../sheet/titleBlock.ts';
import type { Field } from './field.ts';
import type { Stance } from './shape/stance.ts';
import type { States } from './table.ts';

export interface TankSheet {
  readonly tank: Tank;
  /** What stands on the sheet; absent: the tank as welded. */
  readonly stance?: Stance;
  /** A stance that room is kept for, so that scale and place stay while the tank is moved through its stretch. */
  readonly roomFor?: Stance;
  /** How many times the growth is drawn; absent: the least of 1, 5, 10, 20 that can be seen. */
  readonly times?: Times;
  /** Figures of the table; absent: no table. */
  readonly states?: States;
  /** Colours of the wall instead of hatching; belongs to the profile of `stance`. */
  readonly field?: Field;
  /** Where the drawing goes; absent: left of the title block on the sheet. */
  readonly room?: Box;
  readonly block: TitleBlock;
  readonly manner?: Manner;
}

export type Times = 1 | 5 | 10 | 20;
export const TIMES: readonly Times[] = [1, 5, 10, 20];
