/**
 * Holds what is known of the tank while the day runs: takes rows as they come, and says what is foreseen and advised.
 * One for each run of the program; the same rows give the same words.
 */
import {
  girthsNearSeam,
  quickPath,
  type QuickPath,
  type Shown,
  straysOf,
  unknownsOf,
} from '@hoopwright/core/stretch';
import { fromBar } from '@hoopwright/core/units';
import { isHold, type Plan, type Step, type StepKind } from '../plan/plan.ts';
import { type Channel, freshFor } from '../reading/channel.ts';
import type { Row } from '../reading/row.ts';
import { growthAt, stepAt } from '../reading/scene.ts';
import { crossings } from '../reading/watch.ts';
import type { Facts, Read, Stretchable } from './facts.ts';
import type { ForecastBody } from './forecastBody.ts';
import { Foreseeing, type Stood } from './look/foreseeing.ts';
import { type HoldGivens, holdFacts, leakFacts } from './look/holdFacts.ts';
import { errorsOf, gatherRuleFor, type Instruments, instrumentsOf } from './instruments.ts';
import { arrivalRate, middleOf } from './look/likely.ts';
import { Oddities } from './look/oddities.ts';
import { openHoldFacts, riseFacts } from './look/riseFacts.ts';
import { seamFacts } from './look/seamFacts.ts';
import { Standing } from './look/standing.ts';
import { type Advice, advise } from './rules.ts';

export interface AdviserGivens {
  readonly plan: Plan;
  readonly channels: readonly Channel[];
  /** Absent where the steel has no range: nothing is foreseen then. */
  readonly stretch?: Stretchable;
  /** Highest pressure that the wall has seen on an earlier day, bar: under it it is elastic and says nothing of the steel. */
  readonly seen_bar?: number;
}

/** s before another row of the same step counts: quicker ones say the same again. */
const NEXT = 0.9;
/** Steps whose rows say something of the steel: not those in which the tank is let down. */
const GOES_UP: readonly StepKind[] = ['seat', 'first step', 'rise', 'hold', 'final hold'];
/** s between two rows under which they come by wire and are gathered. */
const BY_WIRE = 15;

/** Guards the rows so far and what was made of them. */
export class Adviser {
  private readonly givens: AdviserGivens;
  private readonly instruments: Instruments;
  private readonly middle: QuickPath | undefined;
  private readonly foreseeing: Foreseeing | undefined;
  private readonly oddities: Oddities;
  private readonly standing: Standing;
  private rows: Row[] = [];
  private aside: ReadonlySet<string> = new Set();

  constructor(givens: AdviserGivens) {
    const { plan, stretch } = givens;
    this.givens = givens;
    this.instruments = instrumentsOf({ ...givens, quick: givens.stretch?.quick });
    const { gauges, girths, lengths } = this.instruments;
    const unknowns =
      stretch && unknownsOf(stretch.draws, errorsOf(this.instruments), straysOf(stretch.quick.error));
    this.middle = stretch && quickPath(stretch.quick, middleOf(stretch.draws));
    this.oddities = new Oddities({
      gauges,
      girths,
      lengths,
      ...(this.middle === undefined ? {} : { path: this.middle }),
      ...(stretch === undefined ? {} : { nearSeam: girthsNearSeam(stretch.quick.tank) }),
    });
    this.standing = new Standing({ instruments: this.instruments, unknowns, stretch });
    if (stretch === undefined || unknowns === undefined) return;
    this.foreseeing = new Foreseeing({
      stretch,
      unknowns,
      rule: gatherRuleFor(plan, this.instruments),
      target_bar: plan.target.pressure_bar,
      rate: arrivalRate(plan, this.middle),
      known: (seen, knowledge) => this.standing.look(seen, knowledge),
    });
  }

  /** Litres count anew, and so does everything else: the tank was let down and bled. */
  startAnew(): void {
    this.rows = [];
    this.foreseeing?.startAnew();
    this.oddities.startAnew();
    this.standing.startAnew();
  }

  /** Channels whose readings are not believed from now on. */
  setAside(aside: ReadonlySet<string>): void {
    this.aside = aside;
  }

  take(row: Row): void {
    const before = this.rows.at(-1);
    if (before !== undefined && before.step === row.step && row.seconds - before.seconds < NEXT) return;
    this.rows.push(row);
    const read = this.readIn(row);
    if (read === undefined) return;
    this.oddities.take(row, read.girths);
    if (read.shown === undefined) return;
    const byWire = before !== undefined && row.seconds - before.seconds < BY_WIRE;
    this.foreseeing?.take(read.shown, byWire);
  }

  /** What is foreseen now; the same object as before where nothing new was gathered. */
  forecast(): ForecastBody | undefined {
    return this.foreseeing?.forecast(this.stood(this.rows.at(-1)?.seconds ?? 0));
  }

  /**
   * What is foreseen with what wires have read since the last row, a batch; undefined where it says nothing. Advice goes by
   * rows alone, and so does what is foreseen after the next of them.
   */
  forecastWith(batch: Row): ForecastBody | undefined {
    const shown = this.readIn(batch)?.shown;
    const last = this.rows.at(-1);
    if (shown === undefined || last === undefined || batch.seconds <= last.seconds) return undefined;
    return this.foreseeing?.forecastWith(shown, this.stood(batch.seconds));
  }

  private stood(seconds: number): Stood {
    return { rows: this.rows.length, seconds };
  }

  /** Foresees once from nothing and forgets it, so that the first forecast of the day is as quick as the others. */
  warmUp(): void {
    this.foreseeing?.warmUp();
  }

  /** What is advised `seconds` after the vent was shut, in that step (of the last row where it is left out). */
  advice(seconds: number, step: string | undefined = this.rows.at(-1)?.step): Advice {
    return advise(this.facts(seconds, step));
  }

  private facts(seconds: number, number: string | undefined): Facts {
    const { plan, channels } = this.givens;
    const step = number === undefined ? undefined : stepAt(plan, number);
    const last = this.rows.at(-1);
    const all = channels.filter(({ reads }) => reads === 'pressure');
    const forecast = this.forecast();
    const { hold, leak } = this.holding(seconds, step);
    const rise = this.rising(step);
    const girths = this.girthReads(seconds);
    return {
      plan,
      step,
      gauges: this.instruments.gauges.flatMap((channel) => this.readOf(channel, seconds)),
      gaugesInAll: all.length,
      girths,
      crossings: last === undefined ? [] : crossings({ plan, rows: this.rows, aside: this.aside, channels }),
      oddities: [...this.oddities.found(this.aside), ...this.standing.found(this.aside)],
      ...this.standing.noted(this.aside),
      ...(forecast === undefined ? {} : { forecast }),
      ...(hold === undefined ? {} : { hold }),
      ...(leak === undefined ? {} : { leak }),
      ...this.seamNow(girths),
      ...rise,
    };
  }

  private seamNow(girths: readonly Read[]): Pick<Facts, 'seam'> {
    const { middle, givens } = this;
    const seam = this.foreseeing?.seam;
    if (seam === undefined || middle === undefined) return {};
    const names = givens.stretch?.quick.tank.girths.map(({ name }) => name) ?? [];
    return seamFacts({ seam, path: middle, girths, names });
  }

  private believed(name: string): boolean {
    return !this.aside.has(name);
  }

  /** As a fraction, against its zero. */
  private growthIn(channel: Channel | undefined, row: Row): number | undefined {
    if (channel === undefined || !this.believed(channel.name)) return undefined;
    const percent = growthAt(this.givens.plan, this.rows, { name: channel.name, row });
    return percent === undefined ? undefined : percent / 100;
  }

  /** What a row says of the steel: undefined in steps and at pressures where it says nothing. */
  private readIn(row: Row): (Pick<Shown, 'girths'> & { readonly shown?: Shown }) | undefined {
    if (!GOES_UP.includes(stepAt(this.givens.plan, row.step)?.kind ?? 'drain')) return undefined;
    const gauge = this.instruments.gauges.find(
      ({ name }) => this.believed(name) && row.values[name] !== undefined,
    );
    if (gauge !== undefined && row.values[gauge.name] < (this.givens.seen_bar ?? -Infinity)) return undefined;
    const girths = this.instruments.girths.map((channel) => this.growthIn(channel, row));
    if (gauge === undefined || !girths.some((growth) => growth !== undefined)) return { girths };
    const pressure = fromBar(row.values[gauge.name]);
    return { girths, shown: { seconds: row.seconds, pressure, girths, phase: row.step } };
  }

  private readOf(channel: Channel, now: number): Read[] {
    if (!this.believed(channel.name)) return [];
    const row = this.rows.findLast(({ values }) => values[channel.name] !== undefined);
    if (row === undefined) return [];
    return [
      {
        channel: channel.name,
        value: row.values[channel.name],
        age: now - row.seconds,
        fresh: freshFor(channel),
      },
    ];
  }

  private girthReads(now: number): Read[] {
    return this.instruments.girths
      .flatMap((channel) => {
        if (channel === undefined) return [];
        const row = this.rows.findLast(({ values }) => values[channel.name] !== undefined);
        const growth = row === undefined ? undefined : this.growthIn(channel, row);
        return growth === undefined
          ? []
          : this.readOf(channel, now).map((read) => ({ ...read, value: 100 * growth }));
      })
      .sort((a, b) => b.value - a.value);
  }

  private rowsOf(step: string | undefined): readonly Row[] {
    const first = this.rows.findLastIndex((row) => row.step !== step);
    return this.rows.slice(first + 1);
  }

  private trusted(): Instruments {
    return {
      ...this.instruments,
      gauges: this.instruments.gauges.filter(({ name }) => this.believed(name)),
    };
  }

  private rising(step: Step | undefined): Pick<Facts, 'fallen' | 'pace'> {
    const open = isHold(step) && step.hold?.valve !== 'shut';
    if (step === undefined || !(step.kind === 'rise' || open)) return {};
    return (open ? openHoldFacts : riseFacts)({
      instruments: this.trusted(),
      rows: this.rowsOf(step.number),
      growthIn: (channel, row) => this.growthIn(channel, row),
    });
  }

  private holding(now: number, step: Step | undefined): Pick<Facts, 'hold' | 'leak'> {
    if (!isHold(step)) return {};
    const { plan, channels, stretch } = this.givens;
    const givens: HoldGivens = {
      plan,
      channels,
      step,
      now,
      instruments: this.trusted(),
      rows: this.rowsOf(step.number),
      growthIn: (channel, row) => this.growthIn(channel, row),
    };
    const hold = holdFacts(givens);
    const leak =
      stretch === undefined || this.middle === undefined
        ? undefined
        : leakFacts(givens, { quick: stretch.quick, path: this.middle });
    return { ...(hold === undefined ? {} : { hold }), ...(leak === undefined ? {} : { leak }) };
  }
}
