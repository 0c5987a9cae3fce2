/** Cross-section and gauge length, where force or extension need them: said, in the file, or asked for. */
import type { Issue } from '../issue/issue.ts';
import { type CouponHints, OPTION } from './hints.ts';
import type { Picked } from './pick.ts';
import type { Specimen } from './preface.ts';

/** Cross-section (mm²) and gauge length (mm); 1 where the columns are stress and strain already. */
export interface Size {
  readonly area: number;
  readonly gauge: number;
}

export type Sized =
  | { readonly ok: true; readonly size: Size }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const sizeOf = ({ stretch, load }: Picked, specimen: Specimen, hints: CouponHints): Sized => {
  const gauge = stretch.meaning === 'strain' ? 1 : (hints.gauge ?? specimen.gauge);
  const area = load.meaning === 'stress' ? 1 : (hints.area ?? specimen.area);
  const bad = [...notPositive('gauge', hints.gauge), ...notPositive('area', hints.area)];
  if (bad.length > 0) return { ok: false, issues: bad };
  if (gauge !== undefined && area !== undefined) return { ok: true, size: { gauge, area } };
  return {
    ok: false,
    issues: [
      ...(gauge === undefined
        ? [
            asked(
              'gauge length',
              stretch.name,
              `${OPTION.gauge} 50, or a line "Gauge length: 50 mm" before the table`,
            ),
          ]
        : []),
      ...(area === undefined
        ? [
            asked(
              'cross-section',
              load.name,
              `${OPTION.area} 25.1, or a line "Area: 25.1 mm2" before the table`,
            ),
          ]
        : []),
    ],
  };
};

const asked = (what: string, column: string, say: string): Issue => ({
  path: what,
  expected: `the ${what} of the specimen`,
  received: `nothing, and "${column}" needs it`,
  suggestion: `say it: ${say}`,
});

const notPositive = (hint: 'gauge' | 'area', value: number | undefined): Issue[] =>
  value === undefined || (value > 0 && value < Infinity)
    ? []
    : [{ path: OPTION[hint], expected: 'a positive number', received: String(value) }];
