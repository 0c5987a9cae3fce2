/** Sun and wind on a filled tank: one temperature for the wall, one for the water. */
import { massOf } from '../../shell/read.ts';
import type { Datum } from '../growth.ts';
import { waterDensity } from '../water.ts';

export interface Weather {
  /** °C of the air around. */
  readonly air: number;
  /** Power that the wall takes up from the sun, averaged over its whole surface, W/m². */
  readonly sun: number;
  /** Heat that still or moving air takes away, W/(m² K): 5 in a closed hall, 30 in a stiff wind. From memory. */
  readonly wind: number;
}

export interface Warmth {
  /** °C */
  readonly water: number;
  readonly wall: number;
}

/** Heat capacities over the wetted surface, J/(m² K). */
export interface HeatStores {
  readonly water: number;
  readonly wall: number;
}

/** J/(kg K): water at 20 °C; austenitic steel, EN 10088-1 (both from memory). */
const WATER_HEAT = 4186;
const STEEL_HEAT = 500;
/** Natural convection of water at a warm wall, W/(m² K): 200 to 500, from memory, low confidence. */
const WALL_TO_WATER = 300;

export function heatStoresOf(datum: Datum): HeatStores {
  const { shell } = datum.solver;
  const { tank } = shell;
  const radius = tank.insideDiameter / 2;
  // Side and two discs; heads are a third larger than a disc, which 10 % of the capacity does not notice.
  const surface = (2 * Math.PI * radius * (tank.length + radius)) / 1e6;
  const water = 1e3 * waterDensity(tank.water.temperature) * datum.volume;
  return {
    water: (WATER_HEAT * water) / surface,
    wall: (STEEL_HEAT * 1e3 * massOf(shell)) / surface,
  };
}

/** Both temperatures after `seconds`, by backward Euler: stable however long the step. */
export function warmed(from: Warmth, weather: Weather, stores: HeatStores, seconds: number): Warmth {
  const [a, b] = [seconds / stores.wall, seconds / stores.water];
  const inner = b * WALL_TO_WATER;
  // Water: (1 + inner) w = w0 + inner s. Wall: s (1 + a (wind + h)) = s0 + a (sun + wind air + h w).
  const right = from.wall + a * (weather.sun + weather.wind * weather.air);
  const share = a * WALL_TO_WATER;
  const wall =
    (right + (share * from.water) / (1 + inner)) /
    (1 + a * weather.wind + share - (share * inner) / (1 + inner));
  return { wall, water: (from.water + inner * wall) / (1 + inner) };
}
