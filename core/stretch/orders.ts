/** What may be asked of a forecast beside the tank and its duty. */
import type { ShellSettings } from '../shell/shell.ts';
import type { HoldSettings } from './hold.ts';
import type { RiseSettings } from './rise.ts';

export interface ForecastOrders {
  /** Pressure of release, MPa; absent: the duty's stretch pressure; without a duty nothing is released. */
  readonly target?: number;
  /** Pressures that the path must land on besides, MPa. */
  readonly marks?: readonly number[];
  readonly shell?: ShellSettings;
  readonly rise?: RiseSettings;
  readonly hold?: HoldSettings;
  /** Ends the path once the largest girth growth passes this fraction, instead of going on to the maximum. */
  readonly until?: number;
  /** Called with a fraction done, 0..1; returning true gives up and throws `GivenUp`. */
  readonly progress?: (fraction: number) => boolean;
}

/** Thrown where `progress` asked to stop. */
export class GivenUp extends Error {
  constructor() {
    super('the forecast was given up');
  }
}
