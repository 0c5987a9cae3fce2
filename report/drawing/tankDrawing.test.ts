import { readFileSync } from 'node:fs';
import { type Forecast, forecast } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { parseTankFile } from '@hoopwright/wire/tank';
import { expect, test } from 'vitest';
import { sayStated, statedFigure } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { FRAME, PER_MM } from '../sheet/frame.ts';
import type { Scene, Stroke, Text } from '../sheet/mark.ts';
import { boxOf, overlap } from '../sheet/measure.ts';
import { toSvg } from '../sheet/svg.ts';
import { marginField, strainField, wallField } from './field.ts';
import { stanceOf } from './shape/stance.ts';
import { depthOf } from './shape/wall.ts';
import { tankDrawing } from './tankDrawing.ts';
import { type TankSheet, TIMES } from './tankSheet.ts';

const EXAMPLES = ['c3', 'dunlin-fuel', 'dunlin-oxidiser', 'minimal'];

const steel = { flow: { law: 'swift', K_MPa: 1350, n: 0.45, e0: 0.0155 } };
const dished = { shape: 'semi-ellipsoidal', ratio: 2 };
const STRANGE: Readonly<Record<string, object>> = {
  tall: {
    barrel: { insideDiameter_mm: 150, length_mm: 1500, wall_mm: 1.5 },
    heads: {
      top: { ...dished, boss: { diameter_mm: 40, thickness_mm: 10 } },
      bottom: { shape: 'hemispherical' },
    },
    girths: [
      { name: 'bottom', at_mm: 200 },
      { name: 'top', at_mm: 1300 },
    ],
  },
  squat: {
    barrel: { insideDiameter_mm: 1000, length_mm: 200, wall_mm: 3 },
    heads: { top: dished, bottom: { shape: 'torispherical', standard: 'DIN 28011', straightFlange_mm: 30 } },
    stand: { axis: 'lying' },
  },
  flat: {
    barrel: { insideDiameter_mm: 300, length_mm: 500, wall_mm: 1.5 },
    heads: { top: { shape: 'flat', wall_mm: 25 }, bottom: dished },
  },
  conical: {
    barrel: { insideDiameter_mm: 400, length_mm: 600, wall_mm: 2 },
    heads: { top: dished, bottom: { shape: 'conical', halfAngle_deg: 45, knuckleRadius_mm: 60, wall_mm: 3 } },
    skirts: [{ end: 'bottom', length_mm: 250, wall_mm: 2 }],
    openings: [
      { part: 'barrel', diameter_mm: 25, at_mm: 500 },
      { part: 'top', diameter_mm: 20 },
    ],
  },
  'many girths': {
    barrel: { insideDiameter_mm: 600, length_mm: 1200, wall_mm: 2 },
    heads: { top: dished, bottom: dished },
    girths: Array.from({ length: 24 }, (_, i) => ({ name: `girth number ${i + 1}`, at_mm: 40 + 31 * i })),
    baffles: [{ at_mm: 900, width_mm: 60, thickness_mm: 2 }],
  },
  courses: {
    barrel: {
      insideDiameter_mm: 500,
      length_mm: 900,
      wall_mm: 2,
      courses: [{ length_mm: 300 }, { length_mm: 100, wall_mm: 3 }, { length_mm: 500 }],
    },
    heads: { top: { shape: 'hemispherical' }, bottom: { shape: 'hemispherical' } },
    seams: { girth: [{ at_mm: 300, width_mm: 6, strength: 0.95 }] },
  },
};

interface Case {
  readonly name: string;
  readonly tank: Tank;
  readonly result: Forecast;
}

function caseOf(name: string, file: unknown): Case {
  const parsed = parseTankFile(file, { asGiven: true });
  if (!parsed.ok) throw new Error(`${name}: ${JSON.stringify(parsed.issues)}`);
  const { tank } = parsed;
  // A hoop stress of 380 MPa: the barrel has yielded, nothing has burst.
  const target = (760 * tank.courses[0].wall) / tank.insideDiameter;
  const settings = { shell: { elements: 60, layers: 5 }, until: 0.05, target };
  return { name, tank, result: forecast(tank, parsed.duty, settings) };
}

const cases: readonly Case[] = [
  ...EXAMPLES.map((name) =>
    caseOf(name, readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8')),
  ),
  ...Object.entries(STRANGE).map(([name, file]) => caseOf(name, { hoopwright: 1, name, steel, ...file })),
];

const BLOCK = { title: 'a tank', forecast: 'current', invented: true, issued: '2026-11-25' } as const;

function sheetOf({ tank, result }: Case, more: Partial<TankSheet> = {}): TankSheet {
  const { datum, released, path } = result;
  const stance = stanceOf(result, result.held ?? result.arrived ?? path[path.length - 1]);
  const welded = { girths: datum.girths, content: datum.volume, thinnest: tank.courses[0].wall };
  const states = {
    welded,
    under: stance,
    ...(released === undefined ? {} : { left: stanceOf(result, released.left) }),
  };
  return { tank, stance, states, block: BLOCK, ...more };
}

const textsOf = (scene: Scene): Text[] => scene.marks.filter((mark) => mark.kind === 'text');
const strokesOf = (scene: Scene, of: string): Stroke[] =>
  scene.marks.filter((mark) => mark.kind === 'stroke').filter((mark) => mark.of === of);
const plain = (text: Text): string => text.runs.map((run) => run.text).join('');

/** Every pair of letterings whose boxes meet. */
function meetings(scene: Scene): string[] {
  const texts = textsOf(scene);
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => overlap(boxOf(a), boxOf(b)))
      .map((b) => `"${plain(a)}" meets "${plain(b)}"`),
  );
}

const IN_INCHES: Manner = { units: 'psi', decimal: ',', language: 'en' };

test.each(cases)('no lettering of the drawing of $name meets another', (one) => {
  expect(meetings(tankDrawing(sheetOf(one)))).toEqual([]);
  expect(meetings(tankDrawing(sheetOf(one, { manner: IN_INCHES })))).toEqual([]);
  for (const times of TIMES) expect(meetings(tankDrawing(sheetOf(one, { times })))).toEqual([]);
  expect(meetings(tankDrawing({ tank: one.tank, block: BLOCK }))).toEqual([]);
});

test.each(cases)('all lettering and all lines of $name stay inside the frame', (one) => {
  const scene = tankDrawing(sheetOf(one, { times: 20 }));
  for (const text of textsOf(scene)) {
    const { left, right, top, bottom } = boxOf(text);
    const inside = left >= FRAME.left && right <= FRAME.right && top >= FRAME.top && bottom <= FRAME.bottom;
    expect(inside, plain(text)).toBe(true);
  }
  for (const mark of scene.marks) {
    if (mark.kind !== 'stroke' || mark.of === 'centring mark') continue;
    for (const [x, y] of mark.points) {
      const inside =
        x >= FRAME.left - 1e-6 &&
        x <= FRAME.right + 1e-6 &&
        y >= FRAME.top - 1e-6 &&
        y <= FRAME.bottom + 1e-6;
      expect(inside, `${mark.of} at ${x}, ${y}`).toBe(true);
    }
  }
});

test.each(cases)('the drawing of $name has the same bytes twice, and no NaN', (one) => {
  const svg = toSvg(tankDrawing(sheetOf(one)));
  expect(svg).toBe(toSvg(tankDrawing(sheetOf(one))));
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
});

test.each(cases)(
  'outline, section, centre line and initial outline of $name have their line types',
  (one) => {
    const scene = tankDrawing(sheetOf(one));
    const types = (of: string): string[] => [...new Set(strokesOf(scene, of).map((mark) => mark.line))];
    expect(types('section outline')).toEqual(['outline']);
    expect(types('outside outline')).toContain('outline');
    expect(types('centre line')).toEqual(['centre']);
    expect(types('initial outline')).toEqual(['initial']);
    expect(strokesOf(scene, 'initial outline')).toHaveLength(2);
  },
);

const oxidiser = cases.find(({ name }) => name === 'dunlin-oxidiser') as Case;
const fuel = cases.find(({ name }) => name === 'dunlin-fuel') as Case;

test('a baffle is dashed narrow behind the wall and cut on the other side', () => {
  const scene = tankDrawing(sheetOf(oxidiser));
  const hidden = strokesOf(scene, 'hidden baffle');
  expect(hidden.length).toBeGreaterThan(0);
  const axis = strokesOf(scene, 'centre line')[0].points[0][0];
  for (const { line, points } of hidden) {
    expect(line).toBe('hidden');
    for (const [x] of points) expect(x).toBeLessThanOrEqual(axis + 1e-6);
  }
  expect(strokesOf(scene, 'baffle outline')[0].points.every(([x]) => x > axis)).toBe(true);
});

test.each(cases)('every figure of $name that can be edited reads as its value', ({ name, tank }) => {
  const scene = tankDrawing({ tank, block: BLOCK });
  const editable = textsOf(scene)
    .flatMap((text) => text.runs)
    .filter((run) => run.figure?.path !== undefined);
  expect(editable.length, name).toBeGreaterThan(3);
  for (const { text, figure } of editable) {
    if (figure === undefined) continue;
    expect(text).toBe(statedFigure(USUAL_MANNER, figure.quantity, figure.value).text);
  }
});

test('the dimensions of a tank are those of its file, with their keys', () => {
  const scene = tankDrawing({ tank: oxidiser.tank, block: BLOCK });
  const values = new Map(
    textsOf(scene)
      .flatMap((text) => text.runs)
      .map((run) => [run.figure?.path, run.figure?.value]),
  );
  expect(values.get('barrel.insideDiameter_mm')).toBe(600);
  expect(values.get('barrel.length_mm')).toBe(900);
  expect(values.get('barrel.wall_mm')).toBe(2);
  expect(values.get('heads.top.depth_mm')).toBe(150);
  expect(values.get('heads.top.wall_mm')).toBe(2.5);
  expect(values.get('heads.bottom.boss.thickness_mm')).toBe(12);
  expect(values.get('baffles[0].at_mm')).toBe(560);
  expect(values.get('girths[2].at_mm')).toBe(750);
});

/** Sheet units in a millimetre of tank, by the scale that the title block states. */
function statedPerMm(scene: Scene): number {
  const scale = plain(textsOf(scene).find((text) => text.of === 'title block: Scale (A3)') as Text);
  const [paper, real] = scale.split(':').map(Number);
  return (PER_MM * paper) / real;
}

const axisOf = (scene: Scene): number => strokesOf(scene, 'centre line')[0].points[0][0];

/** Largest inside radius of the barrel as drawn, mm by the stated scale. */
function drawnRadius(scene: Scene): number {
  const barrel = scene.patches.filter(({ part }) => part === 'barrel');
  return (Math.max(...barrel.map(({ points }) => points[0][0])) - axisOf(scene)) / statedPerMm(scene);
}

test.each(cases)('$name as welded is to the scale that its title block states', ({ tank }) => {
  const scene = tankDrawing({ tank, block: BLOCK });
  expect(drawnRadius(scene)).toBeCloseTo(tank.insideDiameter / 2, 6);
  const heights = scene.patches.flatMap(({ points }) => [points[0][1], points[1][1]]);
  const depths = [tank.heads.bottom, tank.heads.top].map((head) => depthOf(head, tank.insideDiameter));
  const whole = tank.length + depths[0] + depths[1];
  expect((Math.max(...heights) - Math.min(...heights)) / statedPerMm(scene)).toBeCloseTo(whole, 6);
});

test('growth is drawn as many times as is said, and the initial outline never moves', () => {
  const scenes = TIMES.map((times) => tankDrawing(sheetOf(fuel, { times })));
  const said = scenes.map((scene) =>
    plain(textsOf(scene).find((text) => text.of === 'growth drawn') as Text),
  );
  expect(said).toEqual([
    'growth to scale',
    'growth drawn 5 times',
    'growth drawn 10 times',
    'growth drawn 20 times',
  ]);
  const grown = scenes.map((scene) => drawnRadius(scene) - 300);
  expect(grown[0]).toBeGreaterThan(1);
  TIMES.forEach((times, i) => expect(grown[i] / grown[0]).toBeCloseTo(times, 6));
  for (const scene of scenes) {
    const inner = strokesOf(scene, 'initial outline')[1];
    const radius = Math.max(...inner.points.map(([x]) => x)) - axisOf(scene);
    expect(radius / statedPerMm(scene)).toBeCloseTo(300, 6);
  }
});

const allNotes = (scene: Scene): string =>
  textsOf(scene)
    .filter((text) => text.of === 'note')
    .map(plain)
    .join(' ');

test('the notes say how many times walls and growth are drawn', () => {
  const notes = allNotes(tankDrawing(sheetOf(fuel, { times: 10 })));
  expect(notes).toContain('Growth is drawn 10 times.');
  expect(notes).toMatch(/Walls are drawn \d+ times as thick/);
  expect(notes).toContain('Local rules and a licensed engineer come first.');
});

test('an invented tank says so in the title block, a stated one does not', () => {
  const said = (invented: boolean): boolean =>
    textsOf(tankDrawing({ tank: fuel.tank, block: { ...BLOCK, invented } })).some(
      (text) => plain(text) === 'INVENTED DATA',
    );
  expect([said(true), said(false)]).toEqual([true, false]);
});

test('an outdated forecast is said in the title block', () => {
  const scene = tankDrawing({ tank: fuel.tank, block: { ...BLOCK, forecast: 'out of date' } });
  expect(textsOf(scene).map(plain)).toContain('OUT OF DATE');
});

test('the wall is coloured three deep, with unit and extremes beside the scale', () => {
  const sheet = sheetOf(oxidiser);
  const profile = sheet.stance?.profile ?? [];
  const field = strainField(profile);
  const scene = tankDrawing({ ...sheet, field });
  const coloured = scene.marks.filter((mark) => mark.kind === 'area' && mark.of === 'wall colour');
  expect(coloured).toHaveLength(3 * scene.patches.length);
  const named = (of: string): string => plain(textsOf(scene).find((text) => text.of === of) as Text);
  expect(named('legend title')).toBe('Plastic strain, %');
  const most = Math.max(...profile.flatMap((p) => [p.plastic.inside, p.plastic.mid, p.plastic.outside]));
  expect(named('legend most')).toBe(`${(100 * most).toFixed(2)} %`);
  expect(meetings(scene)).toEqual([]);
});

test('the thinnest wall has the dark end of the map, and a boss stays hatched', () => {
  const sheet = sheetOf(fuel);
  const profile = sheet.stance?.profile ?? [];
  const field = wallField(profile);
  expect(field.most).toBeLessThan(4);
  const { patches, marks } = tankDrawing({ ...sheet, field });
  const coloured = patches.filter(({ place }) => place !== undefined && field.values[place] !== undefined);
  expect(coloured.length).toBeLessThan(patches.length);
  const colours = marks.flatMap((mark) =>
    mark.kind === 'area' && mark.of === 'wall colour' && mark.fill.kind === 'colour'
      ? [mark.fill.colour]
      : [],
  );
  expect(colours).toHaveLength(3 * coloured.length);
  const wallAt = ({ place }: (typeof patches)[number]): number => profile[place ?? 0].wall;
  const thinnest = coloured.reduce((a, b) => (wallAt(b) < wallAt(a) ? b : a));
  // The map begins at rgb(0, 34, 78) (Nuñez, Anderton & Renslow, PLoS ONE 13, 2018, e0199239; from memory).
  expect(colours[3 * coloured.indexOf(thinnest)]).toMatch(/^#00[12]/);
});

test('strain left is what the barrel has at the maximum less what each place has', () => {
  const profile = sheetOf(fuel).stance?.profile ?? [];
  const field = marginField(profile, 0.3);
  expect(field.values[7]?.mid).toBeCloseTo(0.3 - profile[7].plastic.mid, 12);
  expect(field.most).toBeLessThanOrEqual(0.3);
});

test('every piece of the drawn wall can be pointed at and leads to its place of the profile', () => {
  const sheet = sheetOf(fuel);
  const profile = sheet.stance?.profile ?? [];
  const { patches } = tankDrawing(sheet);
  for (const { place, z, part } of patches) {
    if (place === undefined) throw new Error('a patch without its place');
    // A straight flange is of its head here and of the barrel there.
    const flange = z >= 0 && z <= fuel.tank.length;
    if (!flange || part === 'barrel') expect(profile[place].part).toBe(part);
    expect(Math.abs(profile[place].z0 - z)).toBeLessThan(30);
  }
});

test('room kept for the largest growth keeps scale and place while the tank moves', () => {
  const { path } = fuel.result;
  const axisAt = (k: number): readonly [number, number] => {
    const scene = tankDrawing(
      sheetOf(fuel, {
        stance: stanceOf(fuel.result, path[k]),
        roomFor: stanceOf(fuel.result, path[path.length - 6]),
        times: 5,
      }),
    );
    return strokesOf(scene, 'centre line')[0].points[0];
  };
  expect(axisAt(3)).toEqual(axisAt(Math.floor(path.length / 2)));
});

test('a table row gives a girth as welded, under pressure and left', () => {
  const scene = tankDrawing(sheetOf(fuel));
  const cells = textsOf(scene)
    .filter((text) => text.of === 'cell: near bottom')
    .map(plain);
  const { datum, released } = fuel.result;
  const under = fuel.result.held ?? fuel.result.arrived;
  expect(cells).toEqual([
    datum.girths[0].toFixed(1),
    under?.girths[0].girth.toFixed(1),
    released?.left.girths[0].girth.toFixed(1),
    `+${(100 * (under?.girths[0].growth ?? 0)).toFixed(2)} %`,
    `+${(100 * (released?.left.girths[0].growth ?? 0)).toFixed(2)} %`,
  ]);
});

test('units switch on the whole sheet', () => {
  const scene = tankDrawing({ tank: fuel.tank, block: BLOCK, manner: IN_INCHES });
  const all = textsOf(scene).map(plain);
  expect(all).toContain(`Ø ${sayStated(IN_INCHES, 'length', 600)}`);
  expect(all.filter((text) => /\d mm\b/.test(text))).toEqual([]);
});
