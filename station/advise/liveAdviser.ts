/**
 * Beside a running day: hands each new row, and between rows each batch that wires have read, to the adviser's thread, and
 * writes what is foreseen and advised as it stands.
 */
import { type Batch, batchNow, type Fold, type FoldedRow } from '@hoopwright/wire/day';
import {
  type ForecastBody,
  neverReadyBody,
  readyBody,
  type ReadyBody,
  saysOther,
  type Solved,
  solvingBody,
  type Stretchable,
} from '@hoopwright/wire/advice';
import type { Body } from '@hoopwright/wire/record';
import type { Adviser } from '../day/live/parts.ts';
import type { Later } from '../instrument/source.ts';
import type { AdviseMessage, Said } from '../worker/advise.ts';

export interface LiveAdviserParts {
  /** The thread, or this one. */
  readonly ask: (message: AdviseMessage) => Promise<Said | undefined>;
  /** Makes quick tank and steels of the plan; undefined where its steel has no range. `told` after each shell solution. */
  readonly stretch: (told: (solved: Solved) => void) => Promise<Stretchable | undefined>;
  readonly later: Later;
  /** Wall clock of the day, ms. */
  readonly now: () => number;
  readonly log: (error: unknown) => void;
}

type Write = (kind: 'forecast' | 'advice', body: Body) => void;

/** ms after which it is asked again though nothing was read: readings grow old by themselves. */
const LOOK_MS = 1000;

/** ms between two batches: ten in a second. */
const BATCH_MS = 100;

/** Steps in which the making ready is written, percent. */
const TOLD_PERCENT = 10;

/** Guards what was heard and said last. One question at a time: what comes meanwhile goes with the next. */
export class LiveAdviser implements Adviser {
  private readonly parts: LiveAdviserParts;
  /** Made, and not yet handed to the thread. */
  private made: Stretchable | undefined;
  private ready: ReadyBody | undefined;
  /** Percent that the record has of it. */
  private written = -Infinity;
  private last: { now: Fold; write: Write } | undefined;
  private opened = false;
  private asking = false;
  /** News came while it asked. */
  private waits = false;
  private heardRows: readonly FoldedRow[] = [];
  private told = '';
  private foreseen: ForecastBody | undefined;
  /** Time of the day when a batch was handed over last, ms, and the newest reading in it. */
  private batched = { at: -Infinity, seq: 0 };
  private stop: (() => void) | undefined;
  private closed = false;

  constructor(parts: LiveAdviserParts) {
    this.parts = parts;
    void this.makeReady();
    this.look();
  }

  heard(now: Fold, write: Write): void {
    const before = this.last?.now;
    this.last = { now, write };
    this.tellReady();
    if (before === undefined || isNews(before, now) || this.batchIn(now) !== undefined) void this.ask();
  }

  /** What wires have read, where it is time for the next batch and something new is in it. */
  private batchIn(now: Fold): Batch | undefined {
    if (now.inside.elapsed < this.batched.at + BATCH_MS) return undefined;
    const batch = batchNow(now);
    return batch !== undefined && batch.seq > this.batched.seq ? batch : undefined;
  }

  /** What a batch adds is written where it says something else; what rows alone say always is. */
  private isWorthIt(forecast: ForecastBody, isBatch: boolean): boolean {
    return !isBatch || this.foreseen === undefined || saysOther(this.foreseen, forecast);
  }

  close(): void {
    this.closed = true;
    this.stop?.();
    const record = this.last?.now.state.about.record;
    if (record !== undefined && this.opened)
      void this.parts.ask({ kind: 'close', record }).catch(this.parts.log);
  }

  /** What cannot be made is told and left out: the day goes on with the plan's limits and without a forecast. */
  private async makeReady(): Promise<void> {
    let how: 'kept' | 'made' = 'kept';
    try {
      const stretch = await this.parts.stretch((solved) => {
        how = 'made';
        this.tellReady(solvingBody(solved));
      });
      this.tellReady(stretch === undefined ? neverReadyBody('no range') : readyBody(how));
      this.made = stretch;
    } catch (error) {
      this.parts.log(error);
      this.tellReady(neverReadyBody('mistake'));
    }
  }

  /** In tenths, so that a record is not full of it; as soon as there is a plan to write it under. */
  private tellReady(body = this.ready): void {
    this.ready = body;
    if (body === undefined || this.closed || this.last?.now.state.plan === undefined) return;
    const { percent, failed } = body.ready;
    if (percent < this.written + TOLD_PERCENT && percent < 100 && failed !== true) return;
    this.ready = undefined;
    this.written = percent;
    this.last.write('forecast', body);
  }

  private look(): void {
    this.stop = this.parts.later(LOOK_MS, () => {
      if (this.closed) return;
      void this.ask();
      this.look();
    });
  }

  private async ask(): Promise<void> {
    if (this.asking) this.waits = true;
    if (this.asking || this.closed || this.last === undefined) return;
    const { phase, plan, ventShut_ms } = this.last.now.state;
    if (plan === undefined || ventShut_ms === undefined || phase !== 'under way') return;
    [this.asking, this.waits] = [true, false];
    try {
      await this.open();
      await this.once();
    } catch (error) {
      this.parts.log(error);
    } finally {
      this.asking = false;
      if (this.waits) void this.ask();
    }
  }

  /** At once without what is foreseen, and anew with it when it is made: it then hears all rows again. */
  private async open(): Promise<void> {
    const { made: stretch } = this;
    if (this.opened && stretch === undefined) return;
    const { about, plan, channels, follows } = this.last?.now.state ?? {};
    if (about === undefined || plan === undefined || channels === undefined) return;
    [this.opened, this.made, this.heardRows] = [true, undefined, []];
    try {
      await this.parts.ask({
        kind: 'open',
        record: about.record,
        plan: plan.plan,
        channels: channels.map(({ channel }) => channel),
        ...(follows === undefined ? {} : { seen_bar: follows.highest_bar }),
        ...(stretch === undefined ? {} : { stretch }),
      });
    } catch (error) {
      // It is asked again at the next look.
      [this.opened, this.made] = [false, stretch];
      throw error;
    }
  }

  private async once(): Promise<void> {
    if (this.last === undefined) return;
    const { now, write } = this.last;
    const { state, inside } = now;
    const { rows, anew } = newIn(inside.rows, this.heardRows);
    this.heardRows = inside.rows;
    const batch = this.batchIn(now);
    if (batch !== undefined) this.batched = { at: inside.elapsed, seq: batch.seq };
    const said = await this.parts.ask({
      kind: 'hear',
      record: state.about.record,
      rows,
      ...(batch === undefined ? {} : { batch: batch.row }),
      anew,
      aside: asideIn(now),
      seconds: (this.parts.now() - (state.ventShut_ms ?? 0)) / 1000,
      ...(state.step === undefined ? {} : { step: state.step.number }),
    });
    if (said === undefined || this.closed) return;
    const { forecast, advice, told } = said;
    if (forecast !== undefined && this.isWorthIt(forecast, batch !== undefined)) {
      write('forecast', forecast);
      this.foreseen = forecast;
    }
    if (told !== this.told) write('advice', advice);
    this.told = told;
  }
}

/** Something that the advice may hang on: most of a hundred readings a second are not. */
const isNews = (before: Fold, now: Fold): boolean =>
  before.inside.rows !== now.inside.rows ||
  before.state.step !== now.state.step ||
  before.state.phase !== now.state.phase ||
  asideIn(before).join() !== asideIn(now).join();

const asideIn = ({ state }: Fold): string[] =>
  state.channels.flatMap(({ channel, aside, unproved }) =>
    aside === undefined && unproved === undefined ? [] : [channel.name],
  );

/**
 * Rows that were not heard yet. All of them, anew, where the tank was bled, a row was corrected, or one was typed in that
 * is older than others; rows that were only thinned out stay heard.
 */
export function newIn(
  rows: readonly FoldedRow[],
  heard: readonly FoldedRow[],
): { readonly rows: readonly FoldedRow[]; readonly anew: boolean } {
  if (heard.length === 0) return { rows, anew: false };
  const known = new Map(heard.map((row) => [row.seq, row]));
  const corrected = rows.some((row) => known.has(row.seq) && known.get(row.seq) !== row);
  const fresh = rows.filter(({ seq }) => !known.has(seq));
  const last = heard[heard.length - 1].seconds;
  const anew = rows[0] !== heard[0] || corrected || fresh.some(({ seconds }) => seconds < last);
  return { rows: anew ? rows : fresh, anew };
}
