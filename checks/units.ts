import {
  fromBar,
  fromKgPerM3,
  fromLitre,
  fromMinutes,
  fromPercent,
  GRAVITY,
  KG_PER_POUND,
  MM3_PER_GALLON,
  MM_PER_INCH,
  MPA_PER_KSI,
  MPA_PER_PSI,
  toBar,
  toKilogram,
  toLitre,
  toPercent,
} from '../core/units.ts';
import { type Check, plusMinus, type Source } from './check.ts';

const one = (
  name: string,
  what: string,
  ours: () => number,
  theirs: number,
  unit: string,
  step: number,
): Check => ({
  id: `si-units/${name}`,
  what,
  ours,
  theirs,
  unit,
  tolerance: plusMinus(step),
  reason: step < 1e-11 ? 'exact by definition' : 'half a unit of the last printed digit',
  standing: 'from memory',
});

export const units: Source = {
  key: 'si-units',
  citation: 'NIST Special Publication 811 and ISO 80000: factors of conversion',
  checks: [
    one('psi', '1 psi', () => MPA_PER_PSI * 1e3, 6.894757, 'kPa', 5e-7),
    one('ksi', '1 ksi', () => MPA_PER_KSI, 6.894757, 'MPa', 5e-7),
    one('inch', '1 in', () => MM_PER_INCH, 25.4, 'mm', 1e-12),
    one('gallon', '1 US gallon', () => toLitre(MM3_PER_GALLON), 3.785412, 'L', 5e-7),
    one('pound', '1 lb', () => KG_PER_POUND, 0.45359237, 'kg', 1e-12),
    one('gravity', 'standard gravity', () => GRAVITY, 9806.65, 'mm/s²', 1e-12),
    one('bar', '27.3 bar, there', () => fromBar(27.3), 2.73, 'MPa', 1e-12),
    one('bar-back', '2.73 MPa, back', () => toBar(2.73), 27.3, 'bar', 1e-12),
    one('litre', '0.35 L', () => fromLitre(0.35), 350000, 'mm³', 1e-9),
    one('minutes', '7 min', () => fromMinutes(7), 420, 's', 1e-12),
    one('percent', '4 %', () => fromPercent(4), 0.04, '1', 1e-12),
    one('percent-back', '0.04, back', () => toPercent(0.04), 4, '%', 1e-12),
    one('mass', 'steel of 7900 kg/m³ and 1 L', () => toKilogram(fromKgPerM3(7900) * 1e6), 7.9, 'kg', 1e-12),
  ],
};
