import { draining, collapsePressure } from '../../core/stretch/danger/collapse.ts';
import {
  gasEnergy,
  plugForce,
  trappedAirEnergy,
  wallEnergy,
  waterEnergy,
} from '../../core/stretch/danger/energy.ts';
import { floorGovernsUpTo, standOff } from '../../core/stretch/danger/standoff.ts';
import {
  type Check,
  PRINTED,
  percent,
  plusMinus,
  type Source,
  type Standing,
  type Tolerance,
} from '../check.ts';

const one = (
  id: string,
  what: string,
  ours: () => number,
  theirs: number,
  unit: string,
  tolerance: Tolerance,
  standing: Standing = 'computed from published',
  reason = PRINTED,
): Check => ({ id, what, ours, theirs, unit, tolerance, standing, reason });

const MJ = 1e9;
const ENERGY = 3.048 * MJ;

export const pcc2: Source = {
  key: 'pcc-2-2008',
  citation:
    'ASME PCC-2-2008, Article 5.1: energy of gas under test and distance 20 m/kg^(1/3) TNT^(1/3), 30 m at least',
  checks: [
    one(
      'pcc-2-2008/energy',
      'air, 1 m³ at 20 bar gauge (atmosphere 101 kPa, as the method has it)',
      () => gasEnergy(1e9, 2, 0.101) / MJ,
      3.048,
      'MJ',
      percent(0.02),
    ),
    one(
      'pcc-2-2008/tnt',
      'its TNT equivalent',
      () => standOff(ENERGY, '2008').tnt,
      0.714,
      'kg',
      plusMinus(5e-4),
    ),
    one(
      'pcc-2-2008/distance',
      'distance by the cube root, edition 2008',
      () => standOff(ENERGY, '2008').byEnergy / 1e3,
      17.9,
      'm',
      plusMinus(0.05),
    ),
    one(
      'pcc-2-2008/kept',
      'distance to keep, edition 2008',
      () => standOff(ENERGY, '2008').distance / 1e3,
      30,
      'm',
      plusMinus(0),
      'published',
      'the floor',
    ),
    one(
      'pcc-2-2008/floor',
      'the 30 m floor governs up to, edition 2008',
      () => floorGovernsUpTo('2008') / MJ,
      14.4,
      'MJ',
      plusMinus(0.05),
    ),
    one(
      'pcc-2-2008/second-floor',
      'distance just over 135.5 MJ, where the floor is 60 m',
      () => standOff(135.6 * MJ, '2008').distance / 1e3,
      63.35,
      'm',
      plusMinus(0.02),
      'computed from published',
      'by hand: 20 (135.6/4.26692)^(1/3)',
    ),
  ],
};

export const pcc2Later: Source = {
  key: 'pcc-2-501',
  citation:
    'ASME PCC-2, Appendix 501-II and 501-III (later editions): distance Rs (2 TNT)^(1/3), Rs 20 m/kg^(1/3)',
  checks: [
    one(
      'pcc-2-501/distance',
      'distance by the cube root, later editions',
      () => standOff(ENERGY, 'later').byEnergy / 1e3,
      22.5,
      'm',
      plusMinus(0.05),
    ),
    one(
      'pcc-2-501/floor',
      'the 30 m floor governs up to, later editions',
      () => floorGovernsUpTo('later') / MJ,
      7.2,
      'MJ',
      plusMinus(0.05),
      'computed from published',
      'by hand: half of the 2008 value',
    ),
  ],
};

const barrel = { volume: 350e6, radius: 301, wall: 2, young: 193e3, poisson: 0.29 };

export const tankEnergy: Source = {
  key: 'tank-energy',
  citation: 'Hand calculation of the energies of tanks under test, worked out for this project',
  checks: [
    one(
      'tank-energy/wall',
      'wall of 350 L, 600 x 2 mm, 25 bar',
      () => wallEnergy(barrel, 2.5) / 1e3,
      1638,
      'J',
      plusMinus(0.5),
    ),
    one(
      'tank-energy/water',
      'its water, 20 °C',
      () => waterEnergy(350e6, 2.5, 20) / 1e3,
      502,
      'J',
      plusMinus(0.5),
    ),
    one(
      'tank-energy/air',
      'each litre of air at filling, 25 bar',
      () => trappedAirEnergy(1e6, 2.5) / 1e3,
      153,
      'J',
      plusMinus(0.5),
    ),
    one(
      'tank-energy/water-1m3',
      'water of 1 m³ at 20 bar',
      () => waterEnergy(1e9, 2, 20) / 1e3,
      917,
      'J',
      plusMinus(1),
      'computed from published',
      'bulk modulus 2.18 or 2.179 GPa',
    ),
    one(
      'tank-energy/air-under',
      '10 L of air under 20 bar',
      () => (gasEnergy(10e6, 2) / MJ) * 1e3,
      30,
      'kJ',
      plusMinus(0.5),
    ),
    one(
      'tank-energy/air-filling',
      '10 L of air at filling, 20 bar',
      () => trappedAirEnergy(10e6, 2) / 1e6,
      1.47,
      'kJ',
      plusMinus(5e-3),
    ),
    one(
      'tank-energy/plug',
      'force on a 50 mm plug at 27 bar',
      () => plugForce(50, 2.7) / 1e3,
      5.3,
      'kN',
      plusMinus(0.05),
    ),
  ],
};

const shell = { diameter: 500, length: 1000, young: 193e3, poisson: 0.3 };

export const collapse: Source = {
  key: 'windenburg-trilling-1934',
  citation:
    'Windenburg & Trilling, Trans. ASME 56 (1934) 819: collapse of thin cylinders under outside pressure',
  checks: [
    one(
      'windenburg-trilling-1934/1mm',
      'D 500, L 1000, wall 1 mm, E 193 GPa',
      () => collapsePressure({ ...shell, wall: 1 }),
      0.0453,
      'MPa',
      plusMinus(5e-5),
    ),
    one(
      'windenburg-trilling-1934/2mm',
      'the same, wall 2 mm',
      () => collapsePressure({ ...shell, wall: 2 }),
      0.2573,
      'MPa',
      plusMinus(5e-5),
    ),
    one(
      'windenburg-trilling-1934/vent',
      'share of one atmosphere that the 1 mm wall stands',
      () => draining({ ...shell, wall: 1 }).margin,
      0.447,
      '1',
      plusMinus(5e-4),
      'computed from published',
      'by hand: 0.0453/0.101325',
    ),
  ],
};
