import { readFileSync } from 'node:fs';
import { type Forecast, forecast } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { parseTankFile } from '@hoopwright/wire/tank';
import { expect, test } from 'vitest';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import type { Scene, Stroke, Text } from '../sheet/mark.ts';
import { boxOf, overlap } from '../sheet/measure.ts';
import { toSvg } from '../sheet/svg.ts';
import { axisFor } from './axis.ts';
import { PUBLISHED_CEILING } from './ceiling.ts';
import { type CurveSheet, growthCurve, panelsFor } from './growthCurve.ts';
import { clipped, onPanel, type Panel, type Place } from './panel.ts';
import { branchesOf, byLargest, type CurveForecast, holdsOf, whereReached } from './path.ts';

interface Case {
  readonly name: string;
  readonly tank: Tank;
  readonly result: Forecast;
}

const cases: readonly Case[] = [
  ['c3', undefined],
  ['c3', 3],
  ['c3', 1.5],
  ['dunlin-fuel', undefined],
  ['dunlin-oxidiser', undefined],
  ['minimal', 2.4],
].map(([name, target]): Case => {
  const text = readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8');
  const parsed = parseTankFile(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const orders = typeof target === 'number' ? { target } : {};
  const shell = { elements: 60, layers: 5 };
  const result = forecast(parsed.tank, parsed.duty, { shell, ...orders });
  return { name: `${name} ${target ?? ''}`, tank: parsed.tank, result };
});

const BLOCK = { title: 'a tank', forecast: 'current', invented: true } as const;
const sheetOf = ({ result, tank }: Case, more: Partial<CurveSheet> = {}): CurveSheet => ({
  forecast: result,
  tank,
  block: BLOCK,
  ...more,
});

const textsOf = (scene: Scene): Text[] => scene.marks.filter((mark) => mark.kind === 'text');
const strokesOf = (scene: Scene, of: string): Stroke[] =>
  scene.marks.filter((mark) => mark.kind === 'stroke').filter((mark) => mark.of === of);
const plain = (text: Text): string => text.runs.map((run) => run.text).join('');

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

test.each(cases)('no lettering of the curve of $name meets another', (one) => {
  expect(meetings(growthCurve(sheetOf(one)))).toEqual([]);
  expect(meetings(growthCurve(sheetOf(one, { manner: IN_INCHES })))).toEqual([]);
});

test.each(cases)('the curve of $name has the same bytes twice, and no NaN', (one) => {
  const svg = toSvg(growthCurve(sheetOf(one)));
  expect(svg).toBe(toSvg(growthCurve(sheetOf(one))));
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
});

const fuel = cases.find(({ name }) => name.startsWith('dunlin-fuel')) as Case;
const panels = panelsFor(fuel.result, PUBLISHED_CEILING, USUAL_MANNER);

test('every growth of the curve says whether it is under pressure or left', () => {
  for (const one of cases) {
    const growths = textsOf(growthCurve(sheetOf(one)))
      .filter(({ of }) => of === 'under pressure' || of === 'left' || of === 'maximum: line 2')
      .map(plain);
    expect(growths.length).toBeGreaterThan(0);
    for (const text of growths) expect(text).toMatch(/under pressure$|left$/);
  }
});

test('the axes of growth say that they are under pressure', () => {
  const titles = textsOf(growthCurve(sheetOf(fuel)))
    .filter(({ of }) => of === 'x title')
    .map(plain);
  expect(titles).toHaveLength(3);
  for (const title of titles) expect(title).toContain('under pressure');
});

test('the release point stands at the growth and pressure of the forecast, its figure beside it', () => {
  const scene = growthCurve(sheetOf(fuel));
  const turn = fuel.result.held ?? fuel.result.arrived;
  if (turn === undefined) throw new Error('the demo tank is released');
  const rings = scene.marks.filter((mark) => mark.kind === 'ring' && mark.of === 'under pressure');
  expect(rings).toHaveLength(2);
  const [ring] = rings;
  expect(ring.kind === 'ring' && ring.at).toEqual(onPanel(panels.girth, byLargest(turn)));
  const said = textsOf(scene).find(({ of }) => of === 'under pressure') as Text;
  expect(plain(said)).toBe(`${(100 * turn.largest.growth).toFixed(2)} % under pressure`);
});

test('what is left is read at zero pressure', () => {
  const rings = growthCurve(sheetOf(fuel)).marks.filter((mark) => mark.kind === 'ring' && mark.of === 'left');
  for (const ring of rings) expect(ring.kind === 'ring' && ring.at[1]).toBeCloseTo(panels.girth.bottom, 9);
});

test('both upper panels have the same pressures', () => {
  expect(panels.volume.y).toBe(panels.girth.y);
  expect([panels.volume.top, panels.volume.bottom]).toEqual([panels.girth.top, panels.girth.bottom]);
});

test('the stretch pressure is a line across both panels, with its figure', () => {
  const lines = strokesOf(growthCurve(sheetOf(fuel)), 'stretch pressure');
  expect(lines.map(({ points }) => points[0][1])).toEqual([
    onPanel(panels.girth, [0, 2.7])[1],
    onPanel(panels.volume, [0, 2.7])[1],
  ]);
  expect(textsOf(growthCurve(sheetOf(fuel))).map(plain)).toContain('stretch pressure 27.0 bar');
});

test('each hold of the duty is seen, level and with its minutes', () => {
  const holds = holdsOf(branchesOf(fuel.result).up);
  expect(holds.map(({ from, to }) => Math.round((to.time - from.time) / 60))).toEqual([10, 60]);
  for (const { from, to } of holds) expect(to.pressure).toBeCloseTo(from.pressure, 6);
  const said = textsOf(growthCurve(sheetOf(fuel))).map(plain);
  expect(said).toContain('hold 10 min');
  expect(said).toContain('hold 60 min');
});

test('a forecast that came through a worker, as copies, gives the same curve', () => {
  const { path, arrived, held, released, firstYield, barrelYield, maximum, target } = fuel.result;
  const bare = (m: Forecast['path'][number]): CurveForecast['path'][number] => ({
    phase: m.phase,
    time: m.time,
    pressure: m.pressure,
    growth: m.growth,
    pumped: m.pumped,
    girths: m.girths,
    largest: m.largest,
  });
  const copy = structuredClone({
    path: path.map(bare),
    ...(arrived === undefined ? {} : { arrived: bare(arrived) }),
    ...(held === undefined ? {} : { held: bare(held) }),
    ...(released === undefined ? {} : { released: { left: bare(released.left) } }),
    firstYield,
    barrelYield,
    maximum,
    target,
  }) as CurveForecast;
  expect(toSvg(growthCurve(sheetOf(fuel, { forecast: copy })))).toBe(toSvg(growthCurve(sheetOf(fuel))));
});

test('the ceiling begins at 7 % left and leans as the tank springs back', () => {
  const [edge] = strokesOf(growthCurve(sheetOf(fuel)), 'ceiling');
  expect(edge.points[0]).toEqual(onPanel(panels.girth, [0.07, 0]));
  const turn = fuel.result.held ?? fuel.result.arrived;
  const left = fuel.result.released?.left;
  if (turn === undefined || left === undefined) throw new Error('the demo tank is released');
  const recovery = (turn.largest.growth - left.largest.growth) / turn.pressure;
  expect(edge.points[1][0]).toBeCloseTo(
    onPanel(panels.girth, [0.07 + recovery * panels.girth.y.most, 0])[0],
    9,
  );
});

test('the maximum is marked on the whole way, with its margin over the stretch pressure', () => {
  const { maximum } = fuel.result;
  if (maximum === undefined) throw new Error('the demo tank has a maximum');
  const scene = growthCurve(sheetOf(fuel));
  const ring = scene.marks.find((mark) => mark.kind === 'ring' && mark.of === 'maximum');
  expect(ring?.kind === 'ring' && ring.at).toEqual(onPanel(panels.whole, [maximum.growth, maximum.pressure]));
  expect(textsOf(scene).map(plain)).toContain(
    `${(maximum.pressure / 2.7).toFixed(2)} times the stretch pressure`,
  );
});

test('a range is drawn as two bands with a fine median, and only where there is one', () => {
  const line = (f: number): Place[] =>
    [0, 0.01, 0.03, 0.09].map((x, i): Place => [f * x, [0, 2, 2.6, 3.4][i]]);
  const growth = {
    median: line(1),
    fifty: { low: line(0.8), high: line(1.2) },
    ninety: { low: line(0.6), high: line(1.5) },
  };
  const of = (scene: Scene): string[] => scene.marks.flatMap((mark) => mark.of ?? []);
  const names = ['range 90 %', 'range 50 %', 'median'];
  expect(of(growthCurve(sheetOf(fuel, { ranges: { growth } })))).toEqual(expect.arrayContaining(names));
  for (const name of names) expect(of(growthCurve(sheetOf(fuel)))).not.toContain(name);
});

test('axes end at a round number that holds the value', () => {
  const axis = axisFor(USUAL_MANNER, 'pressure', 3.13);
  expect(axis.most).toBeCloseTo(3.5, 12);
  expect(axis.ticks.map(({ text }) => text)).toEqual(['0', '5', '10', '15', '20', '25', '30', '35']);
  expect(axisFor(IN_INCHES, 'volume', 2e6).ticks[1].text).toBe('0,1');
});

const PANEL: Panel = {
  left: 0,
  right: 100,
  top: 0,
  bottom: 50,
  x: { most: 10, ticks: [], unit: '' },
  y: { most: 5, ticks: [], unit: '' },
};

test('a line is cut where it leaves its panel, and not before', () => {
  expect(
    clipped(PANEL, [
      [0, 0],
      [4, 2],
      [12, 3],
    ]),
  ).toEqual([
    [0, 0],
    [4, 2],
    [10, 2.75],
  ]);
  expect(
    clipped(PANEL, [
      [0, 0],
      [4, 4],
      [6, 8],
    ]),
  ).toEqual([
    [0, 0],
    [4, 4],
    [4.5, 5],
  ]);
  expect(
    clipped(PANEL, [
      [0, 0],
      [4, 4],
    ]),
  ).toEqual([
    [0, 0],
    [4, 4],
  ]);
});

test('a value on the way is read straight between moments', () => {
  const way = branchesOf(fuel.result).up;
  const [a, b] = [way[4], way[5]];
  const middle = 0.5 * (a.largest.growth + b.largest.growth);
  const pressure = whereReached(
    way,
    (m) => m.largest.growth,
    middle,
    (m) => m.pressure,
  );
  expect(pressure).toBeCloseTo(0.5 * (a.pressure + b.pressure), 9);
});
