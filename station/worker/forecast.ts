/** Entry of the pool's threads: runs one forecast at a time, away from the thread that answers requests. */
import { forecast } from '@hoopwright/core/stretch';
import { type ForecastFile, forecastFile } from '@hoopwright/wire/forecast';
import type { Issue } from '@hoopwright/wire/issue';
import { parseTankFile } from '@hoopwright/wire/tank';
import { answerOf } from '../cli/answer.ts';

export interface ForecastMessage {
  readonly kind: 'forecast';
  /** A tank file, as text or as the value already read. */
  readonly file: unknown;
}

export type ForecastAnswer =
  | { readonly kind: 'forecast'; readonly forecast: ForecastFile }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };

/** The pool calls the export that has the name of the message's kind. */
export const answerForecast = ({ file }: ForecastMessage): ForecastAnswer => {
  const parsed = parseTankFile(file);
  if (!parsed.ok) return { kind: 'refused', issues: parsed.issues };
  const result = forecast(parsed.tank, parsed.duty);
  const { warnings, notes } = answerOf(result, parsed.notes);
  return { kind: 'forecast', forecast: forecastFile(result, { warnings, notes, profile: true }) };
};
