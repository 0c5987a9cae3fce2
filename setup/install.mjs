/** Installs the libraries, and only when that is needed: a second start must work with the network off. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { existsInRoot, inRoot, leaveMark, markAt } from './folders.mjs';
import { treeHolds } from './lockfile.mjs';
import { npm, say } from './run.mjs';

const MARK = 'node_modules/.hoopwright-lock';
const NPM_TREE = 'node_modules/.package-lock.json';
/** First Node that brings its own SQLite without a flag (Node.js changelog, 22.13.0). */
const NODE_WITH_SQLITE = [22, 13];

/** Installs if node_modules is missing, or was made from another lockfile or for another Node. Ends the process if it cannot. */
export async function ensureInstalled() {
  requireNode();
  const [left, wanted] = [markAt(MARK), mark()];
  if (left === wanted) return;
  if ((left === '' || left.endsWith(builtFor())) && treeMatchesLockfile()) return leaveMark(MARK, wanted);
  say('Installing the libraries. This happens once, and again only when package-lock.json has changed.');
  await install();
  leaveMark(MARK, mark());
  sayIfNoDatabase();
}

/** Stops with one sentence on a Node that is too old to run the rest. */
export function requireNode() {
  const { engines } = JSON.parse(readFileSync(inRoot('package.json'), 'utf8'));
  const wanted = engines.node.replace('>=', '');
  if (!nodeIsBelow(wanted.split('.').map(Number))) return;
  say(
    `This is Node ${process.versions.node}; Hoopwright needs Node ${wanted} or newer. Install one from nodejs.org.`,
  );
  process.exit(1);
}

/** @param {number[]} version */
function nodeIsBelow([major, minor]) {
  const [ownMajor, ownMinor] = process.versions.node.split('.').map(Number);
  return ownMajor < major || (ownMajor === major && ownMinor < minor);
}

/** What native parts were built for: another Node needs others. */
const builtFor = () => ` ${process.platform}-${process.arch}-${process.versions.modules}\n`;

function mark() {
  const digest = createHash('sha256')
    .update(readFileSync(inRoot('package-lock.json')))
    .digest('hex');
  return digest + builtFor();
}

/** True if somebody has just run `npm install`: npm's own list of the tree says the same as the lockfile. */
function treeMatchesLockfile() {
  if (!existsInRoot(NPM_TREE)) return false;
  return treeHolds(JSON.parse(markAt(NPM_TREE)), JSON.parse(markAt('package-lock.json')));
}

async function install() {
  const quiet = ['--no-audit', '--no-fund', '--loglevel=error'];
  if ((await npm(['ci', ...quiet])) === 0) return;
  if (process.env.CI_SKIP_IS_FAILURE) return giveUp();
  say('');
  say('npm ci did not succeed (its words are above). Trying npm install, which is more forgiving where');
  say('package-lock.json and package.json disagree or a file is in use; it may rewrite package-lock.json.');
  if ((await npm(['install', ...quiet])) !== 0) giveUp();
}

function giveUp() {
  say('The libraries could not be installed. The first start needs the network; check it (and a proxy, if');
  say('you have one: npm config set proxy http://host:port) and start again.');
  process.exit(1);
}

/** Forecasts need no database, so its absence is a remark and not a failure. */
function sayIfNoDatabase() {
  if (!nodeIsBelow(NODE_WITH_SQLITE) || existsInRoot('node_modules/better-sqlite3')) return;
  say(
    'No database driver could be had or compiled: forecasts work, but to keep projects and records use ' +
      `Node ${NODE_WITH_SQLITE.join('.')} or newer, which brings its own.`,
  );
}
