/** The crew of a rehearsal by hand: it follows the frozen plan step by step, reads what may be read, and obeys its limits. */
import { type Adviser, adviceBody, type ForecastBody } from '@hoopwright/wire/advice';
import type { FrozenPlan, Plan, Step } from '@hoopwright/wire/plan';
import {
  type Channel,
  type Crossing,
  crossings,
  crossingSentence,
  type Decision,
  type Row,
} from '@hoopwright/wire/reading';
import type { Body, EntryKind } from '@hoopwright/wire/record';
import type { DayEnd, Happening } from './happening.ts';
import { holdIsOver } from './holdIsOver.ts';
import type { Order, Site } from './site.ts';

export interface CrewParts {
  readonly frozen: FrozenPlan;
  readonly site: Site;
  readonly channels: readonly Channel[];
  /** s since the vent was shut at which the server dies and is started anew. */
  readonly restart?: number;
  /** Foresees and advises; left out, only the plan's limits are watched. */
  readonly adviser?: Adviser;
  /** Entries that stand in the record before the crew's first. */
  readonly entriesBefore?: number;
}

/** Why the crew stops. */
interface Stop {
  readonly says: string;
  readonly step: string;
  readonly limit?: Crossing['limit'];
}

type Happenings<T = void> = Generator<Happening, T>;

/** s between two looks at the gauge while pumping and holding. */
const LOOK = 2;
const HOLD_LOOK = 10;
/** s between two rows while pumping. */
const ROW_EVERY = 120;
/** s into a hold at which rows are taken, and how far apart they are after the last of these. */
const HOLD_ROWS = [0, 60, 120, 300, 600];
const HOLD_ROW_EVERY = 300;
/** Rate at which the tank is filled and drained, L/min, and time that the first look round takes, s. Our choice. */
const FILL_RATE = 12;
/** A rise that takes so many times what was foreseen, and ten minutes, is given up. Our choice. */
const PATIENCE = 3;
/** s after which a release is over whatever a gauge shows: the vent is opened from behind the wall. */
const RELEASE_TAKES = 900;
/** s from a restart of the server until somebody has read the gauge. */
const RESTART_TAKES = 90;

/** Guards where the day stands. */
export class Crew {
  readonly parts: CrewParts;
  readonly plan: Plan;
  readonly rows: Row[] = [];
  readonly director: string;
  private readonly noteTaker: string;
  private readonly filling: number;
  private filled = false;
  private run = 1;
  private restarted: boolean;
  private windowFrom = 0;
  private bled = false;
  private step: Step;
  private stopped: Stop | undefined;
  private entries: number;
  private readonly readAt = new Map<string, number>();
  private foreseen: ForecastBody | undefined;
  private advised: string | undefined;

  constructor(parts: CrewParts) {
    this.parts = parts;
    this.plan = parts.frozen.plan;
    this.director = this.plan.roles.director ?? 'director';
    this.noteTaker = this.plan.roles.noteTaker ?? 'note taker';
    this.filling = (60 * this.plan.water.fill_L) / FILL_RATE;
    this.restarted = parts.restart === undefined;
    [this.step] = this.plan.steps;
    this.entries = parts.entriesBefore ?? 0;
  }

  /** The whole day, from filling to its named end. */
  *day(): Happenings<DayEnd> {
    for (let i = 0; i < this.plan.steps.length; i++) {
      const step = this.plan.steps[i];
      yield* this.begin(step);
      yield* this.doStep(step);
      if (this.parts.site.burst !== undefined) return yield* this.afterBurst();
      if (this.stopped?.limit === 'trappedAir_L' && !this.bled) {
        yield* this.bleedAgain();
        i = this.plan.steps.findIndex(({ kind }) => kind === 'seat') - 1;
      } else if (this.stopped !== undefined) return yield* this.stopAndRelease(this.stopped);
    }
    return { end: 'done', why: 'the plan was followed to its end', step: this.step.number };
  }

  private *begin(step: Step): Happenings {
    const first = step === this.plan.steps[0];
    this.step = step;
    const { number, kind, pressure_bar } = step;
    if (!first) yield this.decision('go on');
    yield this.happening('step', { step: number, kind, pressure_bar }, `step ${number}, ${said(step)}`);
  }

  private *doStep(step: Step): Happenings {
    switch (step.kind) {
      case 'fill':
        return yield* this.fill();
      case 'hold':
      case 'final hold':
        return yield* this.hold(step);
      case 'release':
      case 'approach':
        return yield* this.letDown(step.pressure_bar);
      case 'drain':
        return yield* this.pass(this.filling, { kind: 'shut' }, this.filling);
      default:
        return yield* this.pumpTo(step);
    }
  }

  private *fill(): Happenings {
    this.filled = true;
    yield this.decision('vent shut', 'full to the vent, everybody behind the wall');
  }

  private *pumpTo(step: Step): Happenings {
    const order: Order = { kind: 'pump', to: step.pressure_bar };
    const { water } = this.plan;
    const foreseen = (60 * (step.expected?.more_L ?? 0)) / (water.flow_L_per_min ?? 1);
    const begun = this.parts.site.seconds;
    let rowAt = begun + ROW_EVERY;
    while (this.going() && !this.arrived(step.pressure_bar)) {
      yield* this.pass(LOOK, order, LOOK);
      if (this.parts.site.seconds < rowAt) continue;
      rowAt += ROW_EVERY;
      yield* this.row();
      if (this.parts.site.seconds - begun > PATIENCE * foreseen + 600) return yield* this.giveUp();
    }
    if (this.going()) yield* this.row();
  }

  private *giveUp(): Happenings {
    const { seconds } = this.parts.site;
    const allowed = this.plan.limits.find(({ limit }) => limit === 'slopeShare')?.value ?? 0;
    const { number } = this.step;
    yield this.crossed({ limit: 'slopeShare', value: 0, allowed, channels: ['pump'], step: number, seconds });
  }

  private *hold(step: Step): Happenings {
    const { site } = this.parts;
    const order: Order =
      step.hold?.valve === 'shut' ? { kind: 'shut' } : { kind: 'pump', to: step.pressure_bar };
    const begun = site.seconds;
    this.windowFrom = begun;
    for (let n = 0; this.going(); n++) {
      const due =
        begun +
        (HOLD_ROWS[n] ?? HOLD_ROWS[HOLD_ROWS.length - 1] + (n - HOLD_ROWS.length + 1) * HOLD_ROW_EVERY);
      if (due > site.seconds) yield* this.pass(due - site.seconds, order, HOLD_LOOK);
      if (!this.going()) return;
      if (this.rows.at(-1)?.seconds !== site.seconds) yield* this.row();
      const why = this.going() ? this.holdIsOver(begun) : undefined;
      if (why !== undefined) {
        yield this.decision('hold ended', why);
        return;
      }
    }
  }

  private holdIsOver(begun: number): string | undefined {
    const { plan, rows, step, windowFrom } = this;
    return holdIsOver({ plan, step, rows, channels: this.parts.channels, begun, windowFrom });
  }

  private *letDown(to: number): Happenings {
    const { site } = this.parts;
    const from = site.seconds;
    while (site.burst === undefined && (this.pressure() ?? 0) > to && site.seconds - from < RELEASE_TAKES)
      yield* this.pass(HOLD_LOOK, { kind: 'release', to }, HOLD_LOOK);
    if (site.burst === undefined) yield* this.row();
  }

  private *bleedAgain(): Happenings {
    this.bled = true;
    this.stopped = undefined;
    this.rows.length = 0;
    yield this.decision('bleed again', 'too much air; down, bleed, again; litres count anew');
    yield* this.letDown(0);
    this.rows.length = 0;
    this.parts.adviser?.startAnew();
    this.parts.site.bleedAir();
  }

  private *stopAndRelease(cause: Stop): Happenings<DayEnd> {
    yield this.decision('stop and release', cause.says);
    const step = this.plan.steps.find(({ kind }) => kind === 'release') ?? this.step;
    yield* this.begin(step);
    yield* this.letDown(0);
    if (this.parts.site.burst !== undefined) return yield* this.afterBurst();
    const end = cause.limit === 'leak_mL_per_min' ? 'leaked' : 'broken off';
    return { end, why: cause.says, step: cause.step };
  }

  private *afterBurst(): Happenings<DayEnd> {
    const why = 'the pressure fell to nothing at once';
    yield this.happening('remark', { text: why, by: this.noteTaker, step: this.step.number }, why);
    return { end: 'burst', why, step: this.step.number };
  }

  /** Lets time pass in looks; the server may die meanwhile. */
  private *pass(seconds: number, order: Order, look: number): Happenings {
    const { site, restart } = this.parts;
    const end = site.seconds + seconds;
    while (site.seconds < end - 1e-9 && site.burst === undefined) {
      site.pass(Math.min(look, end - site.seconds), order);
      if (!this.restarted && site.seconds >= (restart ?? Infinity)) yield* this.startAnew();
    }
  }

  private *startAnew(): Happenings {
    const { site } = this.parts;
    this.restarted = true;
    site.pass(RESTART_TAKES, { kind: 'shut' });
    this.run += 1;
    this.windowFrom = site.seconds;
    yield this.happening(
      'gap',
      { cause: 'restart', parted_ms: 1000 * RESTART_TAKES },
      'BROKEN OFF: the server was started anew; the pump is held',
    );
    const gauge = this.parts.channels.find(({ reads }) => reads === 'pressure');
    const shows = gauge === undefined ? undefined : site.read(gauge.name);
    const values = gauge === undefined || shows === undefined ? {} : { [gauge.name]: shows };
    yield this.happening('reading', { values, step: this.step.number, how: 'by hand', by: this.director });
    yield this.decision('confirm step', 'fresh reading of the gauge after the restart');
  }

  private *row(): Happenings {
    const { site, channels } = this.parts;
    const now = this.pressure() ?? 0;
    const values: Record<string, number> = {};
    for (const { name, upTo_bar, from } of channels) {
      if (!this.step.reads.includes(name) || (from === 'at the tank' && now > upTo_bar)) continue;
      const shows = site.read(name);
      if (shows !== undefined) values[name] = shows;
    }
    const { number: step } = this.step;
    this.rows.push({ seconds: site.seconds, step, values });
    yield this.happening('reading', { values, step, how: 'by hand', by: this.noteTaker }, rowLine(values));
    for (const name of Object.keys(values)) this.readAt.set(name, this.entries);
    if (this.stopped === undefined) {
      const [first] = crossings({ plan: this.plan, rows: this.rows, channels });
      if (first !== undefined) yield this.crossed(first);
    }
    yield* this.judge();
  }

  /** What is foreseen and advised after a row goes into the record as it stands; what says the same again does not. */
  private *judge(): Happenings {
    const { adviser, site } = this.parts;
    const row = this.rows.at(-1);
    if (adviser === undefined || row === undefined) return;
    adviser.take(row);
    const forecast = adviser.forecast();
    if (forecast !== undefined && forecast !== this.foreseen) yield this.happening('forecast', forecast);
    this.foreseen = forecast;
    const advice = adviser.advice(site.seconds, this.step.number);
    const readings = advice.channels.flatMap((name) => this.readAt.get(name) ?? []);
    const body = adviceBody(advice, readings);
    const told = [body.state, ...advice.reasons.map(({ why }) => why)].join();
    if (told === this.advised) return;
    this.advised = told;
    yield this.happening('advice', body, `${body.state.toUpperCase()}: ${body.reasons[0]}`);
    if (advice.state === 'stop and release')
      this.stopped ??= { says: body.reasons[0], step: this.step.number };
  }

  private going(): boolean {
    return this.stopped === undefined && this.parts.site.burst === undefined;
  }

  private pressure(): number | undefined {
    const gauge = this.parts.channels.find(({ reads }) => reads === 'pressure');
    return gauge === undefined ? undefined : this.parts.site.read(gauge.name);
  }

  private arrived(wanted: number): boolean {
    return (this.pressure() ?? 0) >= wanted - 1e-9;
  }

  /** The crew stops for a crossed limit. */
  private crossed(crossing: Crossing): Happening {
    const { limit, value, allowed, channels, step } = crossing;
    const says = crossingSentence(crossing);
    this.stopped = { says, step, limit };
    const state = limit === 'trappedAir_L' && !this.bled ? 'bleed again' : 'stop and release';
    return this.happening(
      'advice',
      { state, limit, value, allowed, channels: [...channels], step, says },
      `${state.toUpperCase()}: ${says}`,
    );
  }

  private decision(decision: Decision, why?: string): Happening {
    const body = { decision, step: this.step.number, by: this.director };
    if (why === undefined) return this.happening('decision', body);
    return this.happening('decision', { ...body, why }, `${decision}: ${why}`);
  }

  happening(kind: EntryKind, body: Body, line?: string): Happening {
    const { site } = this.parts;
    this.entries += 1;
    const seconds = (this.filled ? this.filling : 0) + site.seconds;
    return { seconds, run: this.run, kind, body, ...(line === undefined ? {} : { line }) };
  }
}

const said = ({ kind, pressure_bar }: Step): string =>
  pressure_bar > 0 ? `${kind} at ${pressure_bar} bar` : kind;

const rowLine = (values: Readonly<Record<string, number>>): string =>
  Object.entries(values)
    .map(([name, value]) => `${name} ${value}`)
    .join('  ');
