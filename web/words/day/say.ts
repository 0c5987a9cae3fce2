/** Sentences of the crew's screens, apart from those of the drawing board: a phone fetches only these. */
import { sentences } from '../fill.ts';
import { DAYS } from './days.ts';
import { DEEDS } from './deeds.ts';
import { NOTES } from './notes.ts';
import { SCREEN } from './screen.ts';
import { STATES } from './states.ts';
import { WIRING } from './wiring.ts';

export const DAY_ENGLISH = { ...STATES, ...SCREEN, ...DEEDS, ...NOTES, ...DAYS, ...WIRING } as const;

export type DayKey = keyof typeof DAY_ENGLISH;

export const say = sentences(DAY_ENGLISH);
