/**
 * Who may import whom, and the shape of files and folders. Pure: files come in as text, faults go out as sentences.
 * The folder order of the core is the order in which a reader learns it: mathematics, evidence, steel, tank, shell, stretch.
 */
import { posix } from 'node:path';
import type { Links } from './links.ts';

/** Each package, and the packages whose doors it may use. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  core: [],
  wire: ['core'],
  report: ['core', 'wire'],
  station: ['core', 'wire', 'report', 'checks'],
  web: ['core', 'wire', 'report'],
};

/** Each folder of the core, and the folders it may use beside itself. */
const CORE: Readonly<Record<string, readonly string[]>> = {
  math: [],
  stats: ['math'],
  steel: ['math', 'stats'],
  tank: ['math', 'stats', 'steel'],
  shell: ['math', 'stats', 'steel', 'tank'],
  stretch: ['math', 'stats', 'steel', 'tank', 'shell'],
  gauge: ['math', 'stats', 'tank'],
};

/** Runs anywhere, so it may not name Node's own modules. */
const PURE = new Set(['core', 'wire', 'report']);
const MOST_LINES = 300;
const MOST_FILES = 13;
const EMPTY_NAMES = new Set(['util', 'utils', 'helper', 'helpers', 'common', 'manager', 'misc', 'data']);

export interface Fault {
  readonly path: string;
  readonly rule:
    | 'arrow'
    | 'door'
    | 'library'
    | 'cycle'
    | 'default export'
    | 'lines'
    | 'files'
    | 'name'
    | 'missing';
  readonly says: string;
}

export interface Scan {
  readonly files: readonly Links[];
  /** Libraries each package declares, by package. */
  readonly declared: Readonly<Record<string, readonly string[]>>;
  /** Files that are no sources but may be imported: pictures, styles, JSON. */
  readonly others: ReadonlySet<string>;
}

export function faultsIn(scan: Scan): Fault[] {
  const known = new Set([...scan.files.map((file) => file.path), ...scan.others]);
  return [
    ...scan.files.flatMap((file) => faultsOfFile(file, scan, known)),
    ...cycles(scan.files, known),
    ...crowdedFolders(scan.files),
  ];
}

const isTest = (path: string): boolean => /\.test\.tsx?$/.test(path);
const packageOf = (path: string): string => path.split('/')[0];
/** Folder of a core file; a file beside the folders (units.ts) belongs to none and may be used by all. */
const folderOf = (path: string): string => path.split('/').slice(1, -1)[0] ?? '';

function faultsOfFile(file: Links, scan: Scan, known: ReadonlySet<string>): Fault[] {
  const found = file.specifiers.flatMap((specifier) => faultOfImport(file.path, specifier, scan, known));
  const add = (rule: Fault['rule'], says: string): void => void found.push({ path: file.path, rule, says });
  if (file.computed > 0) add('arrow', 'imports something whose name is computed, which nobody can check');
  if (file.hasDefaultExport) add('default export', 'has a default export; give it a name');
  if (!isTest(file.path) && file.lines >= MOST_LINES) {
    add('lines', `has ${file.lines} lines; keep it under ${MOST_LINES} or split it along the trade's nouns`);
  }
  const empty = file.path.split(/[/.-]/).find((word) => EMPTY_NAMES.has(word));
  if (empty) add('name', `is called "${empty}", which says nothing; name it from the trade`);
  return found;
}

function faultOfImport(path: string, specifier: string, scan: Scan, known: ReadonlySet<string>): Fault[] {
  const fault = (rule: Fault['rule'], says: string): Fault[] => [{ path, rule, says }];
  if (specifier.startsWith('@hoopwright/')) return faultOfDoor(path, specifier, known);
  if (!specifier.startsWith('.')) {
    const says = libraryFault(path, specifier, scan);
    return says ? fault('library', says) : [];
  }
  const target = resolve(path, specifier);
  if (packageOf(target) !== packageOf(path)) {
    return fault('door', `reaches into another package by "${specifier}"; use its door, @hoopwright/…`);
  }
  if (!known.has(target)) return fault('missing', `imports "${specifier}", which is not there`);
  if (target.endsWith('/door.ts')) {
    return fault('door', `goes through its own package's door "${specifier}"; import the file`);
  }
  return coreArrow(path, target);
}

/** Across packages only through a door: @hoopwright/PACKAGE/FOLDER, or the units of the core. */
function faultOfDoor(path: string, specifier: string, known: ReadonlySet<string>): Fault[] {
  const [, other, folder, ...rest] = specifier.split('/');
  const own = packageOf(path);
  const says = ((): string | undefined => {
    if (other === own) return `imports its own package as "${specifier}"; use a relative path`;
    if (!(PACKAGES[own] ?? []).includes(other))
      return `imports "${specifier}", but ${own} must not know ${other}`;
    if (!folder || rest.length > 0) return `imports "${specifier}"; a door is @hoopwright/${other}/FOLDER`;
    if (!known.has(doorOf(specifier))) return `imports "${specifier}", but there is no ${doorOf(specifier)}`;
    return undefined;
  })();
  return says ? [{ path, rule: other === own ? 'door' : 'arrow', says }] : [];
}

function doorOf(specifier: string): string {
  const inside = specifier.replace('@hoopwright/', '');
  return inside === 'core/units' ? 'core/units.ts' : `${inside}/door.ts`;
}

function libraryFault(path: string, specifier: string, scan: Scan): string | undefined {
  if (isTest(path)) return undefined;
  const own = packageOf(path);
  if (specifier.startsWith('node:')) {
    return PURE.has(own) || own === 'web'
      ? `imports "${specifier}", but ${own} does not run in Node`
      : undefined;
  }
  const library = specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
  if ((scan.declared[own] ?? []).includes(library)) return undefined;
  if (own === 'core') return `imports "${specifier}", but the core stands on nothing`;
  return `imports "${library}", which ${own}/package.json does not declare`;
}

function coreArrow(path: string, target: string): Fault[] {
  const [from, to] = [folderOf(path), folderOf(target)];
  if (packageOf(path) !== 'core' || to === '' || from === to) return [];
  const allowed = CORE[from] ?? [];
  if (allowed.includes(to)) return [];
  const may = allowed.length > 0 ? `it may use ${allowed.join(', ')}` : 'it stands on nothing';
  return [{ path, rule: 'arrow', says: `imports core/${to} from core/${from || 'its root'}; ${may}` }];
}

const resolve = (path: string, specifier: string): string =>
  posix.normalize(posix.join(posix.dirname(path), specifier.replace(/\?.*$/, '')));

/** Types count: two files that cannot be understood without each other are one file. */
function cycles(files: readonly Links[], known: ReadonlySet<string>): Fault[] {
  const next = new Map(files.map((file) => [file.path, sourcesOf(file, known)]));
  const done = new Set<string>();
  const found: Fault[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    const start = trail.indexOf(path);
    if (start >= 0) {
      const round = [...trail.slice(start), path];
      found.push({ path, rule: 'cycle', says: `imports itself in a round: ${round.join(' -> ')}` });
    } else if (!done.has(path)) {
      for (const target of next.get(path) ?? []) visit(target, [...trail, path]);
      done.add(path);
    }
  };
  for (const path of next.keys()) visit(path, []);
  return found;
}

function sourcesOf(file: Links, known: ReadonlySet<string>): string[] {
  const targets = file.specifiers.map((specifier) =>
    specifier.startsWith('@hoopwright/') ? doorOf(specifier) : resolve(file.path, specifier),
  );
  return targets.filter((target) => known.has(target));
}

function crowdedFolders(files: readonly Links[]): Fault[] {
  const sizes = new Map<string, number>();
  for (const { path } of files) {
    if (!isTest(path)) sizes.set(posix.dirname(path), (sizes.get(posix.dirname(path)) ?? 0) + 1);
  }
  return [...sizes]
    .filter(([, size]) => size > MOST_FILES)
    .map(([path, size]) => ({
      path,
      rule: 'files',
      says: `holds ${size} files; ${MOST_FILES} can be taken in`,
    }));
}
