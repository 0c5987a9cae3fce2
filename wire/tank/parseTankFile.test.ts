import { expect, test } from 'vitest';
import { type Issue, issueLine } from '../issue/issue.ts';
import { parseTankFile } from './parseTankFile.ts';

/** The file as something to reach into and change. */
interface Json {
  [key: string]: Json;
}

/** A sound file with no two equal numbers; each case changes one thing. */
const sound = {
  hoopwright: 1,
  name: 'test tank',
  serial: 'T-1',
  barrel: {
    insideDiameter_mm: 500,
    length_mm: 810,
    wall_mm: 2.1,
    plate: 'A',
    courses: [
      { length_mm: 410, wall_mm: 2.2 },
      { length_mm: 400, steel: { young_MPa: 195000 }, plate: 'B' },
    ],
  },
  heads: {
    top: { shape: 'semi-ellipsoidal', ratio: 1.9, wall_mm: 2.3, straightFlange_mm: 12 },
    bottom: {
      shape: 'torispherical',
      crownRadius_mm: 495,
      knuckleRadius_mm: 51,
      boss: { diameter_mm: 83, thickness_mm: 9 },
    },
  },
  seams: {
    girth: [{ at_mm: 410, width_mm: 7, strength: 0.9, welder: 'W', process: '141', date: '2026-03-04' }],
    long: { width_mm: 6, strength: 0.94 },
  },
  baffles: [{ at_mm: 320, width_mm: 61, thickness_mm: 1.6 }],
  skirts: [{ end: 'bottom', length_mm: 140, wall_mm: 2.6 }],
  girths: [{ name: 'lower', at_mm: 105 }, { at_mm: 515 }],
  openings: [{ part: 'barrel', diameter_mm: 22, at_mm: 700 }],
  steel: {
    grade: '1.4307',
    young_MPa: 193000,
    poisson: 0.29,
    density_kg_per_m3: 7930,
    biaxialFactor: 0.97,
    flow: { law: 'swift', K_MPa: 1350, n: 0.45, e0: 0.0155 },
    flowRate_per_s: 2e-4,
    rate: { on: 'curve', perEfold_MPa: 3, reference_per_s: 1e-5 },
  },
  stand: { axis: 'upright', gauge_mm: 1210 },
  water: { temperature_C: 17, trappedAir_L: 0.25 },
  duty: {
    workingPressure_bar: 18,
    stretchFactor: 1.4,
    pump_L_per_min: 1.2,
    holds: [
      { pressure_bar: 24, minutes: 11, valve: 'shut' },
      { pressure_bar: 25.2, minutes: 65 },
    ],
  },
};

function changed(change: (file: Json) => void): unknown {
  const file = structuredClone(sound);
  change(file as unknown as Json);
  return file;
}

function issuesOf(input: unknown, asGiven = false): readonly Issue[] {
  const result = parseTankFile(input, { asGiven });
  return result.ok ? [] : result.issues;
}

function parsed(input: unknown, options = {}) {
  const result = parseTankFile(input, options);
  if (!result.ok) throw new Error(result.issues.map(issueLine).join('\n'));
  return result;
}

test('file units become N, mm, MPa, s and tonnes', () => {
  const { tank, duty } = parsed(sound);
  expect(duty?.workingPressure).toBeCloseTo(1.8, 12);
  expect(duty?.pump).toBeCloseTo(20000, 8);
  expect(duty?.holds.map(({ time, valve }) => [time, valve])).toEqual([
    [660, 'shut'],
    [3900, 'open'],
  ]);
  expect(tank.water).toEqual({ temperature: 17, trappedAir: 250000 });
  expect(tank.courses[0].steel.density).toBeCloseTo(7.93e-9, 20);
  expect(tank.stand).toEqual({ axis: 'upright', gauge: 1210 });
});

test('a text and the value it stands for give the same tank', () => {
  expect(parseTankFile(JSON.stringify(sound))).toEqual(parseTankFile(sound));
});

test('a part without its own steel has that of the plate, and one with it keeps what it leaves out', () => {
  const { tank } = parsed(sound);
  expect(tank.courses[0].steel).toBe(tank.heads.top.steel);
  expect(tank.courses[1].steel).toEqual({ ...tank.courses[0].steel, young: 195000 });
});

test('the flow curve holds at flowRate, and at the reference of the rate where no flowRate is given', () => {
  expect(parsed(sound).tank.courses[0].steel.rate?.reference).toBe(2e-4);
  const without = changed((file) => delete file.steel.flowRate_per_s);
  expect(parsed(without).tank.courses[0].steel.rate?.reference).toBe(1e-5);
});

test('a girth seam has the curve of its course times its strength', () => {
  const [seam] = parsed(sound).tank.girthSeams;
  expect(seam.steel.flow).toEqual({ law: 'swift', K: 1215, n: 0.45, e0: 0.0155 });
  expect(seam.steel.rate?.perEfold).toBeCloseTo(2.7, 12);
});

test('plate names go from the barrel to a course that has none', () => {
  expect(parsed(sound).tank.courses.map(({ plate }) => plate)).toEqual(['A', 'B']);
});

test('what is left out has its documented default', () => {
  const { hoopwright, barrel, heads, steel } = sound;
  const { insideDiameter_mm, length_mm, wall_mm } = barrel;
  const least = {
    hoopwright,
    barrel: { insideDiameter_mm, length_mm, wall_mm },
    heads,
    steel: { flow: steel.flow },
  };
  const { tank, duty } = parsed(least);
  expect(duty).toBeUndefined();
  expect(tank.stand).toBeUndefined();
  expect(tank.water).toEqual({ temperature: 15, trappedAir: 0 });
  expect(tank.girths).toEqual([{ name: 'middle', at: 405 }]);
  expect(tank.courses).toHaveLength(1);
  expect(tank.courses[0]).toMatchObject({
    length: 810,
    wall: 2.1,
    steel: { young: 200000, poisson: 0.3, biaxialFactor: 1 },
  });
  expect(tank.heads.bottom.wall).toBe(2.1);
  expect(tank.girthSeams).toEqual([]);
});

test('the gauge is at mid-barrel, the stretch factor 1.5 and the valve open where nothing else is said', () => {
  const { tank, duty } = parsed(
    changed((file) => {
      delete file.stand.gauge_mm;
      delete file.duty.stretchFactor;
    }),
  );
  expect(tank.stand?.gauge).toBe(405);
  expect(duty?.stretchFactor).toBe(1.5);
});

test.each([
  ['DIN 28011', 504.2, 50.42],
  ['DIN 28013', 403.36, 77.6468],
])('%s gives its radii from the outside diameter 504.2 mm', (standard, crown, knuckle) => {
  const head = { shape: 'torispherical', standard };
  const { shape } = parsed(changed((file) => Object.assign(file.heads, { bottom: head }))).tank.heads.bottom;
  if (shape.kind !== 'torispherical') throw new Error(shape.kind);
  expect(shape.crownRadius).toBeCloseTo(crown, 9);
  expect(shape.knuckleRadius).toBeCloseTo(knuckle, 9);
});

test('a semi-ellipsoidal head has its depth from the ratio, or as given', () => {
  expect(parsed(sound).tank.heads.top.shape).toEqual({ kind: 'semi-ellipsoidal', depth: 250 / 1.9 });
  const deep = changed((file) =>
    Object.assign(file.heads, { top: { shape: 'semi-ellipsoidal', depth_mm: 124 } }),
  );
  expect(parsed(deep).tank.heads.top.shape).toEqual({ kind: 'semi-ellipsoidal', depth: 124 });
});

test('measured walls give the wall of a head, and a note names the least', () => {
  const { tank, notes } = parsed(
    changed((file) => Object.assign(file.heads.top, { measuredWall_mm: [2.4, 1.9, 2.0] })),
  );
  expect(tank.heads.top.wall).toBeCloseTo(2.1, 12);
  expect(tank.heads.top.measuredWalls).toEqual([2.4, 1.9, 2.0]);
  expect(notes.join('\n')).toContain('the least of them is 1.9 mm');
});

test('a lying tank keeps its stand, and a note says that the liquid head is not acting', () => {
  const { tank, notes } = parsed(changed((file) => Object.assign(file.stand, { axis: 'lying' })));
  expect(tank.stand?.axis).toBe('lying');
  expect(notes.join('\n')).toContain('liquid head does not act');
});

test('without flow and without evidence there is no tank, and the issue says what to give', () => {
  const issues = issuesOf(changed((file) => delete file.steel.flow));
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({ path: 'steel.flow', received: 'nothing' });
  expect(issues[0].suggestion).toContain('steel.certificate');
});

test('a certificate alone stands in with its two-slope curve, and a note says so', () => {
  const given = changed((file) => {
    delete file.steel.flow;
    Object.assign(file.steel, { certificate: { heat: '12', Rp02_MPa: 255, Rm_MPa: 605, A_percent: 52 } });
  });
  const { tank, flowFrom, notes } = parsed(given);
  expect(tank.courses[0].steel.flow).toEqual({ law: 'two-slope', Rp02: 255, Rm: 605 });
  expect(flowFrom).toBe('certificate');
  expect(notes.join('\n')).toContain('two-slope curve of the certificate');
});

test('coupons alone stand on the published mean, and a note says so; a curve evaluated from them takes its place', () => {
  const given = changed((file) => {
    delete file.steel.flow;
    Object.assign(file.steel, { coupons: [{ file: 'coupons/p1.csv', direction: 'transverse' }] });
  });
  expect(parsed(given)).toMatchObject({
    flowFrom: 'stand-in',
    notes: [expect.stringContaining('published mean curve'), expect.anything(), expect.anything()],
  });
  const flow = { law: 'voce', yield: 251, rise: 1029, steepness: 2.2 } as const;
  const evaluated = parsed(given, { flow });
  expect(evaluated.tank.courses[0].steel.flow).toEqual(flow);
  expect(evaluated.flowFrom).toBe('evaluated');
});

test('a misspelt key names the key that was meant, and the missing key is not told twice', () => {
  const issues = issuesOf(
    changed((file) => {
      Object.assign(file, { barel: file.barrel });
      delete file.barrel;
    }),
  );
  expect(issues).toHaveLength(1);
  expect(issueLine(issues[0])).toMatch(/^barel: did you mean barrel\? /);
});

test.each<[string, (file: Json) => void, string, string]>([
  [
    'a key without its unit',
    (file) => Object.assign(file.barrel, { wall: 2, wall_mm: undefined }),
    'barrel.wall',
    'wall_mm',
  ],
  [
    'a key of another shape',
    (file) => Object.assign(file.heads.bottom, { ratio: 2 }),
    'heads.bottom.ratio',
    'semi-ellipsoidal',
  ],
  [
    'a misspelt shape',
    (file) => Object.assign(file.heads.top, { shape: 'elliptical' }),
    'heads.top.shape',
    'semi-ellipsoidal',
  ],
  [
    'a misspelt law',
    (file) => Object.assign(file.steel.flow, { law: 'swfit' }),
    'steel.flow.law',
    'did you mean "swift"?',
  ],
  ['another version', (file) => Object.assign(file, { hoopwright: 2 }), 'hoopwright', 'write 1'],
  [
    'a number as text',
    (file) => Object.assign(file.barrel, { wall_mm: '2 mm' }),
    'barrel.wall_mm',
    'write 2, without',
  ],
  [
    'a decimal comma',
    (file) => Object.assign(file.heads.top, { ratio: '2,5' }),
    'heads.top.ratio',
    'write 2.5, without',
  ],
  [
    'a list left out',
    (file) => Object.assign(file, { girths: { at_mm: 3 } }),
    'girths',
    'put it into a list',
  ],
  ['null', (file) => Object.assign(file, { water: null }), 'water', 'leave the key out'],
])('%s is refused with what to do', (_what, change, path, suggestion) => {
  const found = issuesOf(changed(change)).find((issue) => issue.path === path);
  expect(found?.suggestion).toContain(suggestion);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, -2, 0, '2', true, [2], {}])(
  'a wall of %s is refused',
  (wall) => {
    const issues = issuesOf(changed((file) => Object.assign(file.barrel, { wall_mm: wall })));
    expect(issues.map(({ path }) => path)).toContain('barrel.wall_mm');
  },
);

test.each<[string, (file: Json) => void, string]>([
  [
    'a crown smaller than the barrel',
    (file) => Object.assign(file.heads.bottom, { crownRadius_mm: 249 }),
    'heads.bottom.crownRadius_mm',
  ],
  [
    'a knuckle larger than the barrel',
    (file) => Object.assign(file.heads.bottom, { knuckleRadius_mm: 251 }),
    'heads.bottom.knuckleRadius_mm',
  ],
  [
    'one sphere called torispherical',
    (file) => Object.assign(file.heads.bottom, { crownRadius_mm: 250, knuckleRadius_mm: 250 }),
    'heads.bottom.knuckleRadius_mm',
  ],
  ['only one radius', (file) => delete file.heads.bottom.knuckleRadius_mm, 'heads.bottom.knuckleRadius_mm'],
  [
    'radii and a standard',
    (file) => Object.assign(file.heads.bottom, { standard: 'DIN 28011' }),
    'heads.bottom.standard',
  ],
  ['ratio and depth', (file) => Object.assign(file.heads.top, { depth_mm: 130 }), 'heads.top.depth_mm'],
  [
    'a boss larger than the head',
    (file) => Object.assign(file.heads.bottom.boss, { diameter_mm: 500 }),
    'heads.bottom.boss.diameter_mm',
  ],
  [
    'straight flanges longer than the barrel',
    (file) => {
      Object.assign(file.heads.top, { straightFlange_mm: 420 });
      Object.assign(file.heads.bottom, { straightFlange_mm: 400 });
    },
    'barrel.length_mm',
  ],
  [
    'courses that do not add up',
    (file) => Object.assign(file.barrel.courses[0], { length_mm: 411 }),
    'barrel.courses',
  ],
  ['a girth above the barrel', (file) => Object.assign(file.girths[1], { at_mm: 811 }), 'girths[1].at_mm'],
  ['a baffle above the barrel', (file) => Object.assign(file.baffles[0], { at_mm: 811 }), 'baffles[0].at_mm'],
  [
    'a seam above the barrel',
    (file) => Object.assign(file.seams.girth[0], { at_mm: 811 }),
    'seams.girth[0].at_mm',
  ],
  [
    'a baffle wider than the radius',
    (file) => Object.assign(file.baffles[0], { width_mm: 250 }),
    'baffles[0].width_mm',
  ],
  [
    'seams that overlap',
    (file) => Object.assign(file.seams.girth, { 1: { at_mm: 416, width_mm: 8 } }),
    'seams.girth[1].at_mm',
  ],
  [
    'a seam with strength and curve',
    (file) => Object.assign(file.seams.girth[0], { flow: sound.steel.flow }),
    'seams.girth[0].strength',
  ],
  ['two girths of one name', (file) => Object.assign(file.girths[1], { name: 'lower' }), 'girths[1].name'],
  ['two skirts at one end', (file) => Object.assign(file.skirts, { 1: file.skirts[0] }), 'skirts[1].end'],
  ['a hole in the barrel without a height', (file) => delete file.openings[0].at_mm, 'openings[0].at_mm'],
  [
    'a hole as wide as the tank',
    (file) => Object.assign(file.openings[0], { diameter_mm: 501 }),
    'openings[0].diameter_mm',
  ],
  [
    'a tensile strength under the proof stress',
    (file) => Object.assign(file.steel, { flow: { law: 'two-slope', Rp02_MPa: 560, Rm_MPa: 250 } }),
    'steel.flow.Rm_MPa',
  ],
  [
    'points that fall',
    (file) =>
      Object.assign(file.steel, {
        flow: { law: 'points', plastic: [0, 0.1, 0.2], stress_MPa: [250, 400, 390] },
      }),
    'steel.flow.stress_MPa[2]',
  ],
  [
    'more strains than stresses',
    (file) =>
      Object.assign(file.steel, { flow: { law: 'points', plastic: [0, 0.1, 0.2], stress_MPa: [250, 400] } }),
    'steel.flow.stress_MPa',
  ],
  [
    'a growing extra stress',
    (file) =>
      Object.assign(file.steel, { flow: { law: 'ludwigson', K_MPa: 1349, n: 0.497, k1: 5.144, k2: 0 } }),
    'steel.flow.k2',
  ],
  [
    'a rate without a reference',
    (file) => {
      delete file.steel.flowRate_per_s;
      delete file.steel.rate.reference_per_s;
    },
    'steel.rate.reference_per_s',
  ],
])('%s cannot be, even as given', (_what, change, path) => {
  const issues = issuesOf(changed(change), true);
  expect(issues.map((issue) => issue.path)).toEqual([path]);
  expect(issues[0].suggestion).toBeDefined();
});

test.each<[string, (file: Json) => void, string]>([
  ['a wall of 2000 mm', (file) => Object.assign(file.heads.top, { wall_mm: 2000 }), 'heads.top.wall_mm'],
  ['a barrel wall of 2000 mm', (file) => Object.assign(file.barrel, { wall_mm: 2000 }), 'barrel.wall_mm'],
  [
    '2.7 million bar',
    (file) => Object.assign(file.duty, { workingPressure_bar: 2.7e6 }),
    'duty.workingPressure_bar',
  ],
  ['E in GPa', (file) => Object.assign(file.steel, { young_MPa: 200 }), 'steel.young_MPa'],
  ['E in Pa', (file) => Object.assign(file.steel, { young_MPa: 2e11 }), 'steel.young_MPa'],
  ['an exponent in percent', (file) => Object.assign(file.steel.flow, { n: 45 }), 'steel.flow.n'],
  [
    'water of 300 degrees',
    (file) => Object.assign(file.water, { temperature_C: 300 }),
    'water.temperature_C',
  ],
  [
    'a knuckle under two walls',
    (file) => Object.assign(file.heads.bottom, { knuckleRadius_mm: 4 }),
    'heads.bottom.knuckleRadius_mm',
  ],
  [
    'a crown of two diameters',
    (file) => Object.assign(file.heads.bottom, { crownRadius_mm: 1010 }),
    'heads.bottom.crownRadius_mm',
  ],
  ['more air than tank', (file) => Object.assign(file.water, { trappedAir_L: 160 }), 'water.trappedAir_L'],
])('%s stops and names --as-given, which takes it and leaves a note', (_what, change, path) => {
  const file = changed(change);
  const odd = issuesOf(file).find((issue) => issue.path === path);
  expect(odd?.suggestion).toContain('--as-given');
  const { notes } = parsed(file, { asGiven: true });
  expect(notes.join('\n')).toContain(`${path} is`);
});

test('a diameter of 5 mm stops and names --as-given', () => {
  const file = {
    ...sound,
    water: {},
    barrel: { insideDiameter_mm: 5, length_mm: 810, wall_mm: 0.3 },
    baffles: [],
    openings: [],
  };
  const heads = { top: { shape: 'hemispherical' }, bottom: { shape: 'hemispherical' } };
  expect(issuesOf({ ...file, heads }).map(({ path }) => path)).toEqual(['barrel.insideDiameter_mm']);
  expect(parsed({ ...file, heads }, { asGiven: true }).tank.insideDiameter).toBe(5);
});

test('every issue is told at once, of structure, sign and plausibility', () => {
  const issues = issuesOf(
    changed((file) => {
      Object.assign(file.barrel, { wall_mm: '2', length_mm: -5 });
      Object.assign(file.steel, { younge_MPa: 1 });
      Object.assign(file.duty, { workingPressure_bar: 2.7e6 });
      delete file.heads.top.shape;
    }),
  );
  const paths = issues.map(({ path }) => path);
  expect(paths).toEqual(
    expect.arrayContaining([
      'barrel.wall_mm',
      'barrel.length_mm',
      'steel.younge_MPa',
      'duty.workingPressure_bar',
      'heads.top.shape',
    ]),
  );
});

test('a value that is no file is refused, whatever it is', () => {
  const round: Record<string, unknown> = {};
  round.barrel = round;
  for (const input of [
    undefined,
    null,
    7,
    Number.NaN,
    1n,
    [],
    {},
    round,
    () => 1,
    Symbol('x'),
    new Date(0),
    '',
    '7',
  ]) {
    const result = parseTankFile(input);
    expect(result.ok).toBe(false);
    expect(result.ok ? [] : result.issues).not.toHaveLength(0);
  }
});

test('a key called __proto__ is an unknown key and changes nothing', () => {
  const text = JSON.stringify(sound).replace('{', '{"__proto__":{"stand":{"axis":"lying"}},');
  expect(issuesOf(text).map(({ path }) => path)).toEqual(['__proto__']);
});
