/** Which columns of the table are used: those named by the person, else those whose headings say what they hold. */
import { type Issue, shown } from '../issue/issue.ts';
import { nearest } from '../issue/nearest.ts';
import { type Heading, headingName, type Meaning, quantityOf } from './sheet/column.ts';
import { type CouponHints, OPTION } from './hints.ts';
import type { Note } from './note.ts';
import type { Table } from './sheet/table.ts';
import { type Unit, unitNamed, unitNames } from './sheet/unit.ts';

export interface Column {
  /** Counts from 0. */
  readonly index: number;
  /** For messages. */
  readonly name: string;
  readonly meaning: Meaning;
  readonly unit?: Unit;
  /** Where the unit comes from, absent where there is none. */
  readonly unitFrom?: 'heading' | 'hint';
  readonly isTrue: boolean;
}

export interface Picked {
  /** Strain, extension or crosshead travel. */
  readonly stretch: Column;
  /** Stress or force. */
  readonly load: Column;
  readonly time?: Column;
  /** Nothing says which column is which. */
  readonly guessed: boolean;
  readonly notes: readonly Note[];
}

export type Pick =
  | { readonly ok: true; readonly picked: Picked }
  | { readonly ok: false; readonly issues: Issue[] };

export const pickColumns = (table: Table, hints: CouponHints): Pick => {
  const issues: Issue[] = [];
  const notes: Note[] = [];
  const column = (meaning: Meaning): Column | undefined =>
    columnFor(meaning, table, { hints, issues, notes });
  const of = (meanings: readonly Meaning[]): Column | undefined =>
    wishedFirst(meanings, hints).map(column).find(Boolean);
  const stretch = of(['strain', 'extension', 'crosshead']);
  const load = of(['stress', 'force']);
  const time = column('time');
  if (issues.length > 0) return { ok: false, issues };
  if (stretch && load)
    return { ok: true, picked: { stretch, load, ...(time && { time }), guessed: false, notes } };
  if (!stretch && !load && table.width === 2) return { ok: true, picked: guess(table, notes) };
  return { ok: false, issues: missing(table, { stretch, load }) };
};

/** What the person names comes before what the headings offer; strain before extension, stress before force. */
const wishedFirst = (meanings: readonly Meaning[], hints: CouponHints): readonly Meaning[] => {
  const wished = meanings.filter((meaning) => meaning !== 'crosshead' && hints[meaning] !== undefined);
  return wished.length > 0 ? wished : meanings;
};

interface Looking {
  readonly hints: CouponHints;
  readonly issues: Issue[];
  readonly notes: Note[];
}

const columnFor = (meaning: Meaning, table: Table, { hints, issues, notes }: Looking): Column | undefined => {
  const wanted = meaning === 'crosshead' ? undefined : hints[meaning];
  const index =
    wanted === undefined ? byHeading(meaning, table, notes) : byWish(wanted, meaning, { table, issues });
  if (index === undefined) return undefined;
  const heading = table.headings[index];
  const travel = meaning === 'extension' && heading?.meaning === 'crosshead';
  if (wanted !== undefined && heading?.meaning && quantityOf(heading.meaning) !== quantityOf(meaning))
    notes.push({
      says: `${shown(heading.text)} is read as ${meaning} as you say, though it sounds like ${heading.meaning}`,
    });
  const base = {
    index,
    name: heading ? heading.text : `column ${index + 1}`,
    meaning: travel ? ('crosshead' as const) : meaning,
    isTrue: heading?.isTrue ?? false,
  };
  return { ...base, ...unitOf(base.meaning, heading, { hints, issues, notes }) };
};

/** A name first, then a number: a heading may be called 2. */
const byWish = (
  wanted: string,
  meaning: Meaning,
  { table, issues }: { table: Table; issues: Issue[] },
): number | undefined => {
  const bare = wanted.trim().toLowerCase();
  const names = table.headings.map((heading) => [
    heading.text.toLowerCase(),
    headingName(heading.text).toLowerCase(),
  ]);
  const named = [0, 1]
    .map((way) => names.findIndex((pair) => pair[way] === bare))
    .find((index) => index >= 0);
  if (named !== undefined) return named;
  const number = /^\d+$/.test(bare) ? Number(bare) : 0;
  if (number >= 1 && number <= table.width) return number - 1;
  const headings = table.headings.map(({ text }) => text);
  const near = nearest(wanted, headings);
  issues.push({
    path: OPTION[meaning],
    expected: `one of the headings ${listed(headings)} or a number from 1 to ${table.width}`,
    received: shown(wanted),
    ...(near !== undefined && { suggestion: `did you mean ${shown(near)}?` }),
  });
  return undefined;
};

const byHeading = (meaning: Meaning, { headings }: Table, notes: Note[]): number | undefined => {
  const found = headings.flatMap((heading, index) => (heading.meaning === meaning ? [index] : []));
  const best = found.find((index) => headings[index].unit) ?? found[0];
  const others = found.filter((index) => index !== best).map((index) => headings[index].text);
  if (others.length > 0)
    notes.push({
      says: `${listed(found.map((index) => headings[index].text))} all look like ${meaning}: ${shown(headings[best].text)} is taken; ${OPTION[meaning]} names another`,
    });
  return best;
};

const unitOf = (
  meaning: Meaning,
  heading: Heading | undefined,
  { hints, issues, notes }: Looking,
): UnitFound => {
  const word = wishedUnit(meaning, hints);
  if (word === undefined) {
    if (heading?.strangeUnit !== undefined)
      issues.push(strangeUnit(meaning, heading.text, heading.strangeUnit));
    return heading?.unit ? { unit: heading.unit, unitFrom: 'heading' } : {};
  }
  const unit = unitNamed(word, quantityOf(meaning));
  if (!unit) {
    issues.push(strangeUnit(meaning, `the unit of ${meaning}`, word));
    return {};
  }
  if (heading?.unit && heading.unit.name !== unit.name)
    notes.push({
      says: `${shown(heading.text)} is read in ${unit.name} as you say, not in ${heading.unit.name}`,
    });
  return { unit, unitFrom: 'hint' };
};

type UnitFound = { readonly unit?: Unit; readonly unitFrom?: 'heading' | 'hint' };

const wishedUnit = (meaning: Meaning, hints: CouponHints): string | undefined =>
  ({
    strain: hints.strainUnit,
    stress: hints.stressUnit,
    force: hints.forceUnit,
    extension: hints.extensionUnit,
    crosshead: hints.extensionUnit,
    time: hints.timeUnit,
  })[meaning];

const strangeUnit = (meaning: Meaning, path: string, word: string): Issue => {
  const names = unitNames(quantityOf(meaning));
  const near = nearest(word, names);
  return {
    path,
    expected: `a unit of ${quantityOf(meaning)}: ${names.join(', ')}`,
    received: shown(word),
    ...(near !== undefined && { suggestion: `did you mean ${near}?` }),
  };
};

/** Two columns without names: strain, then stress, until the figures say otherwise. */
const guess = (table: Table, notes: readonly Note[]): Picked => {
  const column = (index: number, meaning: Meaning): Column => ({
    index,
    name: table.headings[index]?.text ?? `column ${index + 1}`,
    meaning,
    isTrue: false,
  });
  return { stretch: column(0, 'strain'), load: column(1, 'stress'), guessed: true, notes };
};

const missing = (
  table: Table,
  { stretch, load }: { stretch: Column | undefined; load: Column | undefined },
): Issue[] => {
  const headings = table.headings.map(({ text }) => text);
  const received =
    headings.length > 0 ? `the headings ${listed(headings)}` : `${table.width} columns without headings`;
  const ask = (expected: string, options: string): Issue => ({
    path: table.headingLine === undefined ? 'columns' : `line ${table.headingLine}`,
    expected,
    received,
    suggestion: `name the column, by heading or number from 1: ${options}`,
  });
  return [
    ...(stretch ? [] : [ask('a column of strain or extension', '--strain COLUMN or --extension COLUMN')]),
    ...(load ? [] : [ask('a column of stress or force', '--stress COLUMN or --force COLUMN')]),
  ];
};

const listed = (words: readonly string[]): string => words.map((word) => shown(word)).join(', ');
