/** Brings a base up to the program's version, one step in one transaction, or refuses it in a sentence. */
import { rmSync } from 'node:fs';
import type { Base } from '../../driver/base.ts';

/** "Hoop" in ASCII: tells our base from any other SQLite file (sqlite.org/fileformat.html, application id). */
const OURS = 0x486f6f70;

/**
 * Before an older base is changed, a copy of it is left beside it as FILE.version-N.
 * Throws a sentence for a foreign base and for one that is newer than the program; a step that fails leaves the base
 * exactly as it was before that step.
 */
export const migrate = (base: Base, file: string, steps: readonly string[]): void => {
  const version = pragma(base, 'user_version');
  refuse(base, version, steps.length);
  if (version > 0 && version < steps.length) leaveCopy(base, `${file}.version-${version}`);
  steps.slice(version).forEach((sql, i) => {
    base.transaction(() => {
      base.run(sql);
      base.run(`PRAGMA application_id = ${OURS}; PRAGMA user_version = ${version + i + 1}`);
    });
  });
};

const pragma = (base: Base, name: string): number => Number(base.one(`PRAGMA ${name}`)?.[name]);

const refuse = (base: Base, version: number, known: number): void => {
  const empty = base.one('SELECT 1 FROM sqlite_schema') === undefined;
  if (!empty && pragma(base, 'application_id') !== OURS) {
    throw new Error(
      'This file is a base of another program: choose another data folder. Nothing was changed.',
    );
  }
  if (version > known) {
    throw new Error(
      `This project base was written by a newer program (its version is ${version}, this program knows ${known}): update the program. Nothing was changed.`,
    );
  }
};

/** A copy from an attempt that failed may lie there; the base is still as it was then. */
const leaveCopy = (base: Base, copy: string): void => {
  rmSync(copy, { force: true });
  base.change('VACUUM INTO ?', copy);
};
