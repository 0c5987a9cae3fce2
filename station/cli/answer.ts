/** What a forecast says in words and pictures, made by `report`. */
import type { Forecast } from '@hoopwright/core/stretch';

export interface Answer {
  readonly lines: readonly string[];
  readonly warnings: readonly string[];
  readonly notes: readonly string[];
  drawing(): string;
  curve(): string;
}

export function answerOf(result: Forecast, notes: readonly string[]): Answer {
  return {
    lines: [
      `${result.datum.solver.shell.tank.name}`,
      `growth under pressure ${(100 * (result.arrived?.largest.growth ?? 0)).toFixed(2)} %`,
    ],
    warnings: result.remarks.map((r) => r.code),
    notes,
    drawing: () => '',
    curve: () => '',
  };
}
