/** The store in one SQLite file of a data folder. */
import { randomBytes } from 'node:crypto';
import { chmodSync, closeSync, existsSync, mkdirSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { openChosenBase } from '../../driver/choose.ts';
import type { Store, Surroundings } from '../store.ts';
import { openAttachments, openBytes, openShelf } from './attachments.ts';
import { openJournal } from './changes.ts';
import { openEdits } from './edits.ts';
import { migrate } from './migrate.ts';
import { openPlans } from './plans.ts';
import { openLife } from './projects.ts';
import { openRecords } from './records.ts';
import { openRows } from './rows.ts';
import { MIGRATIONS } from './schema.ts';
import { openTokens } from './tokens.ts';

export const BASE_NAME = 'hoopwright.db';

const OWNER_ONLY = 0o600;

const REAL: Surroundings = { clock: () => Date.now(), dice: (bytes) => randomBytes(bytes) };

/**
 * Opens the store in the folder `dir`, making both where they are not there; nobody else on the machine may read them.
 * Throws a sentence for a base that is foreign, newer than the program or damaged, and where there is no SQLite.
 */
export const openStore = (dir: string, surroundings: Surroundings = REAL): Store => {
  const file = privateFile(dir);
  const base = openChosenBase(file);
  try {
    migrate(base, file, MIGRATIONS);
  } catch (error) {
    base.close();
    throw error;
  }
  const { clock } = surroundings;
  const [rows, bytes, journal] = [openRows(base), openBytes(base), openJournal(base, clock)];
  const shelf = openShelf({ base, bytes, ...surroundings });
  return {
    projects: {
      ...rows,
      ...openLife({ base, journal, rows, shelf, ...surroundings }),
      ...openEdits({ base, journal, rows, clock }),
    },
    attachments: openAttachments({ base, journal, rows, shelf, bytes, clock }),
    plans: openPlans({ base, journal, rows, clock }),
    records: openRecords(base, surroundings),
    bytes,
    tokens: openTokens(base, surroundings),
    changes: journal,
    backup: async (copy) => {
      if (existsSync(copy)) throw new Error(`${copy} is there already: name a file that is not.`);
      await base.backup(copy);
      chmodSync(copy, OWNER_ONLY);
    },
    close: () => {
      base.close();
    },
  };
};

/** SQLite gives its log the rights of its file, so the file is made before it. */
const privateFile = (dir: string): string => {
  const file = join(dir, BASE_NAME);
  try {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
    closeSync(openSync(file, 'a'));
    chmodSync(file, OWNER_ONLY);
    return file;
  } catch (cause) {
    throw new Error(`The data folder ${dir} cannot be written: name another one in HOOPWRIGHT_DATA.`, {
      cause,
    });
  }
};
