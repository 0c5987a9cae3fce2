/** What the rules of advice look at, at one moment of the day. Human units, as in the plan. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { Explained, QuickTank } from '@hoopwright/core/stretch';
import type { Plan, Step } from '../plan/plan.ts';
import type { Crossing } from '../reading/watch.ts';
import type { ForecastBody, RangeBody } from './forecastBody.ts';

/** The quick tank of the plan and the equally likely steels it was fitted for. */
export interface Stretchable {
  readonly quick: QuickTank;
  readonly draws: readonly SteelDraw[];
}

export interface Facts {
  readonly plan: Plan;
  /** Where the day stands; undefined before the vent is shut. */
  readonly step: Step | undefined;
  /** Gauges that are believed, finest first, and how many there are in all. */
  readonly gauges: readonly Read[];
  readonly gaugesInAll: number;
  /** Girths that are believed, largest growth first, in percent. */
  readonly girths: readonly Read[];
  /** What the last row crosses. */
  readonly crossings: readonly Crossing[];
  readonly forecast?: ForecastBody;
  readonly hold?: HoldFacts;
  readonly leak?: LeakFacts;
  readonly seam?: SeamFacts;
  /** Growth of the girth that matters, %/min, over the last two rows; undefined where they do not say. */
  readonly pace?: number;
  /** Since the highest pressure of this rise, or of the last minute of an open hold: how far the gauge has fallen, bar, and what the girth has grown meanwhile, %. */
  readonly fallen?: {
    readonly pressure_bar: number;
    readonly growth_percent: number;
    readonly blur_bar: number;
  };
  readonly oddities: readonly Oddity[];
  /** Outside nine of ten of what was foreseen, but not so far that it is odd. */
  readonly noted?: Oddity;
}

/** The last reading of a channel. */
export interface Read {
  readonly channel: string;
  readonly value: number;
  /** s since it was taken, and from which on it is too old. */
  readonly age: number;
  readonly fresh: number;
}

export interface HoldFacts {
  readonly minutes: number;
  /** %/h; undefined: too few readings. */
  readonly rate?: { readonly value: number; readonly low: number; readonly high: number };
  readonly verdict?: 'settled' | 'still grows' | 'cannot tell';
  /** Minutes since it began at which growth is foreseen to be under the rate of the plan. */
  readonly settles_min?: number;
}

export interface LeakFacts {
  readonly seen: boolean;
  /** mL/min. */
  readonly loss: number;
  readonly low: number;
  readonly high: number;
  readonly smallest: number;
  /** No thermometer: it is as wide as it is because of the water's temperature. */
  readonly noThermometer: boolean;
}

/** Strain across the long seam, percent of its own width. */
export interface SeamFacts {
  /** Girth whose growth it is judged by. */
  readonly channel: string;
  readonly growth_percent: number;
  readonly now: RangeBody;
  /** At the end of the final hold. */
  readonly end: RangeBody;
}

/** Something that sound tanks and instruments do not show. */
export interface Oddity {
  readonly what:
    | 'gauges apart'
    | 'wire slipped'
    | 'girth stands out'
    | 'stronger than foreseen'
    | 'softer than foreseen';
  readonly channels: readonly string[];
  readonly explained: Explained;
}
