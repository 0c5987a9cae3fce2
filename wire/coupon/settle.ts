/**
 * Units are named or asked for. Named ones are checked against what austenitic steel shows, unnamed ones are taken only
 * where a single reading suits it: ksi read as MPa, per cent as a fraction or inches as millimetres never pass silently.
 */
import { type Issue, shown } from '../issue/issue.ts';
import { type Course, courseOf, fits, type Scaled, scaledBy } from './course.ts';
import { quantityOf } from './sheet/column.ts';
import type { Figures } from './figures.ts';
import type { Note } from './note.ts';
import type { Column, Picked } from './pick.ts';
import type { Size } from './size.ts';
import { type Unit, unitNamed, USUAL } from './sheet/unit.ts';

export interface Reading {
  readonly stretch: Unit;
  readonly load: Unit;
  /** The two columns change places. */
  readonly swapped: boolean;
  /** Factors from figures to strain and to MPa. */
  readonly strainFactor: number;
  readonly stressFactor: number;
}

export type Settled =
  | { readonly ok: true; readonly reading: Reading; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly issues: Issue[] };

export const settleUnits = (figures: Figures, picked: Picked, size: Size): Settled => {
  const course = courseOf(figures.stretch, figures.load);
  const swapped = courseOf(figures.load, figures.stretch);
  const given = readings(picked, size, { anyUnit: false });
  const suits = (reading: Reading): boolean => fits(scaled(reading, course, swapped), picked);
  const suited = given.filter(suits);
  if (suited.length === 1)
    return {
      ok: true,
      reading: suited[0],
      notes: takenNotes(suited[0], picked, scaled(suited[0], course, swapped)),
    };
  if (suited.length > 1) return { ok: false, issues: [askUnit(picked, suited)] };
  const others = readings(picked, size, { anyUnit: true }).filter(suits);
  const slips = sizeSlips(given, { course, swapped, picked });
  if (others.length > 0 || slips.length > 0 || given.length > 1)
    return {
      ok: false,
      issues: [contradiction(picked, scaled(given[0], course, swapped), { others, slips })],
    };
  return { ok: true, reading: given[0], notes: [unlike(scaled(given[0], course, swapped))] };
};

/** All readings that the names leave open; with `anyUnit` the named units too, and the columns swapped. */
const readings = (
  { stretch, load, guessed }: Picked,
  size: Size,
  { anyUnit }: { anyUnit: boolean },
): Reading[] => {
  const turns =
    guessed || (anyUnit && stretch.meaning === 'strain' && load.meaning === 'stress')
      ? [false, true]
      : [false];
  return turns.flatMap((swapped) =>
    unitsFor(stretch, anyUnit).flatMap((ofStretch) =>
      unitsFor(load, anyUnit).map((ofLoad) => ({
        stretch: ofStretch,
        load: ofLoad,
        swapped,
        strainFactor: ofStretch.factor / size.gauge,
        stressFactor: ofLoad.factor / size.area,
      })),
    ),
  );
};

const unitsFor = ({ meaning, unit }: Column, anyUnit: boolean): Unit[] => {
  const usual = USUAL[quantityOf(meaning)].flatMap((name) => unitNamed(name, quantityOf(meaning)) ?? []);
  if (unit && !anyUnit) return [unit];
  return unit && !usual.some(({ name }) => name === unit.name) ? [unit, ...usual] : usual;
};

const scaled = (reading: Reading, course: Course, swapped: Course): Scaled =>
  scaledBy(reading.swapped ? swapped : course, reading);

const takenNotes = (reading: Reading, { stretch, load, guessed }: Picked, found: Scaled): Note[] => {
  const why = `so the first part has a slope of ${modulusText(found)} and the highest stress is ${Math.round(found.high)} MPa`;
  const order = reading.swapped ? [load, stretch] : [stretch, load];
  if (guessed)
    return [
      {
        says: `nothing names the columns: ${shown(order[0].name)} is taken as strain in ${reading.stretch.name}, ${shown(order[1].name)} as stress in ${reading.load.name}, ${why}`,
      },
    ];
  return (
    [
      [stretch, reading.stretch],
      [load, reading.load],
    ] as const
  ).flatMap(([column, unit]) =>
    column.unit || (column.meaning === 'strain' && unit.name === 'fraction' && found.modulus !== undefined)
      ? []
      : [{ says: `${shown(column.name)} names no unit: taken as ${unit.name}, ${why}` }],
  );
};

const modulusText = ({ modulus, chord }: Scaled): string =>
  modulus === undefined
    ? 'no readable value'
    : `${chord ? 'more than' : 'about'} ${figure(modulus / 1000)} GPa`;

const optionOf = ({ meaning }: Column, unit: Unit): string =>
  `--${meaning === 'crosshead' ? 'extension' : meaning}-unit ${unit.name === '%' ? '%' : unit.name}`;

const askUnit = (picked: Picked, suited: readonly Reading[]): Issue => ({
  path: `the units of ${shown(picked.stretch.name)} and ${shown(picked.load.name)}`,
  expected: 'a unit in the heading, e.g. "Stress [MPa]", or as an option',
  received: `no unit, and figures that suit ${suited.map(({ stretch, load }) => `${stretch.name} with ${load.name}`).join(' as well as ')}`,
  suggestion: `say ${optionOf(picked.stretch, suited[0].stretch)} ${optionOf(picked.load, suited[0].load)} if that is so`,
});

/** A gauge length or section given in inches, or the section in cm². */
const sizeSlips = (
  given: readonly Reading[],
  { course, swapped, picked }: { course: Course; swapped: Course; picked: Picked },
): string[] => {
  const slips: [string, boolean, number, number][] = [
    ['the gauge length may be in inches', picked.stretch.meaning !== 'strain', 1 / 25.4, 1],
    ['the cross-section may be in square inches', picked.load.meaning === 'force', 1, 1 / 25.4 ** 2],
    ['the cross-section may be in cm²', picked.load.meaning === 'force', 1, 1 / 100],
  ];
  return slips.flatMap(([says, applies, onStrain, onStress]) => {
    const moved = given.map((reading) => ({
      ...reading,
      strainFactor: reading.strainFactor * onStrain,
      stressFactor: reading.stressFactor * onStress,
    }));
    return applies && moved.some((reading) => fits(scaled(reading, course, swapped), picked)) ? [says] : [];
  });
};

const contradiction = (
  picked: Picked,
  found: Scaled,
  { others, slips }: { others: readonly Reading[]; slips: readonly string[] },
): Issue => {
  const { stretch, load } = picked;
  const units = [stretch, load]
    .map(({ name, unit }) => `${shown(name)}${unit ? ` in ${unit.name}` : ''}`)
    .join(' and ');
  const best = others.toSorted((a, b) => changes(a, picked) - changes(b, picked))[0];
  const suggestion = [...(best ? [adviceFor(best, picked)] : []), ...slips].join('; or ');
  return {
    path: units,
    expected:
      'figures of an austenitic steel: a slope of about 200 GPa and a highest stress of 400 to 1500 MPa',
    received: `a slope of ${modulusText(found)} and a highest stress of ${figure(found.high)} MPa`,
    suggestion: suggestion === '' ? 'name the units, e.g. --stress-unit ksi --strain-unit %' : suggestion,
  };
};

const changes = (reading: Reading, { stretch, load }: Picked): number =>
  (reading.swapped ? 3 : 0) +
  (stretch.unit?.name === reading.stretch.name ? 0 : 1) +
  (load.unit?.name === reading.load.name ? 0 : 1);

const adviceFor = (reading: Reading, { stretch, load }: Picked): string => {
  if (reading.swapped)
    return `the columns seem to have changed places: --strain ${shown(load.name)} --stress ${shown(stretch.name)}`;
  const options = (
    [
      [stretch, reading.stretch],
      [load, reading.load],
    ] as const
  )
    .filter(([column, unit]) => column.unit?.name !== unit.name && (column.unit || unit.name !== 'fraction'))
    .map(([column, unit]) => optionOf(column, unit));
  return `the figures suit ${reading.stretch.name} and ${reading.load.name}: if that is so, say ${options.join(' ')}`;
};

const unlike = (found: Scaled): Note => ({
  says: `the first part has a slope of ${modulusText(found)} and the highest stress is ${figure(found.high)} MPa, which no other unit explains: not a test of austenitic steel, or a gauge at fault`,
});

const figure = (value: number): string => String(Number(value.toPrecision(3)));
