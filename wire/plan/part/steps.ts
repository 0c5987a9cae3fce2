/** The steps of the day in their order, each with what the readings should be at its end. */
import { toLitre, toPercent } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import type { Expected, Ranged, Step, StepKind } from '../plan.ts';
import { type Blur, blurOf, widened } from './blur.ts';
import type { Ladder } from '../foresight/ladder.ts';
import {
  arrivalKey,
  downKey,
  type Draw,
  heldKey,
  LEFT_KEY,
  type MarkKey,
  type MarkFigures,
  marksOf,
  type PlanRange,
  ranged,
} from '../foresight/range.ts';
import { inBar } from '../inBar.ts';
import type { SetUp } from '../setup/setUp.ts';

export interface StepGivens {
  readonly foreseen: Foreseen;
  readonly setUp: SetUp;
  readonly range?: PlanRange;
}

/** A step before it has its number and its litres since the one before. */
interface Draft {
  readonly kind: StepKind;
  readonly pressure: number;
  readonly mark?: MarkKey;
  readonly hold?: Step['hold'];
}

export function stepsOf(givens: StepGivens): Step[] {
  const sheet = new Sheet(givens);
  return numbered(draftsOf(givens)).map(({ number, draft }) => sheet.step(number, draft));
}

function draftsOf({ foreseen, setUp, range }: StepGivens): Draft[] {
  const { ladder, rest } = foreseen;
  const [seat, ...first] = ladder.first;
  const climb = [
    ...ladder.stops.map((p) => ({ p, hold: undefined })),
    ...ladder.holds.map((h) => ({ p: h.pressure, hold: h })),
  ];
  climb.sort((a, b) => a.p - b.p);
  const minutes = ranged(
    rest.time / 60,
    (range?.draws ?? []).map((d) => d.rest / 60),
  );
  const [first0, afterHold, final] = approachSteps(ladder, setUp);
  return [
    { kind: 'fill', pressure: 0 },
    { kind: 'seat', pressure: seat, mark: arrivalKey(seat) },
    ...first.map((p): Draft => ({ kind: 'first step', pressure: p, mark: arrivalKey(p) })),
    ...first0,
    ...climb.flatMap(({ p, hold }): Draft[] => {
      const rise: Draft = { kind: 'rise', pressure: p, mark: arrivalKey(p) };
      if (hold === undefined) return [rise];
      const held = { minutes: { value: hold.time / 60 }, valve: hold.valve };
      const down = hold === ladder.holds[0] ? afterHold : [];
      return [rise, { kind: 'hold', pressure: p, mark: heldKey(p), hold: held }, ...down];
    }),
    { kind: 'rise', pressure: ladder.target, mark: arrivalKey(ladder.target) },
    {
      kind: 'final hold',
      pressure: ladder.target,
      mark: heldKey(ladder.target),
      hold: { minutes, valve: 'open', settles: rest.settled },
    },
    ...final,
    { kind: 'release', pressure: 0, mark: LEFT_KEY },
    { kind: 'drain', pressure: 0 },
  ];
}

/** After the first step, after the first hold, after the final hold: none where nothing is read at the tank. */
function approachSteps(ladder: Ladder, setUp: SetUp): [Draft[], Draft[], Draft[]] {
  if (ladder.approach <= 0 || !setUp.readings.some((r) => r.from === 'at the tank')) return [[], [], []];
  const down = (from: MarkKey): Draft[] => [
    { kind: 'approach', pressure: ladder.approach, mark: downKey(from) },
  ];
  const [hold] = ladder.holds;
  return [
    down(arrivalKey(ladder.first[2])),
    hold === undefined ? [] : down(heldKey(hold.pressure)),
    down(heldKey(ladder.target)),
  ];
}

/** Points of the first step share a number: 3a, 3b. */
function numbered(drafts: readonly Draft[]): { number: string; draft: Draft }[] {
  let count = 0;
  let point = 0;
  return drafts.map((draft, i) => {
    const goesOn = draft.kind === 'first step' && drafts[i - 1]?.kind === 'first step';
    if (goesOn) point += 1;
    else {
      count += 1;
      point = 0;
    }
    return { number: draft.kind === 'first step' ? `${count}${'abc'[point]}` : String(count), draft };
  });
}

/** Writes steps; remembers the litres of the step before. */
class Sheet {
  readonly marks: ReadonlyMap<MarkKey, MarkFigures>;
  readonly names: readonly string[];
  readonly draws: readonly Draw[];
  /** Where each girth has its zero: seated, or come down to for those read at the tank. */
  readonly zeroKeys: readonly MarkKey[];
  readonly setUp: SetUp;
  readonly blur: Blur;
  before = 0;

  constructor({ foreseen, setUp, range }: StepGivens) {
    this.marks = marksOf(foreseen);
    this.names = foreseen.forecast.datum.solver.shell.tank.girths.map((g) => g.name);
    this.draws = range?.draws ?? [];
    const { ladder } = foreseen;
    const near = setUp.readings
      .filter((r) => r.from === 'at the tank' && ladder.approach > 0)
      .map((r) => r.girth);
    this.zeroKeys = this.names.map((name) =>
      near.includes(name) ? downKey(arrivalKey(ladder.first[2])) : arrivalKey(ladder.first[0]),
    );
    this.setUp = setUp;
    this.blur = blurOf(foreseen, setUp);
  }

  step(number: string, draft: Draft): Step {
    const expected = draft.mark === undefined ? undefined : this.expectedAt(draft.mark);
    return {
      number,
      kind: draft.kind,
      pressure_bar: inBar(draft.pressure),
      ...(expected === undefined ? {} : { expected }),
      ...(draft.hold === undefined ? {} : { hold: draft.hold }),
      reads: this.readsAt(draft),
    };
  }

  at(key: MarkKey): MarkFigures {
    const figures = this.marks.get(key);
    if (figures === undefined) throw new Error(`nothing is foreseen for "${key}"`);
    return figures;
  }

  expectedAt(key: MarkKey): Expected {
    const figures = this.at(key);
    const pumped = widened(
      ranged(
        toLitre(figures.pumped.all),
        this.draws.map((d) => toLitre(d.marks[key].pumped.all)),
      ),
      toLitre(this.blur.drawn(key)),
    );
    const more = pumped.value - this.before;
    this.before = pumped.value;
    return {
      girths: this.names.map((name, i) => ({ name, ...this.girth(key, i) })),
      pumped_L: pumped,
      more_L: more,
      ...this.strokes(pumped),
    };
  }

  girth(key: MarkKey, i: number): Omit<Expected['girths'][number], 'name'> {
    const here = this.at(key);
    const zeroKey = this.zeroKeys[i];
    const zero = this.at(zeroKey).girths[i];
    const draws = this.draws.map(({ marks }) => marks[key]);
    return {
      girth_mm: ranged(
        here.girths[i],
        draws.map((d) => d.girths[i]),
      ),
      change_mm: widened(
        ranged(
          here.girths[i] - zero,
          this.draws.map(({ marks }) => marks[key].girths[i] - marks[zeroKey].girths[i]),
        ),
        this.blur.girth(key, i),
      ),
      growth_percent: ranged(
        toPercent(here.growths[i]),
        draws.map((d) => toPercent(d.growths[i])),
      ),
    };
  }

  strokes(pumped: Ranged): Pick<Expected, 'strokes'> {
    const { stroke } = this.setUp.pump;
    if (stroke === undefined) return {};
    const of = (litres: number): number => (litres * 1e6) / stroke;
    const { value, low, high } = pumped;
    const span = low === undefined || high === undefined ? {} : { low: of(low), high: of(high) };
    return { strokes: { value: of(value), ...span } };
  }

  /** At the tank nothing is read but in the approach steps and while it is filled and drained. */
  readsAt({ kind, pressure }: Draft): string[] {
    const { gauges, readings, supply, thermometer } = this.setUp;
    if (kind === 'fill' || kind === 'drain') return [];
    const near = kind === 'approach' || pressure === 0;
    const girths = readings.filter((r) => near || r.from === 'behind the wall').map((r) => r.girth);
    return [
      ...gauges.filter((g) => g.from === 'behind the wall').map((g) => g.name),
      ...girths,
      supply.by,
      ...(thermometer === undefined ? [] : ['thermometer']),
    ];
  }
}
