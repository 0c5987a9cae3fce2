/** What is foreseen of the end of the final hold, from what was gathered of the day: one for each adviser with a range. */
import {
  foresee,
  type Foresight,
  type Gathered,
  type GatherRule,
  gather,
  gatherRow,
  type Knowledge,
  knowFrom,
  NOTHING_GATHERED,
  pointsFor,
  type SeamForesight,
  type Seen,
  seenWith,
  type Shown,
  type Unknowns,
} from '@hoopwright/core/stretch';
import { diceOf } from '@hoopwright/core/gauge';
import { fromBar } from '@hoopwright/core/units';
import type { Stretchable } from '../facts.ts';
import { type ForecastBody, forecastBody } from '../forecastBody.ts';

export interface ForeseeingGivens {
  readonly stretch: Stretchable;
  readonly unknowns: Unknowns;
  readonly rule: GatherRule;
  /** Stretch pressure, bar, and growth rate on arrival, 1/s. */
  readonly target_bar: number;
  readonly rate: number;
  /** Told of all that was seen and what is known by it. */
  readonly known: (seen: readonly Seen[], knowledge: Knowledge) => void;
}

/** How many rows there were, and the s of the last reading. */
export interface Stood {
  readonly rows: number;
  readonly seconds: number;
}

/** Tanks that are tried at each forecast. */
const POINTS = 200;
const SEED = 7;

/** Guards what was gathered and what was made of it. */
export class Foreseeing {
  private readonly givens: ForeseeingGivens;
  private readonly points: readonly Float64Array[];
  private gathered: Gathered = NOTHING_GATHERED;
  private known = 0;
  private centre: Float64Array | undefined;
  private foreseen: ForecastBody | undefined;
  private seamNow: SeamForesight | undefined;

  constructor(givens: ForeseeingGivens) {
    this.givens = givens;
    this.points = pointsFor(givens.unknowns, POINTS, diceOf(SEED));
  }

  /** Strain of the long seam as it was foreseen last. */
  get seam(): SeamForesight | undefined {
    return this.seamNow;
  }

  startAnew(): void {
    this.gathered = NOTHING_GATHERED;
    [this.known, this.centre, this.foreseen, this.seamNow] = [0, undefined, undefined, undefined];
  }

  take(shown: Shown, byWire: boolean): void {
    this.gathered = (byWire ? gather : gatherRow)(this.gathered, shown, this.givens.rule);
  }

  /** The same object as before where nothing new was gathered. */
  forecast(stood: Stood): ForecastBody | undefined {
    const { seen } = this.gathered;
    if (seen.length === this.known) return this.foreseen;
    this.known = seen.length;
    const knowledge = this.knowledge(seen);
    this.centre = knowledge.centre;
    this.givens.known(seen, knowledge);
    const foresight = this.foresight(knowledge);
    this.seamNow = foresight.seam;
    this.foreseen = this.body(foresight, stood);
    return this.foreseen;
  }

  /** With a reading that is not taken: it is foreseen, and forgotten. Undefined where it says nothing more. */
  forecastWith(shown: Shown, stood: Stood): ForecastBody | undefined {
    const seen = seenWith(this.gathered, shown, this.givens.rule);
    return seen === undefined ? undefined : this.body(this.foresight(this.knowledge(seen)), stood);
  }

  /** Foresees once from nothing and forgets it, so that the first forecast of the day is as quick as the others. */
  warmUp(): void {
    this.foresight(this.knowledge([]));
  }

  private knowledge(seen: readonly Seen[]): Knowledge {
    const { stretch, unknowns } = this.givens;
    return knowFrom(stretch.quick, unknowns, seen, this.centre);
  }

  private foresight(knowledge: Knowledge): Foresight {
    const { stretch, unknowns, target_bar, rate } = this.givens;
    return foresee(stretch.quick, unknowns, knowledge, {
      target: fromBar(target_bar),
      rate,
      points: this.points,
    });
  }

  private body(foresight: Foresight, stood: Stood): ForecastBody {
    const { stretch, target_bar } = this.givens;
    return forecastBody({ foresight, quick: stretch.quick, target_bar, ...stood });
  }
}
