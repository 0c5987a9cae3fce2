/**
 * Compares what npm says it has installed (node_modules/.package-lock.json) with what the lockfile asks for.
 * @typedef {{ packages: Record<string, { version?: string, optional?: boolean }> }} Lockfile
 */

/**
 * True if every package asked for is there in its version, and no other. Optional ones (parts for another system, a
 * driver that could not be compiled) may be missing.
 * @param {Lockfile} tree
 * @param {Lockfile} lock
 */
export function treeHolds(tree, lock) {
  const wanted = Object.keys(lock.packages).filter((path) => path.includes('node_modules/'));
  const isInPlace = (/** @type {string} */ path) =>
    path in tree.packages
      ? tree.packages[path].version === lock.packages[path].version
      : lock.packages[path].optional === true;
  return wanted.every(isInPlace) && Object.keys(tree.packages).every((path) => path in lock.packages);
}
