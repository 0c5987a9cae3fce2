/** The plan of the day as it crosses a boundary: human units in the key names, one value per key, no sentences. */
import type { Danger } from './danger.ts';
import type { Assumed, Open } from './setup/setUp.ts';
import type { GirthMeans, Paper, ReadingPlace } from './setup/day.ts';

export const PLAN_FORMAT = 1;

/** Median (or the one forecast there is) and its 90 % range; without a range of steel there is none. */
export interface Ranged {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
}

export interface Plan {
  readonly hoopwrightPlan: typeof PLAN_FORMAT;
  readonly tank: PlannedTank;
  readonly forecast: PlanForecast;
  readonly target: Target;
  readonly water: PlanWater;
  readonly steps: readonly Step[];
  /** Pressures of the steps are multiples of it, bar. */
  readonly unit_bar: number;
  /** The final hold: at least, at most. */
  readonly rest: { readonly atLeast_min: number; readonly cap_min: number };
  readonly limits: readonly Limit[];
  readonly places: readonly Place[];
  /** Pressure up to which somebody may be at the tank, bar; 0: nobody, as long as there is any. */
  readonly approach_bar: number;
  readonly instruments: readonly Need[];
  readonly firstStep: FirstStepSees;
  readonly leak: LeakSeen;
  readonly roles: { readonly director?: string; readonly pump?: string; readonly noteTaker?: string };
  readonly dangers: readonly Danger[];
  readonly assumed: readonly Assumed[];
  readonly open: readonly Open[];
  readonly remarks: readonly PlanRemark[];
  readonly paper: Paper;
}

export interface PlannedTank {
  readonly name: string;
  readonly serial?: string;
  /** Of the tank file, 64 hex digits. */
  readonly digest: string;
  /** Of the coupon files that it names, 64 hex digits; undefined where none speaks for its steel. */
  readonly evidence?: string;
}

export interface PlanForecast {
  /** Version of the program that made it. */
  readonly program: string;
  readonly digest: string;
  /** Undefined: one state of steel is assumed, nothing has a range. */
  readonly range?: {
    readonly draws: number;
    /** Of them, those that give way before the day is over. */
    readonly burst: number;
    /** Pieces of evidence behind it. */
    readonly basis: readonly string[];
  };
}

/** Published methods the plan is modelled on; a wall thinner than they cover is outside all of them. */
export type Model = 'EN 13458-2' | 'EN 13530-2' | 'ASME VIII-1 Appendix 44' | 'none';

export interface Target {
  readonly workingPressure_bar: number;
  readonly stretchFactor: number;
  readonly pressure_bar: number;
  readonly model: Model;
  /** p r0/t0 at the thinnest course, mid-surface, before stretching. */
  readonly hoopStress_MPa: number;
  readonly thinnestWall_mm: number;
  readonly firstYield_bar?: number;
  readonly barrelYield_bar?: number;
  /** Growth of the girth that grows most: on arrival, at the end of the final hold, and what is left after release. */
  readonly growth_percent: { readonly arrived: Ranged; readonly held: Ranged; readonly left: Ranged };
  readonly maximum?: {
    readonly kind: string;
    readonly pressure_bar: Ranged;
    readonly growth_percent: number;
    readonly extrapolated: boolean;
  };
  /** Pressure that 99 of 100 such tanks survive; undefined without a range of steel. */
  readonly survive99_bar?: number;
  /** What the draws assure of it at 95 %; undefined where they are too few. */
  readonly assured99_bar?: number;
}

export interface Shares {
  readonly growth: number;
  readonly compression: number;
  readonly trappedAir: number;
}

export interface PlanWater {
  /** To fill it to the vent, at zero pressure. */
  readonly fill_L: number;
  /** Drawn from closing the vent to the end of the final hold. */
  readonly pump_L: Ranged;
  readonly shares_L: Shares;
  /** mL per bar far below yield, share by share. */
  readonly perBar_mL: Shares;
  readonly stroke_mL?: number;
  readonly strokes?: Ranged;
  readonly flow_L_per_min?: number;
  /** Time at the pump, holds left out. */
  readonly pumping_min?: Ranged;
  readonly temperature_C: number;
  readonly trappedAir_L: number;
  readonly chloride_ppm?: number;
}

export const STEP_KINDS = [
  'fill',
  'seat',
  'first step',
  'approach',
  'rise',
  'hold',
  'final hold',
  'release',
  'drain',
] as const;
export type StepKind = (typeof STEP_KINDS)[number];

export interface Step {
  /** "1", "3b": as it stands on card and log sheet. */
  readonly number: string;
  readonly kind: StepKind;
  readonly pressure_bar: number;
  readonly expected?: Expected;
  readonly hold?: {
    readonly minutes: Ranged;
    readonly valve: 'open' | 'shut';
    /** Final hold only: whether it comes to rest before the cap. */
    readonly settles?: boolean;
  };
  /** Names of the places read in this step. */
  readonly reads: readonly string[];
}

/** The one on the way or the final one. */
export const isHold = (step: Step | undefined): step is Step =>
  step?.kind === 'hold' || step?.kind === 'final hold';

/** What the readings should be at the end of a step. */
export interface Expected {
  readonly girths: readonly ExpectedGirth[];
  /** Drawn since the vent was closed, and since the step before. */
  readonly pumped_L: Ranged;
  readonly more_L: number;
  readonly strokes?: Ranged;
}

export interface ExpectedGirth {
  readonly name: string;
  /** Outside girth of the tank as drawn. */
  readonly girth_mm: Ranged;
  /** Against the zero at the seating pressure: what a wire or scale shows. */
  readonly change_mm: Ranged;
  readonly growth_percent: Ranged;
}

/** Limits that the last row alone can cross. */
export const WATCHED_LIMITS = [
  'pressure_bar',
  'trappedAir_L',
  'leak_mL_per_min',
  'growthLeft_percent',
  'growthUnderPressure_percent',
  'girthsApart_percent',
  'gaugesApart_bar',
  'slopeShare',
] as const;
export type WatchedLimit = (typeof WATCHED_LIMITS)[number];

/** Limits that are judged from many rows and from what is known of the steel: whoever advises does it. */
export const ADVISED_LIMITS = [
  'seamStrain_percent',
  'growthWithoutPressure_percent',
  'marginToMaximum',
] as const;
export type AdvisedLimit = (typeof ADVISED_LIMITS)[number];

export type LimitKey = WatchedLimit | AdvisedLimit;

export interface Limit {
  readonly limit: LimitKey;
  readonly value: number;
  /** What it would be if nobody had set it. */
  readonly usual: number;
  readonly set?: { readonly by: string; readonly why: string };
}

/** What the plan allows; undefined where it has no such limit. */
export const allowedBy = (limits: readonly Limit[], key: LimitKey): number | undefined =>
  limits.find(({ limit }) => limit === key)?.value;

/** Something that is read, and from where. */
export interface Place {
  readonly name: string;
  readonly reads: 'pressure' | 'girth' | 'litres' | 'temperature';
  readonly by: GirthMeans | 'gauge' | 'strokes' | 'weighing' | 'meter' | 'thermometer';
  readonly from: ReadingPlace;
  /** Highest pressure at which it is read. */
  readonly upTo_bar: number;
}

/** What a reading of this tank asks of its instrument. Units are those of the key. */
export interface Need {
  readonly name: string;
  readonly unit: 'bar' | 'mm' | 'mL' | 'K';
  readonly range?: number;
  readonly resolution: number;
  readonly has: { readonly range?: number; readonly resolution?: number };
  readonly enough: boolean;
}

/** What the first step will tell, if all is as foreseen. */
export interface FirstStepSees {
  /** Trapped air as it will be found, with the range it will have. */
  readonly air_L: Ranged;
  /** Zero of the gauge as it will be found (0), with its range, bar. */
  readonly zero_bar: Ranged;
  readonly slopes: readonly {
    readonly name: string;
    readonly mm_per_bar: number;
    /** Half of the 90 % range of (measured slope/model). */
    readonly within_percent: number;
    /** False: this reading is too blurred to check its girth in the first step. */
    readonly tells: boolean;
  }[];
  /**
   * Without a screen: air at filling = (litres at the last point - litres at the first - `tank_L`)/`share`, from Boyle's
   * law at the two pressures and what the tank draws between them without any air.
   */
  readonly byHand: { readonly tank_L: number; readonly share: number };
  /** Smallest loss told from none, valve shut at the last point for so many minutes. */
  readonly loss_mL_per_min: number;
  readonly minutes: number;
}

export interface LeakSeen {
  readonly minutes: number;
  /** Smallest loss that is told from none, mL/min. */
  readonly open_mL_per_min: number;
  readonly shut_mL_per_min: number;
  /** What blurs it most, valve shut. */
  readonly blurredBy: 'litres' | 'girth' | 'pressure' | 'temperature';
  /** Half width of the 90 % range of the growth rate over the window of the final hold, %/h. */
  readonly rate_percent_per_h: number;
  /** What the wall takes up at the rate that ends the final hold, mL/min. */
  readonly uptake_mL_per_min: number;
}

/** What the person should know besides, as a code. */
export type PlanRemark =
  | 'no rate effect'
  | 'does not settle'
  | 'does not yield'
  | 'hold within first step'
  | 'no maximum'
  | 'maximum beyond evidence'
  | 'relief far over'
  | 'gauge over-ranged'
  | 'floor too weak'
  | 'nearer than the method'
  | 'chloride over limit'
  | 'too cold'
  | 'seam strained over its limit';
