/** Energy that a stretched tank holds at its highest pressure, share by share (N mm), from the forecast of that very tank. */
import { trappedAirEnergy, waterEnergy } from '../danger/energy.ts';
import type { Forecast } from '../forecast.ts';
import type { Moment } from '../growth.ts';

export interface Stored {
  /** Elastic energy of the wall: what it gives back on release, the area under pressure over room. */
  readonly wall: number;
  readonly water: number;
  readonly air: number;
  readonly all: number;
  /** What one litre (1e6 mm³) of air less at filling takes away. */
  readonly perLitreOfAir: number;
}

/** Undefined where the tank bursts before it is released. */
export function storedAt(forecast: Forecast): Stored | undefined {
  const from = forecast.held ?? forecast.arrived;
  if (from === undefined || forecast.released === undefined) return undefined;
  const { tank } = forecast.datum.solver.shell;
  const { temperature, trappedAir } = tank.water;
  const wall = givenBack([from, ...forecast.released.moments]);
  const water = waterEnergy(forecast.datum.volume + from.growth - trappedAir, from.pressure, temperature);
  const air = trappedAirEnergy(trappedAir, from.pressure);
  return { wall, water, air, all: wall + water + air, perLitreOfAir: trappedAirEnergy(1e6, from.pressure) };
}

/** Work of the wall on the water while the pressure falls: trapezia under the release path. */
function givenBack(release: readonly Moment[]): number {
  let work = 0;
  for (let i = 1; i < release.length; i++) {
    const [a, b] = [release[i - 1], release[i]];
    work += 0.5 * (a.pressure + b.pressure) * (a.growth - b.growth);
  }
  return work;
}
