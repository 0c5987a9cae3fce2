/** Builds dist/ from the sources, and only what has changed. */
import { mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { existsInRoot, fingerprint, inRoot, leaveMark, markAt } from './folders.mjs';

/** Packages that carry native parts, or find their own files beside themselves: they stay in node_modules. */
const LEFT_OUTSIDE = [
  'better-sqlite3',
  '@myriaddreamin/typst-ts-node-compiler',
  'tinypool',
  'serialport',
  'vite',
];

const PROGRAM = ['core', 'wire', 'report', 'checks', 'station'];
const PAGE = ['core', 'wire', 'report', 'web'];

/** dist/hoopwright.mjs and one dist/worker-NAME.mjs for each station/worker/NAME.ts. */
export function ensureProgram() {
  return refresh('hoopwright.mjs', PROGRAM, () => bundle(entries(), 'dist'));
}

/** dist/web, where there is a page to build. */
export async function ensurePage() {
  if (existsInRoot('web/index.html')) await refresh('web/index.html', PAGE, bundlePage);
}

/**
 * Makes again what is missing or older than its sources.
 * @param {string} target in dist
 * @param {string[]} folders
 * @param {() => Promise<void>} make
 */
async function refresh(target, folders, make) {
  const stamp = `dist/.${target.replace('/', '-')}.stamp`;
  const now = fingerprint(folders);
  if (markAt(stamp) === now && existsInRoot(`dist/${target}`)) return;
  await make();
  leaveMark(stamp, now);
}

/** @returns {Record<string, string>} name in dist, and the source it starts from */
function entries() {
  const folder = 'station/worker';
  const found = existsInRoot(folder) ? readdirSync(inRoot(folder)) : [];
  const workers = found.filter((name) => /(?<!\.test)\.ts$/.test(name));
  return {
    hoopwright: 'station/cli/main.ts',
    ...Object.fromEntries(workers.map((name) => [`worker-${basename(name, '.ts')}`, join(folder, name)])),
  };
}

/**
 * Bundles Node programs, each into one file with its source map.
 * @param {Record<string, string>} entryPoints name in the folder, and source
 * @param {string} folder
 */
export async function bundle(entryPoints, folder) {
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    absWorkingDir: inRoot(),
    entryPoints,
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    sourcemap: true,
    logLevel: 'warning',
    external: LEFT_OUTSIDE,
    // Bundled CommonJS libraries ask for Node's own modules by `require`, which an ES module does not have.
    banner: {
      js: "import { createRequire as __requireFrom } from 'node:module'; const require = __requireFrom(import.meta.url);",
    },
  });
  for (const { path, contents } of outputFiles) replaceFile(path, contents);
}

/**
 * Writes beside and renames, so that a program started meanwhile reads the old file or the new one, never a half.
 * @param {string} path
 * @param {Uint8Array} contents
 */
function replaceFile(path, contents) {
  mkdirSync(dirname(path), { recursive: true });
  const beside = `${path}.${process.pid}`;
  writeFileSync(beside, contents);
  renameSync(beside, path);
}

async function bundlePage() {
  const { build } = await import('vite');
  await build({
    root: inRoot('web'),
    logLevel: 'warn',
    build: { outDir: inRoot('dist', 'web'), emptyOutDir: true, sourcemap: true },
  });
}
