/** Entry of the thread that foresees and advises: holds one adviser for each running day, so that no reading waits for it. */
import {
  type AdviceBody,
  Adviser,
  adviceBody,
  type AdviserGivens,
  type ForecastBody,
  toldBy,
} from '@hoopwright/wire/advice';
import type { Row } from '@hoopwright/wire/reading';

export type AdviseMessage =
  | ({ readonly kind: 'open'; readonly record: string } & AdviserGivens)
  | {
      readonly kind: 'hear';
      readonly record: string;
      /** New rows, each with its entry. */
      readonly rows: readonly (Row & { readonly seq: number })[];
      /** What wires have read since the last row. */
      readonly batch?: Row;
      /** The tank was bled: what was before does not count. */
      readonly anew: boolean;
      readonly aside: readonly string[];
      /** s since the vent was shut, and the step of the plan. */
      readonly seconds: number;
      readonly step?: string;
    }
  | { readonly kind: 'close'; readonly record: string };

export interface Said {
  readonly forecast?: ForecastBody;
  readonly advice: AdviceBody;
  /** The same while the advice says the same for the same reasons. */
  readonly told: string;
}

interface Open {
  readonly adviser: Adviser;
  readonly readAt: Map<string, number>;
  /** By rows, the last one; said, unless a batch said more. */
  foreseen?: ForecastBody;
}
const open = new Map<string, Open>();

/** The pool calls it by its name. */
export function answerAdvise(message: AdviseMessage): Said | undefined {
  if (message.kind === 'open') {
    const adviser = new Adviser(message);
    adviser.warmUp();
    open.set(message.record, { adviser, readAt: new Map() });
    return undefined;
  }
  if (message.kind === 'close') {
    open.delete(message.record);
    return undefined;
  }
  const one = open.get(message.record);
  return one === undefined ? undefined : said(one, message);
}

function said(one: Open, message: Extract<AdviseMessage, { kind: 'hear' }>): Said {
  const { adviser, readAt } = one;
  if (message.anew) adviser.startAnew();
  adviser.setAside(new Set(message.aside));
  for (const row of message.rows) {
    adviser.take(row);
    for (const name of Object.keys(row.values)) readAt.set(name, row.seq);
  }
  const forecast = newest(one, message.batch);
  const advice = adviser.advice(message.seconds, message.step);
  const readings = advice.channels.flatMap((name) => readAt.get(name) ?? []);
  return {
    ...(forecast === undefined ? {} : { forecast }),
    advice: adviceBody(advice, readings),
    told: toldBy(advice),
  };
}

/** With the batch where it says something; else by rows, and then once. */
function newest(one: Open, batch: Row | undefined): ForecastBody | undefined {
  const byRows = one.adviser.forecast();
  const isNew = byRows !== one.foreseen;
  if (byRows !== undefined) one.foreseen = byRows;
  const withBatch = batch === undefined ? undefined : one.adviser.forecastWith(batch);
  return withBatch ?? (isNew ? byRows : undefined);
}
