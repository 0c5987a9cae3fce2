/** What the page asks of its workers, and what comes back: plain values that can be copied between threads. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { Stance } from '@hoopwright/report/drawing';
import type { Forecast, Moment, Phase, Released } from '@hoopwright/core/stretch';
import type { Duty, Tank } from '@hoopwright/core/tank';
import type { Issue } from '@hoopwright/wire/issue';

/** `rough`: a coarse mesh, for the hand that is still moving. `exact`: the mesh of every other answer of the program. */
export type Fineness = 'rough' | 'exact';

/** Stops of the stretch that have a name. */
export const STOPS = ['welded', 'under', 'left', 'maximum'] as const;
export type Stop = (typeof STOPS)[number];

/** Where in the stretch the hand stands. */
export type Cursor =
  | { readonly kind: 'stop'; readonly stop: Stop }
  | { readonly kind: 'place'; readonly phase: Phase; readonly growth: number; readonly pressure: number };

export interface Ask {
  readonly file: unknown;
  readonly fineness: Fineness;
  readonly cursor: Cursor;
  /** Steel in the middle of its range, where the file leaves the steel to its evidence. */
  readonly steel?: SteelDraw;
}

/** A moment without the state of the shell, which stays in the worker. */
export type MomentView = Omit<Moment, 'state'>;

export interface ForecastView
  extends Pick<
    Forecast,
    'target' | 'firstYield' | 'barrelYield' | 'maximum' | 'unstretched' | 'mass' | 'remarks'
  > {
  readonly start: MomentView;
  readonly path: readonly MomentView[];
  readonly arrived?: MomentView;
  readonly held?: MomentView;
  readonly released?: Pick<Released, 'wall' | 'newYield'> & { readonly left: MomentView };
  /** Inside volume of the filled tank at zero gauge, mm³. */
  readonly volume: number;
  /** Outside girths of the filled tank at zero gauge, mm. */
  readonly girths: readonly number[];
}

export interface Drawn {
  readonly kind: 'drawn';
  readonly fineness: Fineness;
  /** As the file has it: what the drawing dimensions. */
  readonly tank: Tank;
  readonly duty?: Duty;
  /** The flow curve was stated, came from evidence, or stands in. */
  readonly flowFrom: string;
  readonly notes: readonly string[];
  /** Thinnest wall of the barrel before the stretch, with the steel and sheet that the evidence gives, mm. */
  readonly thinnest: number;
  readonly forecast: ForecastView;
  /** The tank where the hand stands; absent: as welded. */
  readonly stance?: Stance;
  /** What it took, ms. */
  readonly took: number;
}

export interface Refused {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

export type Reply = Drawn | Refused;
