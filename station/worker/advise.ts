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

function said({ adviser, readAt }: Open, message: Extract<AdviseMessage, { kind: 'hear' }>): Said {
  if (message.anew) adviser.startAnew();
  adviser.setAside(new Set(message.aside));
  for (const row of message.rows) {
    adviser.take(row);
    for (const name of Object.keys(row.values)) readAt.set(name, row.seq);
  }
  const forecast = adviser.forecast();
  const advice = adviser.advice(message.seconds, message.step);
  const readings = advice.channels.flatMap((name) => readAt.get(name) ?? []);
  return {
    ...(forecast === undefined ? {} : { forecast }),
    advice: adviceBody(advice, readings),
    told: toldBy(advice),
  };
}
