/** Where things are in this clone, and whether they have changed. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** @param {string[]} parts */
export const inRoot = (...parts) => join(root, ...parts);

const NOT_OURS = new Set(['node_modules', 'dist', 'out', '.git']);
const TEST = /\.test\.tsx?$/;

/**
 * Every file below a folder of the clone, as paths from the root with forward slashes.
 * @param {string} folder
 * @param {string} [base] another root, for tests
 * @returns {string[]}
 */
export function filesIn(folder, base = root) {
  const entries = readdirSync(join(base, folder), { withFileTypes: true });
  return entries.flatMap((entry) => {
    const path = posix.join(folder, entry.name);
    if (entry.isDirectory()) return NOT_OURS.has(entry.name) ? [] : filesIn(path, base);
    return [path];
  });
}

/** @param {string} folder */
export const testsIn = (folder) => filesIn(folder).filter((path) => TEST.test(path));

/**
 * Changes when a source is edited, added, renamed or removed, and not when a test is. Reads dates and sizes, not
 * contents: it runs at each start.
 * @param {string[]} folders
 * @param {string} [base] another root, for tests
 */
export function fingerprint(folders, base = root) {
  const sources = folders.flatMap((folder) => filesIn(folder, base)).filter((path) => !TEST.test(path));
  const lines = [...sources.sort(), 'package-lock.json', 'setup/build.mjs'].map((file) => {
    // A file may go while we look.
    const found = statSync(join(base, file), { throwIfNoEntry: false });
    return `${file} ${found?.mtimeMs} ${found?.size}`;
  });
  return createHash('sha256').update(lines.join('\n')).digest('hex');
}

/** @param {string} path */
export const existsInRoot = (path) => existsSync(inRoot(path));

/**
 * The mark left by the last successful step, empty if there is none.
 * @param {string} path
 */
export function markAt(path) {
  return existsInRoot(path) ? readFileSync(inRoot(path), 'utf8') : '';
}

/**
 * @param {string} path
 * @param {string} mark
 */
export function leaveMark(path, mark) {
  mkdirSync(dirname(inRoot(path)), { recursive: true });
  writeFileSync(inRoot(path), mark);
}
