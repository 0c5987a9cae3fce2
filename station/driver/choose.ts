/** Which SQLite: Node's own where it has one, else the optional library. */
import type { Base } from './base.ts';
import { betterSqlite } from './better.ts';
import { builtinSqlite } from './builtin.ts';
import { type Driver, openBase } from './frame.ts';

/**
 * How long a write waits for a rival, ms. Reading and writing stop the event loop meanwhile, so it is short:
 * the only rival is a command such as `backup`, whose own writes take milliseconds.
 */
const BUSY_MS = 100;

export const DRIVERS: readonly ((busy_ms: number) => Driver | undefined)[] = [builtinSqlite, betterSqlite];

export const NO_DRIVER =
  'There is no SQLite here: install Node 22.13 or later, or run `npm install better-sqlite3@12.11.1` with a C++ compiler at hand.';

/**
 * Opens or makes the base in `file`: write-ahead log, full sync (a commit that has returned outlives a power cut),
 * foreign keys checked. Throws a sentence where no driver is there.
 */
export const openChosenBase = (file: string, drivers = DRIVERS): Base => {
  for (const choice of drivers) {
    const driver = choice(BUSY_MS);
    if (driver) return tuned(openBase(driver, file));
  }
  throw new Error(NO_DRIVER);
};

const tuned = (base: Base): Base => {
  try {
    base.run('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON');
    return base;
  } catch (error) {
    base.close();
    throw error;
  }
};
