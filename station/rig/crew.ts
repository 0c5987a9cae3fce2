/** The crew of a rehearsal by hand: it follows the frozen plan step by step, reads what may be read, and obeys its limits. */
import { allowedBy, type FrozenPlan, type Plan, type Step } from '@hoopwright/wire/plan';
import {
  type Channel,
  type Crossing,
  crossings,
  crossingSentence,
  type Decision,
  type Row,
} from '@hoopwright/wire/reading';
import type { Body, EntryKind } from '@hoopwright/wire/record';
import {
  LOOK,
  HOLD_LOOK,
  ROW_EVERY,
  HOLD_ROWS,
  HOLD_ROW_EVERY,
  FILL_RATE,
  PATIENCE,
  RELEASE_TAKES,
  RESTART_TAKES,
} from './habits.ts';
import { type DayEnd, type Happening, rowLine, said, type Stop } from './happening.ts';
import { holdIsOver } from './holdIsOver.ts';
import type { Judge } from './judge.ts';
import type { Order, Site } from './site.ts';

export interface CrewParts {
  readonly frozen: FrozenPlan;
  readonly site: Site;
  readonly channels: readonly Channel[];
  /** s since the vent was shut at which the server dies and is started anew. */
  readonly restart?: number;
  /** Foresees and advises; left out, only the plan's limits are watched. */
  readonly judge?: Judge;
  /** Entries that stand in the record before the crew's first. */
  readonly entriesBefore?: number;
}

type Happenings<T = void> = Generator<Happening, T>;

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
    const allowed = allowedBy(this.plan.limits, 'slopeShare') ?? 0;
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
    this.parts.judge?.startAnew();
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
    const row = { seconds: site.seconds, step, values };
    this.rows.push(row);
    yield this.happening('reading', { values, step, how: 'by hand', by: this.noteTaker }, rowLine(values));
    const entry = this.entries;
    if (this.stopped === undefined) {
      const [first] = crossings({ plan: this.plan, rows: this.rows, channels });
      if (first !== undefined) yield this.crossed(first);
    }
    yield* this.judge(row, entry);
  }

  /** What is foreseen and advised after a row; the crew follows the advice to stop. */
  private *judge(row: Row, entry: number): Happenings {
    for (const { kind, body, line, stop } of this.parts.judge?.after(row, entry) ?? []) {
      yield this.happening(kind, body, line);
      if (stop !== undefined) this.stopped ??= { says: stop, step: row.step };
    }
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
