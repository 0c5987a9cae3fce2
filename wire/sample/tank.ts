/** For tests of every package: an invented tank file of the Tern Hill workshop, small enough to be planned in a second. */
export const TEST_TANK = {
  hoopwright: 1,
  name: 'INVENTED: Dunlin test tank',
  barrel: { insideDiameter_mm: 400, length_mm: 700, wall_mm: 1.5 },
  heads: { top: { shape: 'semi-ellipsoidal' }, bottom: { shape: 'semi-ellipsoidal' } },
  girths: [
    { name: 'low', at_mm: 200 },
    { name: 'high', at_mm: 520 },
  ],
  steel: {
    flow: { law: 'swift', K_MPa: 1330, n: 0.43, e0: 0.021 },
    flowRate_per_s: 1e-4,
    rate: { on: 'yield', perEfold_MPa: 2.6 },
  },
  duty: { workingPressure_bar: 20, stretchFactor: 1.5, pump_L_per_min: 0.9 },
  day: {
    gauges: [
      { name: 'gauge A', range_bar: 40, resolution_bar: 0.1, error_percent: 0.6 },
      { name: 'gauge B', range_bar: 60, resolution_bar: 0.2, error_percent: 1 },
    ],
    readings: [
      { girth: 'low', by: 'draw-wire', resolution_mm: 0.05 },
      { girth: 'high', by: 'taped scale and camera', resolution_mm: 0.5 },
    ],
    supply: { by: 'weighing', resolution_mL: 5 },
  },
};
