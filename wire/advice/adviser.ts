/**
 * Holds what is known of the tank while the day runs: takes rows as they come, and says what is foreseen and advised.
 * One for each run of the program; the same rows give the same words.
 */
import {
  answersOf,
  balanceOf,
  creepFound,
  foresee,
  type Gathered,
  type GatherRule,
  gather,
  gatherRow,
  knowFrom,
  NOTHING_GATHERED,
  pointsFor,
  quickPath,
  type QuickPath,
  type QuickTank,
  straysOf,
  type Unknowns,
  unknownsOf,
} from '@hoopwright/core/stretch';
import type { SteelDraw } from '@hoopwright/core/steel';
import { diceOf } from '@hoopwright/core/gauge';
import { fromBar, fromLitre } from '@hoopwright/core/units';
import type { AdviceBody } from '../day/body.ts';
import type { Plan } from '../plan/plan.ts';
import { type Channel, freshFor } from '../reading/channel.ts';
import type { Row } from '../reading/row.ts';
import { growthAt, litres, stepAt } from '../reading/scene.ts';
import { crossings } from '../reading/watch.ts';
import type { Facts, HoldFacts, LeakFacts, Read } from './facts.ts';
import { type ForecastBody, forecastBody } from './forecastBody.ts';
import { Oddities } from './oddities.ts';
import { type Advice, advise } from './rules.ts';
import { explanationSentence, reasonSentence, tellerSentence } from './say.ts';

/** The quick tank of the plan and the equally likely steels it was fitted for. */
export interface Stretchable {
  readonly quick: QuickTank;
  readonly draws: readonly SteelDraw[];
}

export interface AdviserGivens {
  readonly plan: Plan;
  readonly channels: readonly Channel[];
  /** Absent where the steel has no range: nothing is foreseen then. */
  readonly stretch?: Stretchable;
}

/** Tanks that are tried at each forecast. */
const POINTS = 200;
const SEED = 7;
/** s between two rows under which they come by wire and are gathered. */
const BY_WIRE = 15;
/** Gains and zeros that instruments may be off by: class 0.5 for gauges and wires, 0.05 % for tapes. Common practice, no source. */
const GAIN = { gauge: 0.005, wire: 0.005, tape: 0.0005 } as const;
/** Drift of a wire (mm) and of the water's temperature (K) in five minutes that nobody sees. Our estimate. */
const DRIFT = { time: 300, wire: 0.02, water: 0.2 } as const;
/** Spread of what makes a rise look like one reading: no reading is better than half its step. */
const HALF_STEP = 0.5;

interface Instruments {
  readonly gauges: readonly Channel[];
  /** In the order of the quick tank's girths, or of the plan's where there is none; undefined: not read. */
  readonly girths: readonly (Channel | undefined)[];
  /** Outside girth of each, mm. */
  readonly lengths: readonly number[];
  readonly thermometer?: Channel;
}

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
  private rows: Row[] = [];
  private aside: ReadonlySet<string> = new Set();
  private gathered: Gathered = NOTHING_GATHERED;
  private known = 0;
  private centre: Float64Array | undefined;
  private foreseen: ForecastBody | undefined;

  constructor(givens: AdviserGivens) {
    const { plan, stretch } = givens;
    this.givens = givens;
    this.instruments = instrumentsOf(givens);
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
    });
  }

  /** Litres count anew, and so does everything else: the tank was let down and bled. */
  startAnew(): void {
    this.rows = [];
    this.gathered = NOTHING_GATHERED;
    this.oddities.startAnew();
    [this.known, this.centre, this.foreseen] = [0, undefined, undefined];
  }

  /** Channels whose readings are not believed from now on. */
  setAside(aside: ReadonlySet<string>): void {
    this.aside = aside;
  }

  take(row: Row): void {
    const before = this.rows.at(-1);
    this.rows.push(row);
    const { gauges, girths } = this.instruments;
    const gauge = gauges.find(({ name }) => this.believed(name) && row.values[name] !== undefined);
    const growths = girths.map((channel) => this.growthIn(channel, row));
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
    const target = fromBar(plan.target.pressure_bar);
    const foresight = foresee(stretch.quick, this.unknowns, knowledge, {
      target,
      rate: this.rate,
      points: this.points,
    });
    this.foreseen = forecastBody({
      foresight,
      quick: stretch.quick,
      target_bar: plan.target.pressure_bar,
      rows: this.rows.length,
      seconds: this.rows.at(-1)?.seconds ?? 0,
    });
    return this.foreseen;
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
    const hold = this.holdFacts(seconds, number);
    const leak = this.leakFacts(number);
    const fallen = this.fallen();
    const pace = this.pace();
    return {
      plan,
      step,
      gauges: this.instruments.gauges.flatMap((channel) => this.readOf(channel, seconds)),
      gaugesInAll: all.length,
      girths: this.girthReads(seconds),
      crossings: last === undefined ? [] : crossings({ plan, rows: this.rows, aside: this.aside, channels }),
      oddities: this.oddities.found(this.aside),
      ...(forecast === undefined ? {} : { forecast }),
      ...(hold === undefined ? {} : { hold }),
      ...(leak === undefined ? {} : { leak }),
      ...(fallen === undefined ? {} : { fallen }),
      ...(pace === undefined ? {} : { pace }),
    };
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

  private holdFacts(seconds: number, number: string | undefined): HoldFacts | undefined {
    const kind = number === undefined ? undefined : stepAt(this.givens.plan, number)?.kind;
    if (kind !== 'hold' && kind !== 'final hold') return undefined;
    const rows = this.rowsOf(number);
    const begun = rows[0]?.seconds;
    if (begun === undefined) return undefined;
    const minutes = (seconds - begun) / 60;
    const found = this.instruments.girths
      .flatMap((channel, i) => {
        if (channel === undefined || !this.believed(channel.name)) return [];
        const readings = rows.flatMap((row) => {
          const growth = this.growthIn(channel, row);
          return growth === undefined ? [] : [{ time: row.seconds - begun, growth }];
        });
        const length = this.instruments.lengths[i];
        const window = Math.min(WINDOW, 0.5 * (readings.at(-1)?.time ?? 0));
        const creep = creepFound({
          readings,
          blur: spreadOf(channel) / length,
          drift: DRIFT.wire / length / DRIFT.time / Math.sqrt(3),
          window: kind === 'final hold' ? WINDOW : Math.max(60, window),
        });
        return creep === undefined ? [] : [creep];
      })
      .sort((a, b) => b.rate - a.rate)[0];
    if (found === undefined) return { minutes };
    const { rate, low, high, verdict, settlesAt } = found;
    return {
      minutes,
      rate: { value: PER_HOUR * rate, low: PER_HOUR * low, high: PER_HOUR * high },
      verdict,
      ...(settlesAt === undefined ? {} : { settles_min: settlesAt / 60 }),
    };
  }

  /** Of the last ten minutes of a hold. */
  private leakFacts(number: string | undefined): LeakFacts | undefined {
    const { plan, stretch } = this.givens;
    const step = number === undefined ? undefined : stepAt(plan, number);
    const { gauges, thermometer } = this.instruments;
    if (this.middle === undefined || stretch === undefined || gauges.length === 0) return undefined;
    if (step?.kind !== 'hold' && step?.kind !== 'final hold') return undefined;
    const all = this.rowsOf(number);
    const end = all.at(-1)?.seconds ?? 0;
    const from = Math.max((all[0]?.seconds ?? 0) + AFTER_ARRIVAL, end - LEAK_WINDOW);
    const rows = all.filter(({ seconds, values }) => seconds >= from && values[gauges[0].name] !== undefined);
    if (rows.length < 2 || end - from < LEAK_LEAST) return undefined;
    const open = step.hold?.valve !== 'shut';
    const window = rows.flatMap((row) => {
      const growths = this.instruments.girths.flatMap((channel) => this.growthIn(channel, row) ?? []);
      const drawn = litres({ channels: this.givens.channels, plan }, row);
      if (growths.length === 0 || (open && drawn === undefined)) return [];
      const water = thermometer === undefined ? undefined : row.values[thermometer.name];
      return [
        {
          seconds: row.seconds,
          pressure: fromBar(row.values[gauges[0].name]),
          growths,
          ...(open && drawn !== undefined ? { drawn: fromLitre(drawn) } : {}),
          ...(water === undefined ? {} : { water }),
        },
      ];
    });
    const last = window.at(-1);
    if (last === undefined) return undefined;
    const { tank, filled } = stretch.quick;
    const answers = answersOf({
      path: this.middle,
      filled,
      growth: Math.max(...last.growths, this.middle.growth[1]),
      pressure: last.pressure,
      temperature: tank.water.temperature,
      air: tank.water.trappedAir,
    });
    const found = balanceOf(window, answers, this.doubts());
    if (found === undefined) return undefined;
    return {
      seen: found.verdict === 'seen',
      loss: PER_MINUTE * found.loss,
      low: PER_MINUTE * found.low,
      high: PER_MINUTE * found.high,
      smallest: PER_MINUTE * found.smallest,
      noThermometer: found.because === 'no thermometer',
    };
  }

  private doubts() {
    const { gauges, girths, lengths, thermometer } = this.instruments;
    const blurs = girths.flatMap((channel, i) =>
      channel === undefined ? [] : [spreadOf(channel) / lengths[i]],
    );
    const supply = this.givens.channels.find(({ reads }) => reads === 'litres' || reads === 'strokes');
    const step = supply?.reads === 'strokes' ? (this.givens.plan.water.stroke_mL ?? 0) / 1e3 : 1;
    return {
      pressure: fromBar(spreadOf(gauges[0])),
      growth: Math.max(...blurs),
      drawn: supply === undefined ? 0 : fromLitre(step * spreadOf(supply)),
      water: thermometer === undefined ? 0 : spreadOf(thermometer),
      growthDrift: DRIFT.wire / lengths[0] / DRIFT.time / Math.sqrt(3),
      waterDrift: DRIFT.water / DRIFT.time / Math.sqrt(3),
    };
  }

  /** Since the highest pressure of this rise. */
  private fallen(): Facts['fallen'] {
    const { gauges } = this.instruments;
    const now = this.rows.at(-1);
    if (now === undefined || gauges.length === 0 || stepAt(this.givens.plan, now.step)?.kind !== 'rise')
      return undefined;
    const [{ name }] = gauges;
    const rows = this.rowsOf(now.step).filter(({ values }) => values[name] !== undefined);
    const top = rows.reduce<Row | undefined>(
      (a, b) => (a === undefined || b.values[name] > a.values[name] ? b : a),
      undefined,
    );
    if (top === undefined || now.values[name] === undefined) return undefined;
    const grown = this.instruments.girths.flatMap((channel) => {
      const [a, b] = [this.growthIn(channel, top), this.growthIn(channel, now)];
      return a === undefined || b === undefined ? [] : [100 * (b - a)];
    });
    if (grown.length === 0) return undefined;
    return {
      pressure_bar: top.values[name] - now.values[name],
      growth_percent: Math.max(...grown),
      blur_bar: 4 * spreadOf(gauges[0]),
    };
  }

  private pace(): number | undefined {
    const [a, b] = [this.rows.at(-2), this.rows.at(-1)];
    if (a === undefined || b === undefined || a.step !== b.step || !(b.seconds > a.seconds + BY_WIRE))
      return undefined;
    const paces = this.instruments.girths.flatMap((channel) => {
      const [from, to] = [this.growthIn(channel, a), this.growthIn(channel, b)];
      return from === undefined || to === undefined
        ? []
        : [(100 * (to - from)) / ((b.seconds - a.seconds) / 60)];
    });
    return paces.length === 0 ? undefined : Math.max(...paces);
  }
}

const PER_HOUR = 100 * 3600;
/** mm³/s to mL/min. */
const PER_MINUTE = 0.06;
/** s over which the rate of the final hold is stated (core/stretch/day/rest.ts). */
const WINDOW = 1800;
/** s of a hold that the balance of water looks back, needs at the least, and leaves out after arrival. */
const LEAK_WINDOW = 900;
const LEAK_LEAST = 240;
const AFTER_ARRIVAL = 60;

/** Standard deviation of one reading, in its unit. */
const spreadOf = ({ noise, resolution }: Channel): number =>
  Math.max(Math.hypot(noise ?? 0, resolution / Math.sqrt(12)), 1e-9);

function instrumentsOf({ plan, channels, stretch }: AdviserGivens): Instruments {
  const girths = channels.filter(({ reads }) => reads === 'girth');
  const names = stretch?.quick.tank.girths.map(({ name }) => name) ?? girths.map(({ name }) => name);
  const expected = plan.steps.flatMap(({ expected: all }) => all?.girths ?? []);
  const thermometer = channels.find(({ reads }) => reads === 'temperature');
  return {
    gauges: channels.filter(({ reads }) => reads === 'pressure').sort((a, b) => a.resolution - b.resolution),
    girths: names.map((name) => girths.find((channel) => channel.name === name)),
    lengths: names.map(
      (name) => expected.find((girth) => girth.name === name)?.girth_mm.value ?? USUAL_GIRTH,
    ),
    ...(thermometer === undefined ? {} : { thermometer }),
  };
}
/** mm; only where the plan foresees no girth. */
const USUAL_GIRTH = 1500;

const errorsOf = ({ gauges, girths, lengths }: Instruments) => ({
  gauge: { gain: GAIN.gauge, zero: gauges.length === 0 ? 0 : fromBar(HALF_STEP * gauges[0].resolution) },
  girths: girths.map((channel, i) => ({
    gain: channel?.by.includes('wire') === true ? GAIN.wire : GAIN.tape,
    zero: channel === undefined ? 1 : spreadOf(channel) / lengths[i],
  })),
});

/** The draw whose sum of inputs is in the middle would do as well: any likely steel gives the litres and the rates. */
const middleOf = (draws: readonly SteelDraw[]): SteelDraw =>
  [...draws].sort((a, b) => a.factors[1] - b.factors[1])[draws.length >> 1];

/** Growth rate (1/s) that the pump gives on arrival: its flow over the room of a unit of growth. */
function arrivalRate({ water }: Plan, path: QuickPath | undefined): number {
  if (water.flow_L_per_min === undefined || path === undefined) return USUAL_RATE;
  const j = path.growth.findIndex((growth) => growth > 0.03);
  const room = (path.volume[j] - path.volume[j - 1]) / (path.growth[j] - path.growth[j - 1]);
  return fromLitre(water.flow_L_per_min) / 60 / room;
}
const USUAL_RATE = 3e-5;

/** Advice as it stands in the record. `readings`: the entries behind it. */
export function adviceBody(advice: Advice, readings: readonly number[]): AdviceBody {
  const oddity = advice.reasons.find((reason) => reason.why === 'oddity')?.oddity;
  const explanations = oddity?.explained.ranked
    .slice(0, 3)
    .map(({ explanation }) => explanationSentence(explanation));
  const tell = oddity?.explained.tell;
  return {
    state: advice.state,
    reasons: advice.reasons.map(reasonSentence),
    readings: [...new Set(readings)].sort((a, b) => a - b),
    ...(explanations === undefined ? {} : { explanations }),
    ...(tell === undefined ? {} : { tellApart: tellerSentence(tell) }),
  };
}
