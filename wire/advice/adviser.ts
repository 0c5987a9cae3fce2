/**
 * Holds what is known of the tank while the day runs: takes rows as they come, and says what is foreseen and advised.
 * One for each run of the program; the same rows give the same words.
 */
import {
  foresee,
  type Gathered,
  type GatherRule,
  gather,
  gatherRow,
  girthsNearSeam,
  knowFrom,
  NOTHING_GATHERED,
  pointsFor,
  quickPath,
  type QuickPath,
  type SeamForesight,
  straysOf,
  type Unknowns,
  unknownsOf,
} from '@hoopwright/core/stretch';
import { diceOf } from '@hoopwright/core/gauge';
import { fromBar } from '@hoopwright/core/units';
import { isHold, type Plan, type Step, type StepKind } from '../plan/plan.ts';
import { type Channel, freshFor } from '../reading/channel.ts';
import type { Row } from '../reading/row.ts';
import { growthAt, stepAt } from '../reading/scene.ts';
import { crossings } from '../reading/watch.ts';
import type { Facts, Read, Stretchable } from './facts.ts';
import { type ForecastBody, forecastBody } from './forecastBody.ts';
import { type HoldGivens, holdFacts, leakFacts } from './look/holdFacts.ts';
import { errorsOf, type Instruments, instrumentsOf, spreadOf } from './instruments.ts';
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

/** Tanks that are tried at each forecast. */
const POINTS = 200;
const SEED = 7;
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
  private readonly unknowns: Unknowns | undefined;
  private readonly points: readonly Float64Array[];
  private readonly middle: QuickPath | undefined;
  private readonly rule: GatherRule;
  private readonly rate: number;
  private readonly oddities: Oddities;
  private readonly standing: Standing;
  private rows: Row[] = [];
  private aside: ReadonlySet<string> = new Set();
  private gathered: Gathered = NOTHING_GATHERED;
  private known = 0;
  private centre: Float64Array | undefined;
  private foreseen: ForecastBody | undefined;
  private seam: SeamForesight | undefined;

  constructor(givens: AdviserGivens) {
    const { plan, stretch } = givens;
    this.givens = givens;
    this.instruments = instrumentsOf({ ...givens, quick: givens.stretch?.quick });
    const { gauges, girths, lengths } = this.instruments;
    const target = fromBar(plan.target.pressure_bar);
    this.rule = {
      noise: {
        pressure: gauges.length === 0 ? 0 : fromBar(spreadOf(gauges[0])),
        girths: girths.map((channel, i) => (channel === undefined ? 1 : spreadOf(channel) / lengths[i])),
      },
      span: { pressure: 0.03 * target, growth: 0.0003 * plan.target.growth_percent.held.value },
    };
    if (stretch !== undefined) {
      this.unknowns = unknownsOf(stretch.draws, errorsOf(this.instruments), straysOf(stretch.quick.error));
      this.middle = quickPath(stretch.quick, middleOf(stretch.draws));
    }
    this.points = this.unknowns === undefined ? [] : pointsFor(this.unknowns, POINTS, diceOf(SEED));
    this.rate = arrivalRate(plan, this.middle);
    this.oddities = new Oddities({
      gauges,
      girths,
      lengths,
      ...(this.middle === undefined ? {} : { path: this.middle }),
      ...(stretch === undefined ? {} : { nearSeam: girthsNearSeam(stretch.quick.tank) }),
    });
    this.standing = new Standing({ instruments: this.instruments, unknowns: this.unknowns, stretch });
  }

  /** Litres count anew, and so does everything else: the tank was let down and bled. */
  startAnew(): void {
    this.rows = [];
    this.gathered = NOTHING_GATHERED;
    this.oddities.startAnew();
    this.standing.startAnew();
    [this.known, this.centre, this.foreseen, this.seam] = [0, undefined, undefined, undefined];
  }

  /** Channels whose readings are not believed from now on. */
  setAside(aside: ReadonlySet<string>): void {
    this.aside = aside;
  }

  take(row: Row): void {
    const before = this.rows.at(-1);
    if (before !== undefined && before.step === row.step && row.seconds - before.seconds < NEXT) return;
    this.rows.push(row);
    if (!GOES_UP.includes(stepAt(this.givens.plan, row.step)?.kind ?? 'drain')) return;
    const { gauges, girths } = this.instruments;
    const gauge = gauges.find(({ name }) => this.believed(name) && row.values[name] !== undefined);
    const growths = girths.map((channel) => this.growthIn(channel, row));
    const elastic = gauge !== undefined && row.values[gauge.name] < (this.givens.seen_bar ?? -Infinity);
    if (elastic) return;
    this.oddities.take(row, growths);
    if (gauge === undefined || !growths.some((growth) => growth !== undefined)) return;
    const shown = {
      seconds: row.seconds,
      pressure: fromBar(row.values[gauge.name]),
      girths: growths,
      phase: row.step,
    };
    const byWire = before !== undefined && row.seconds - before.seconds < BY_WIRE;
    this.gathered = (byWire ? gather : gatherRow)(this.gathered, shown, this.rule);
  }

  /** What is foreseen now; the same object as before where nothing new was gathered. */
  forecast(): ForecastBody | undefined {
    const { stretch, plan } = this.givens;
    const { seen } = this.gathered;
    if (stretch === undefined || this.unknowns === undefined || seen.length === this.known)
      return this.foreseen;
    this.known = seen.length;
    const knowledge = knowFrom(stretch.quick, this.unknowns, seen, this.centre);
    this.centre = knowledge.centre;
    this.standing.look(seen, knowledge);
    const foresight = foresee(stretch.quick, this.unknowns, knowledge, this.orders());
    this.seam = foresight.seam;
    this.foreseen = forecastBody({
      foresight,
      quick: stretch.quick,
      target_bar: plan.target.pressure_bar,
      rows: this.rows.length,
      seconds: this.rows.at(-1)?.seconds ?? 0,
    });
    return this.foreseen;
  }

  /** Foresees once from nothing and forgets it, so that the first forecast of the day is as quick as the others. */
  warmUp(): void {
    const { stretch } = this.givens;
    if (stretch === undefined || this.unknowns === undefined) return;
    foresee(stretch.quick, this.unknowns, knowFrom(stretch.quick, this.unknowns, []), this.orders());
  }

  private orders(): Parameters<typeof foresee>[3] {
    return { target: fromBar(this.givens.plan.target.pressure_bar), rate: this.rate, points: this.points };
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
    const { seam, middle, givens } = this;
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
