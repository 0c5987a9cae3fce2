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
    return (value as Readonly<Record<string | number, Json>>)[step];
  }, file);
}

/** The file with a value at a path; what is on the way is made. `undefined` takes the key out. */
export const withValue = (file: FileDraft, path: string, value: Json | undefined): FileDraft =>
  put(file, stepsOf(path), value) as FileDraft;

function put(
  at: Json | undefined,
  [step, ...rest]: readonly (string | number)[],
  value: Json | undefined,
): Json {
  if (typeof step === 'number') {
    const list = Array.isArray(at) ? [...at] : [];
    if (rest.length === 0 && value === undefined) list.splice(step, 1);
    else list[step] = rest.length === 0 ? value : put(list[step], rest, value);
    return list;
  }
  const { [step]: old, ...others } = isRecord(at) ? at : {};
  if (rest.length === 0 && value === undefined) return others;
  const now = rest.length === 0 ? (value as Json) : put(old, rest, value);
  return isRecord(at) && step in at ? { ...at, [step]: now } : { ...others, [step]: now };
}

const isRecord = (value: Json | undefined): value is FileDraft =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A dimension of the drawing changed by hand: keys that would contradict it go, lengths that belong together follow. */
export function redimensioned(file: FileDraft, path: string, value: number): FileDraft {
  const changed = withValue(girthNamed(file, path), path, value);
  const head = /^(heads\.(?:top|bottom))\.(\w+)$/.exec(path);
  if (head !== null) return headChanged(changed, head[1], head[2], file);
  if (path === 'barrel.length_mm') return coursesStretched(changed, file, value);
  if (/^barrel\.courses\[\d+\]\.length_mm$/.test(path)) return barrelSummed(changed);
  if (path === 'barrel.wall_mm') return wallEverywhere(changed, file, value);
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
