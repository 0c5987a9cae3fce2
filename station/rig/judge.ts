/** Who looks on at a rehearsal and says what is foreseen and advised after each row, as it then stands in the record. */
import {
  type Adviser,
  adviceBody,
  type ForecastBody,
  forecastSentence,
  toldBy,
} from '@hoopwright/wire/advice';
import type { Row } from '@hoopwright/wire/reading';
import type { Body } from '@hoopwright/wire/record';

export interface Judged {
  readonly kind: 'forecast' | 'advice';
  readonly body: Body;
  readonly line: string;
  /** Why to stop and release, where that is advised. */
  readonly stop?: string;
}

/** Guards what was said last: the same again is not written again. */
export class Judge {
  private readonly adviser: Adviser;
  private readonly readAt = new Map<string, number>();
  private foreseen: ForecastBody | undefined;
  private advised: string | undefined;

  constructor(adviser: Adviser) {
    this.adviser = adviser;
  }

  startAnew(): void {
    this.adviser.startAnew();
  }

  /** @param entry number of the row in the record */
  *after(row: Row, entry: number): Generator<Judged> {
    for (const name of Object.keys(row.values)) this.readAt.set(name, entry);
    this.adviser.take(row);
    const forecast = this.adviser.forecast();
    if (forecast !== undefined && forecast !== this.foreseen)
      yield { kind: 'forecast', body: forecast, line: forecastSentence(forecast) };
    this.foreseen = forecast;
    const advice = this.adviser.advice(row.seconds, row.step);
    const told = toldBy(advice);
    if (told === this.advised) return;
    this.advised = told;
    const readings = advice.channels.flatMap((name) => this.readAt.get(name) ?? []);
    const body = adviceBody(advice, readings);
    const [why] = body.reasons;
    const line = `${body.state.toUpperCase()}: ${why}`;
    yield { kind: 'advice', body, line, ...(advice.state === 'stop and release' ? { stop: why } : {}) };
  }
}
