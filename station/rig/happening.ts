/** What happens on a rehearsed day, on its way to the record. */
import type { EndName } from '@hoopwright/wire/reading';
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

export interface DayEnd {
  readonly end: EndName;
  readonly why: string;
  readonly step: string;
}
