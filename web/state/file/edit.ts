/** Changes to a tank file, as values: the file before is never touched. */

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
export type FileDraft = { readonly [key: string]: Json };

/** `heads.top.wall_mm` and `girths[1].at_mm` as steps. */
export const stepsOf = (path: string): (string | number)[] =>
  [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, name, index]) =>
    index === undefined ? name : Number(index),
  );

export function valueAt(file: Json | undefined, path: string): Json | undefined {
  return stepsOf(path).reduce<Json | undefined>((value, step) => {
    if (value === null || typeof value !== 'object') return undefined;
    return member(value, step);
  }, file);
}

/** The file with a value at a path; what is on the way is made. `undefined` takes the key out. */
export function withValue(file: FileDraft, path: string, value: Json | undefined): FileDraft {
  const changed = put(file, stepsOf(path), value);
  if (!isRecord(changed)) throw new Error(`the path "${path}" leads to no key of a tank file`);
  return changed;
}

/** A tank file from its text; throws where it is no JSON or no record, which the server has checked. */
export function draftOf(text: string): FileDraft {
  const value: Json = JSON.parse(text);
  if (!isRecord(value)) throw new Error('a tank file must be a record');
  return value;
}

const member = (value: readonly Json[] | FileDraft, step: string | number): Json | undefined => {
  if (isList(value)) return typeof step === 'number' ? value[step] : undefined;
  return typeof step === 'string' ? value[step] : undefined;
};

export const isList = (value: Json | undefined): value is readonly Json[] => Array.isArray(value);

function put(
  at: Json | undefined,
  [step, ...rest]: readonly (string | number)[],
  value: Json | undefined,
): Json {
  return typeof step === 'number' ? putInList(at, step, rest, value) : putInRecord(at, step, rest, value);
}

function putInList(
  at: Json | undefined,
  step: number,
  rest: readonly (string | number)[],
  value: Json | undefined,
): Json {
  const list = isList(at) ? [...at] : [];
  if (rest.length > 0) list[step] = put(list[step], rest, value);
  else if (value === undefined) list.splice(step, 1);
  else list[step] = value;
  return list;
}

/** A key keeps its place among the others, so that the file changes no more than it must. */
function putInRecord(
  at: Json | undefined,
  step: string,
  rest: readonly (string | number)[],
  value: Json | undefined,
): Json {
  const record = isRecord(at) ? at : {};
  if (rest.length > 0) return { ...record, [step]: put(record[step], rest, value) };
  if (value !== undefined) return { ...record, [step]: value };
  return Object.fromEntries(Object.entries(record).filter(([key]) => key !== step));
}

export const isRecord = (value: Json | undefined): value is FileDraft =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The file without a value; a list or record that it leaves empty goes with it. */
export function without(file: FileDraft, path: string): FileDraft {
  const left = withValue(file, path, undefined);
  const parent = path.replace(/(\.[^.[\]]+|\[\d+\])$/, '');
  if (parent === path) return left;
  const rest = valueAt(left, parent);
  const empty =
    rest !== undefined && rest !== null && typeof rest === 'object' && Object.keys(rest).length === 0;
  return empty ? without(left, parent) : left;
}

/** A dimension of the drawing changed by hand: keys that would contradict it go, lengths that belong together follow. */
export function redimensioned(file: FileDraft, path: string, value: number): FileDraft {
  const changed = withValue(girthNamed(file, path), path, value);
  const head = /^(heads\.(?:top|bottom))\.(\w+)$/.exec(path);
  if (head !== null) return headChanged(changed, head[1], head[2], file);
  if (path === 'barrel.length_mm') return coursesStretched(changed, file, value);
  if (/^barrel\.courses\[\d+\]\.length_mm$/.test(path)) return barrelSummed(changed);
  if (path === 'barrel.wall_mm') return measuredOf(wallEverywhere(changed, file, value), value);
  return changed;
}

/** Depth stands instead of the ratio, radii instead of the standard they came from. */
function headChanged(file: FileDraft, head: string, key: string, before: FileDraft): FileDraft {
  if (key === 'depth_mm') return withValue(file, `${head}.ratio`, undefined);
  if (key === 'ratio') return withValue(file, `${head}.depth_mm`, undefined);
  if (key !== 'crownRadius_mm' && key !== 'knuckleRadius_mm') return file;
  if (valueAt(before, `${head}.standard`) === undefined) return file;
  return withValue(file, `${head}.standard`, undefined);
}

/** Courses keep their shares of a barrel that was made longer. */
function coursesStretched(file: FileDraft, before: FileDraft, length: number): FileDraft {
  const courses = valueAt(file, 'barrel.courses');
  const old = valueAt(before, 'barrel.length_mm');
  if (!Array.isArray(courses) || typeof old !== 'number') return file;
  return courses.reduce<FileDraft>((now, _, i) => {
    const path = `barrel.courses[${i}].length_mm`;
    const own = valueAt(before, path);
    return typeof own === 'number'
      ? withValue(now, path, Number(((own * length) / old).toPrecision(9)))
      : now;
  }, file);
}

function barrelSummed(file: FileDraft): FileDraft {
  const courses = valueAt(file, 'barrel.courses');
  if (!Array.isArray(courses)) return file;
  const lengths = courses.map((_, i) => valueAt(file, `barrel.courses[${i}].length_mm`));
  const sum = lengths.reduce<number>((all, length) => all + (typeof length === 'number' ? length : 0), 0);
  return withValue(file, 'barrel.length_mm', Number(sum.toPrecision(12)));
}

/** Measured walls speak for a sheet that is as thick as they are, to so much. */
const SAME_SHEET = 0.08;

/** Walls that were measured belong to one sheet: another one has none yet. */
function measuredOf(file: FileDraft, wall: number): FileDraft {
  const measured = valueAt(file, 'steel.wallMeasured_mm');
  if (!isList(measured)) return file;
  const far = measured.some((one) => typeof one === 'number' && Math.abs(one / wall - 1) > SAME_SHEET);
  return far ? without(file, 'steel.wallMeasured_mm') : file;
}

/** Courses that had the barrel's wall written out keep it. */
function wallEverywhere(file: FileDraft, before: FileDraft, wall: number): FileDraft {
  const courses = valueAt(before, 'barrel.courses');
  if (!Array.isArray(courses)) return file;
  const old = valueAt(before, 'barrel.wall_mm');
  return courses.reduce<FileDraft>((now, _, i) => {
    const path = `barrel.courses[${i}].wall_mm`;
    return valueAt(before, path) === old && old !== undefined ? withValue(now, path, wall) : now;
  }, file);
}

/** Where the file names no girth there is one in the middle: moving it writes it down with its name. */
function girthNamed(file: FileDraft, path: string): FileDraft {
  if (!path.startsWith('girths[') || Array.isArray(valueAt(file, 'girths'))) return file;
  return withValue(file, 'girths', [{ name: 'middle' }]);
}

export const textOf = (file: FileDraft): string => `${JSON.stringify(file, null, 2)}\n`;
