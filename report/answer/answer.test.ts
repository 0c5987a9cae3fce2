import { readFileSync } from 'node:fs';
import { type Forecast, forecast, type Remark } from '@hoopwright/core/stretch';
import { parseTankFile } from '@hoopwright/wire/tank';
import { expect, test } from 'vitest';
import { headVerdict, knuckleSentence } from './knuckles.ts';
import { remarkSentence, standingNotes } from './remark.ts';
import { curveSvg, drawingSvg } from './sheets.ts';
import { tenLines } from './tenLines.ts';
import { USUAL_MANNER } from '../figure/manner.ts';

function answered(name: string, more: object = {}): Forecast {
  const file = JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'));
  const parsed = parseTankFile({ ...file, ...more });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return forecast(parsed.tank, parsed.duty, { shell: { elements: 60, layers: 5 } });
}

const fuel = answered('dunlin-fuel');
const plain = answered('c3');
const law = { law: 'hollomon', K_MPa: 1200, n: 0.4 };
const powerLaw = answered('dunlin-fuel', { steel: { flow: law } });
const tooThin = answered('dunlin-fuel', { duty: { workingPressure_bar: 60 } });
const all = { fuel, plain, powerLaw, tooThin };

test.each(Object.entries(all))('the answer of %s has ten lines, each a whole sentence', (_, result) => {
  const lines = tenLines(result);
  expect(lines).toHaveLength(10);
  for (const line of lines) {
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line).not.toMatch(/[{}]|NaN|undefined|Infinity/);
  }
});

test.each(Object.entries(all))('every growth in the answer of %s is under pressure or left', (_, result) => {
  const growths = tenLines(result).flatMap((line) => line.match(/[+-]\d+\.\d+ %[^,;)]*/g) ?? []);
  for (const growth of growths) expect(growth).toMatch(/ (under pressure|left)$/);
});

test('the answer gives the figures of the forecast', () => {
  const text = tenLines(fuel).join('\n');
  const { released, maximum, unstretched } = fuel;
  const now = fuel.held ?? fuel.arrived;
  if (now === undefined || released === undefined || maximum === undefined || unstretched === undefined)
    throw new Error('the demo tank is released');
  const figures = [
    `${(100 * now.largest.growth).toFixed(2)} %`,
    `${now.girths[1].girth.toFixed(1)} mm`,
    `${(now.growth / 1e6).toFixed(2)} L`,
    `${(now.pumped.all / 1e6).toFixed(2)} L`,
    `${(now.pumped.water / 1e6).toFixed(2)} L`,
    `${(100 * released.left.largest.growth).toFixed(2)} %`,
    `${(10 * released.newYield).toFixed(1)} bar`,
    `${released.wall.thinnest.toFixed(2)} mm`,
    `${(10 * maximum.pressure).toFixed(1)} bar`,
    `${(maximum.pressure / 2.7).toFixed(2)} times`,
    `${(1000 * unstretched.mass).toFixed(1)} kg`,
  ];
  for (const figure of figures) expect(text).toContain(figure);
});

test('the last line is the caution', () => {
  for (const result of Object.values(all)) {
    expect(tenLines(result)[9]).toContain('Pressurised tanks kill.');
    expect(tenLines(result)[9]).toContain('licensed engineer');
  }
});

test('a power law gives no first yield, and says so', () => {
  expect(tenLines(powerLaw)[1]).toContain('No first yield is given.');
});

test('a tank that bursts first says that it does not reach the stretch pressure', () => {
  expect(tenLines(tooThin)[2]).toContain('does not reach the stretch pressure of 90.0 bar');
});

test('a decimal comma is used in every figure of the answer', () => {
  const text = tenLines(fuel, { ...USUAL_MANNER, decimal: ',' }).join('\n');
  // Numbers of standards and of steels keep their points.
  expect(text.replace(/EN 13445-3 [\d.]+|1\.4307/g, '')).not.toMatch(/\d\.\d/);
});

const LIMIT = { kind: 'seam', pressure: 2.11, growth: 0.031, extrapolated: false } as const;
const REMARKS: readonly Remark[] = [
  { code: 'no maximum', reason: 'the steps grew too small' },
  { code: 'bursts before target', target: 2.7, limit: LIMIT },
  { code: 'bursts before target', target: 2.7, limit: { ...LIMIT, kind: 'local necking' } },
  { code: 'bursts before target', target: 2.7, limit: { ...LIMIT, kind: 'pressure maximum' } },
  { code: 'growth not reached', asked: 0.62, limit: LIMIT },
  { code: 'beyond evidence', plastic: 0.123, evidence: 0.08, pressure: 2.34 },
  { code: 'hold above target', pressure: 2.9 },
  { code: 'release stuck', reason: 'no balance' },
  { code: 'no rate effect' },
  { code: 'power law' },
  { code: 'path stuck', reason: 'no balance', pressure: 3.3 },
];

test.each(REMARKS)('the remark "$code" is a sentence with its figures', (remark) => {
  const text = remarkSentence(remark);
  expect(text).toMatch(/^[A-Z].*\.$/);
  expect(text).not.toMatch(/[{}]/);
  if ('pressure' in remark) expect(text).toContain(`${(10 * remark.pressure).toFixed(1)} bar`);
  if ('plastic' in remark) expect(text).toContain('12.30 %');
  if ('evidence' in remark) expect(text).toContain('8.00 %');
  if ('limit' in remark) expect(text).toContain('21.1 bar');
  if ('reason' in remark) expect(text).toContain(remark.reason);
});

test('what holds for every forecast is said: wrinkles, bulging, scope of the standards', () => {
  const notes = standingNotes();
  expect(notes.some((note) => note.includes('cannot show wrinkles'))).toBe(true);
  expect(notes.some((note) => note.includes('Bulging'))).toBe(true);
  expect(notes.some((note) => note.includes('1 mm to 3 mm') && note.includes('not a code route'))).toBe(true);
});

test('the weight of the water is added to the pressure at each head', () => {
  const { tank } = fuel.datum.solver.shell;
  // Gauge at 880 mm, tangent lines at 0 and 640 mm, water at 16 °C: 0.0863 and 0.0235 bar by hand (998.9 kg/m3).
  expect(headVerdict(tank, 'bottom', 2.7).pressure).toBeCloseTo(2.7 + 0.00862, 5);
  expect(headVerdict(tank, 'top', 2.7).pressure).toBeCloseTo(2.7 + 0.00235, 5);
});

test('a knuckle over the lowest published pressure is to be watched', () => {
  const { tank } = fuel.datum.solver.shell;
  expect(knuckleSentence(tank, 'bottom', 6, USUAL_MANNER)).toContain('watch the knuckle, 60.1 bar is over');
  expect(knuckleSentence(tank, 'bottom', 0.5, USUAL_MANNER)).toContain(
    'no sign of wrinkling, 5.1 bar is under',
  );
});

test('both sheets of a tank that is called invented say so, and name it without the word', () => {
  for (const svg of [drawingSvg(fuel), curveSvg(fuel)]) {
    expect(svg).toContain('INVENTED DATA');
    expect(svg).toContain('>Dunlin fuel tank<');
  }
  expect(drawingSvg(plain)).not.toContain('INVENTED DATA');
});

test('sheets of the same forecast have the same bytes', () => {
  expect(drawingSvg(fuel)).toBe(drawingSvg(fuel));
  expect(curveSvg(fuel)).toBe(curveSvg(fuel));
});
