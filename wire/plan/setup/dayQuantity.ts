/** Numbers of the set-up of the day: meaning, plausible range and its reason. Same form as the table of the tank file. */

interface DayQuantity {
  readonly means: string;
  readonly low: number;
  readonly high: number;
  readonly why: string;
  readonly sign: 'positive' | 'not negative' | 'any';
}

const of =
  (sign: DayQuantity['sign']) =>
  (low: number, high: number, means: string, why: string): DayQuantity => ({ means, low, high, why, sign });
const positive = of('positive');
const notNegative = of('not negative');
const any = of('any');

const SMALL = 'tanks of small teams';
const PRACTICE = 'common practice, no source';

const PUMP: Readonly<Record<string, DayQuantity>> = {
  'pump.mL_per_stroke': positive(0.5, 1000, 'What one stroke draws, by a bucket test, mL', 'hand pumps'),
  'pump.strokes_per_min': positive(
    1,
    300,
    'Strokes a minute that can be kept up',
    'hand pumps, air-driven pumps',
  ),
  'pump.highest_bar': positive(1, 3000, 'Highest pressure the pump is made for, bar', 'test pumps'),
  'relief.opens_bar': positive(0.2, 1000, 'Pressure at which the relief valve opens, bar', 'a thin tank'),
  'relief.flow_L_per_min': positive(0.01, 5000, 'What the relief valve passes when it is open, L/min', SMALL),
  'plugs.diameter_mm': positive(3, 600, 'Diameter on which the pressure pushes the plug out, mm', SMALL),
  'hose.insideDiameter_mm': positive(2, 60, 'Inside diameter of the hose, mm', SMALL),
};

const SITE: Readonly<Record<string, DayQuantity>> = {
  chloride_ppm: notNegative(0, 1000, 'Chloride in the test water, ppm (mg/L)', 'drinking water has 5 to 250'),
  'site.temperature_C': any(-30, 50, 'Air temperature expected on the day, °C', 'people are outdoors'),
  approachPressure_bar: notNegative(
    0,
    10,
    'Pressure up to which somebody may stand at the tank, come down to from above and held, bar',
    'set by the team; local rule first',
  ),
  distance_m: positive(2, 500, 'Distance of people from the tank, behind the wall, m', SMALL),
  'floor.carries_kg': positive(10, 1e6, 'Mass that floor and stand carry together, kg', SMALL),
};

const INSTRUMENT: Readonly<Record<string, DayQuantity>> = {
  'gauges.range_bar': positive(0.5, 4000, 'End of the scale of the gauge, bar', 'a thin tank'),
  'gauges.resolution_bar': positive(
    0.0005,
    20,
    'Smallest step that can be read, bar',
    'dial and digital gauges',
  ),
  'gauges.noise_bar': notNegative(0, 10, 'Standard deviation of one reading, bar', 'dial and digital gauges'),
  'gauges.error_percent': notNegative(
    0.01,
    5,
    'Largest error, percent of the range (accuracy class)',
    'EN 837-1 has classes 0.1 to 4 (from memory)',
  ),
  'readings.range_mm': positive(1, 5000, 'Range over which it measures, mm of girth', SMALL),
  'readings.resolution_mm': positive(0.0005, 20, 'Smallest step that can be read, mm of girth', SMALL),
  'readings.noise_mm': notNegative(0, 20, 'Standard deviation of one reading, mm of girth', SMALL),
  'readings.every_s': positive(0.01, 3600, 'Time between two readings in a hold, s', SMALL),
  'supply.resolution_mL': positive(0.05, 5000, 'Smallest step in which drawn water is known, mL', SMALL),
  'thermometer.resolution_K': positive(0.001, 5, 'Smallest step of the thermometer, K', SMALL),
};

const LIMITS: Readonly<Record<string, DayQuantity>> = {
  'trappedAir_L.value': notNegative(0, 500, 'Most air at filling with which pumping goes on, L', PRACTICE),
  'leak_mL_per_min.value': positive(
    0.1,
    10000,
    'Largest loss of water with which the day goes on, mL/min',
    PRACTICE,
  ),
  'growthLeft_percent.value': positive(
    0.1,
    30,
    'Most growth of girth that may be left, percent',
    'published practice is up to 7',
  ),
  'girthsApart_percent.value': positive(
    0.05,
    20,
    'Most that the growths of two girths may differ, percent',
    PRACTICE,
  ),
  'gaugesApart_bar.value': positive(0.01, 50, 'Most that two gauges may differ, bar', PRACTICE),
  'slopeShare.value': positive(
    0.001,
    0.9,
    'Least slope of pressure over litres, as a share of the elastic one',
    PRACTICE,
  ),
  'seamStrain_percent.value': positive(
    0.5,
    30,
    'Largest strain across the long seam, percent of its width',
    'weld coupons of published practice are stretched 9 %',
  ),
  'growthWithoutPressure_percent.value': positive(
    0.02,
    5,
    'Growth of a girth while the pressure falls and nobody opens a valve, percent',
    PRACTICE,
  ),
  'marginToMaximum.value': positive(
    1.01,
    3,
    'Lowest pressure that nineteen of twenty such tanks bear, over the pressure at hand',
    PRACTICE,
  ),
};

export const DAY_QUANTITIES: Readonly<Record<string, DayQuantity>> = {
  ...PUMP,
  ...SITE,
  ...INSTRUMENT,
  ...LIMITS,
};
