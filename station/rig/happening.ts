/** What happens on a rehearsed day, on its way to the record. */
import type { Step } from '@hoopwright/wire/plan';
import type { Crossing, EndName } from '@hoopwright/wire/reading';
import type { Body, EntryKind } from '@hoopwright/wire/record';

/** Something for the record. */
export interface Happening {
  /** s since the start of the record. */
  readonly seconds: number;
  /** Which start of the program: a restart begins another. */
  readonly run: number;
  readonly kind: EntryKind;
  readonly body: Body;
  /** For the person who looks on. */
  readonly line?: string;
}

/** Why the crew stops. */
export interface Stop {
  readonly says: string;
  readonly step: string;
  readonly limit?: Crossing['limit'];
}

export interface DayEnd {
  readonly end: EndName;
  readonly why: string;
  readonly step: string;
}

/** For the person who looks on. */
export const said = ({ kind, pressure_bar }: Step): string =>
  pressure_bar > 0 ? `${kind} at ${pressure_bar} bar` : kind;

export const rowLine = (values: Readonly<Record<string, number>>): string =>
  Object.entries(values)
    .map(([name, value]) => `${name} ${value}`)
    .join('  ');
