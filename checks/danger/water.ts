import {
  airSwallows,
  drawnPerPressure,
  elasticGirth,
  liquidHead,
  waterBulkModulus,
  waterCompression,
  waterDensity,
  waterExpansion,
  warmingSurplus,
} from '../../core/stretch/water.ts';
import { type Check, percent, plusMinus, type Source } from '../check.ts';

/** °C, density kg/m³, compressibility 1/GPa, expansion 1e-3/K. */
const LSBU = [
  [0, 999.8, 0.5089, -0.068],
  [10, 999.7, 0.4781, 0.088],
  [20, 998.2, 0.4589, 0.207],
  [30, 995.7, 0.4477, 0.303],
  [40, 992.2, 0.4424, 0.385],
];

const printed =
  'half a unit of the last printed digit; the table stands on the later temperature scale, 0.01 K apart';

export const waterTable: Source = {
  key: 'lsbu-water',
  citation: 'Chaplin, Water structure and science, table of water properties (London South Bank University)',
  checks: LSBU.flatMap(([T, density, compressibility, expansion]): Check[] => [
    {
      id: `lsbu-water/density-${T}`,
      what: `density at ${T} °C`,
      ours: () => waterDensity(T) * 1e12,
      theirs: density,
      unit: 'kg/m³',
      tolerance: plusMinus(0.06),
      reason: printed,
      standing: 'published',
    },
    {
      id: `lsbu-water/compressibility-${T}`,
      what: `compressibility at ${T} °C`,
      ours: () => 1e3 / waterBulkModulus(T),
      theirs: compressibility,
      unit: '1/GPa',
      tolerance: plusMinus(6e-5),
      reason: printed,
      standing: 'published',
    },
    {
      id: `lsbu-water/expansion-${T}`,
      what: `volume expansion at ${T} °C`,
      ours: () => waterExpansion(T) * 1e3,
      theirs: expansion,
      unit: '1e-3/K',
      tolerance: plusMinus(6e-4),
      reason: printed,
      standing: 'published',
    },
  ]),
};

/** Compression of 50 kg of water, cm³: mass x pressure x (K - 0.68 P/1e5), bar. */
const en1968 = (K: number, bar: number): number => 50 * bar * (K - (0.68 * bar) / 1e5) * 1e3 * 1e-3;
const ours = (T: number, bar: number): number =>
  waterCompression(50e6 / (waterDensity(T) * 1e12 * 1e-3), bar / 10, T) / 1e3;

const EN_K = [
  [6, 0.04915],
  [10, 0.04812],
  [15, 0.04725],
  [20, 0.04654],
  [25, 0.04604],
];

export const compression: Source = {
  key: 'en-1968',
  citation: 'EN 1968 / ISO 6406: compression of water C = W P (K - 0.68 P/10⁵) cm³, table of K',
  checks: [
    ...EN_K.flatMap(([T, K]): Check[] =>
      [30, 300].map((bar) => ({
        id: `en-1968/${T}-${bar}`,
        what: `compression of 50 kg of water at ${T} °C, ${bar} bar`,
        ours: () => ours(T, bar),
        theirs: Number(en1968(K, bar).toPrecision(4)),
        unit: 'cm³',
        tolerance: percent(bar === 30 ? 1.4 : 0.4),
        reason:
          'the table is a secant fitted for 200-300 bar; at low pressure it is 0.5-1.3 % softer than measured water (Kell)',
        standing: 'from memory',
      })),
    ),
    {
      id: 'en-1968/worked',
      what: 'the worked value: 50 kg, 300 bar, 20 °C',
      ours: () => ours(20, 300),
      theirs: 667.5,
      unit: 'cm³',
      tolerance: percent(0.1),
      reason: 'two fits to different measurements',
      standing: 'computed from memory',
    },
  ],
};

const modulus = (T: number, theirs: number, share: number, reason: string): Check => ({
  id: `water-modulus/${T}`,
  what: `bulk modulus of water at ${T} °C`,
  ours: () => waterBulkModulus(T) / 1e3,
  theirs,
  unit: 'GPa',
  tolerance: percent(share),
  reason,
  standing: 'from memory',
});

export const moduli: Source = {
  key: 'water-modulus',
  citation: 'Bulk modulus of water, handbook values',
  checks: [
    modulus(20, 2.18, 0.3, 'half a unit of the last digit'),
    modulus(15, 2.15, 0.6, 'a unit of the last digit, from memory'),
    modulus(5, 2.06, 1.5, 'remembered high: Kell and the EN 1968 table both give 2.03'),
  ],
};

const barrel = { volume: 350e6, radius: 301, wall: 2, young: 193e3, poisson: 0.29 };
const bar = (perMpa: number): number => perMpa / 1e4;
const tankCheck = (
  name: string,
  what: string,
  value: () => number,
  theirs: number,
  unit: string,
  tolerance: number,
): Check => ({
  id: `tank-balance/${name}`,
  what,
  ours: value,
  theirs,
  unit,
  tolerance: plusMinus(tolerance),
  reason: 'printed digit',
  standing: 'computed from published',
});

export const tankBalance: Source = {
  key: 'tank-balance',
  citation:
    'Hand calculation of a 350 L tank, 600 x 2 mm, full of water at 15-20 °C, worked out for this project',
  checks: [
    {
      ...tankCheck(
        'all',
        'water drawn per bar, all',
        () => bar(drawnPerPressure(barrel, 15, 0).all),
        68,
        'mL/bar',
        0.8,
      ),
      reason: 'sum of two figures printed to 1 mL',
    },
    tankCheck(
      'wall',
      'water drawn per bar, wall',
      () => bar(drawnPerPressure(barrel, 15, 0).wall),
      52,
      'mL/bar',
      0.5,
    ),
    tankCheck(
      'water',
      'water drawn per bar, compression',
      () => bar(drawnPerPressure(barrel, 15, 0).water),
      16,
      'mL/bar',
      0.5,
    ),
    tankCheck(
      'warm-20',
      'shut-in water warmed by 1 K at 20 °C',
      () => warmingSurplus(350e6, 20) / 1e3,
      56,
      'mL',
      0.5,
    ),
    tankCheck(
      'warm-20-bar',
      'the same as pressure',
      () => warmingSurplus(350e6, 20) / drawnPerPressure(barrel, 20, 0).all / 0.1,
      0.8,
      'bar',
      0.05,
    ),
    {
      ...tankCheck(
        'warm-7',
        'shut-in water warmed by 1 K at 7 °C: nearly nothing',
        () => warmingSurplus(350e6, 7) / 1e3,
        0,
        'mL',
        3,
      ),
      reason: '"nearly nothing": under a twentieth of a bar',
    },
    tankCheck(
      'warm-4',
      'shut-in water warmed by 1 K at 4 °C: the steel alone',
      () => warmingSurplus(350e6, 4) / 1e3,
      -3 * 16e-6 * 350e3,
      'mL',
      0.3,
    ),
    {
      ...tankCheck(
        'air',
        '1 L of air at filling swallows up to 2 bar',
        () => airSwallows(1e6, 0.2) / 1e3,
        667,
        'mL',
        4,
      ),
      reason: 'the figure takes 1 bar of atmosphere, ours 1.01325',
    },
    {
      ...tankCheck(
        'girth',
        'elastic girth of 600 x 2 mm per 10 bar',
        () => elasticGirth(barrel),
        1.26,
        'mm',
        0.01,
      ),
      reason: 'mid-surface or outside girth, a unit of the last digit',
    },
    tankCheck('head', 'liquid head of 1.5 m', () => liquidHead(1500, 15) * 10, 0.15, 'bar', 0.005),
  ],
};
