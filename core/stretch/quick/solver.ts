/** A solver for a tank as it stands: liquid head where it is upright. */
import { shellOf, type ShellSettings, STANDARD } from '../../shell/shell.ts';
import { type Solver, solverFor } from '../../shell/solve.ts';
import type { Tank } from '../../tank/tank.ts';
import { GRAVITY } from '../../units.ts';
import { waterDensity } from '../water.ts';

export function solverOf(tank: Tank, settings: ShellSettings = STANDARD): Solver {
  const weight = tank.stand?.axis === 'upright' ? waterDensity(tank.water.temperature) * GRAVITY : 0;
  return solverFor(shellOf(tank, settings), weight, tank.stand?.gauge ?? tank.length / 2);
}
