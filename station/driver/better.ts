/** better-sqlite3: an optional library with a compiled part, for Node without SQLite of its own. */
import { createRequire } from 'node:module';
import { troubleOf } from './base.ts';
import type { Connection, Driver } from './frame.ts';

interface BetterConnection extends Connection {
  backup(file: string): Promise<unknown>;
}
type BetterConstructor = new (file: string, options: { timeout: number }) => BetterConnection;

/** The driver, or `undefined` where the library is not there or was compiled for another Node. */
export const betterSqlite = (busy_ms: number): Driver | undefined => {
  const Better = load();
  if (!Better) return undefined;
  return {
    name: 'better-sqlite3',
    open: (file) => {
      const connection = new Better(file, { timeout: busy_ms });
      const copyTo = async (copy: string): Promise<void> => void (await connection.backup(copy));
      return Object.assign(connection, { copyTo });
    },
    translate: (error) => troubleOf(codeOf(error), error) ?? error,
  };
};

const load = (): BetterConstructor | undefined => {
  try {
    const Better: BetterConstructor = createRequire(import.meta.url)('better-sqlite3');
    // Only opening a base loads the compiled part.
    new Better(':memory:', { timeout: 0 }).close();
    return Better;
  } catch {
    return undefined;
  }
};

/** better-sqlite3 names result codes ("SQLITE_IOERR_WRITE"); SQLite numbers them. */
const CODES: Readonly<Record<string, number>> = {
  BUSY: 5,
  LOCKED: 6,
  READONLY: 8,
  IOERR: 10,
  CORRUPT: 11,
  FULL: 13,
  CANTOPEN: 14,
  NOTADB: 26,
};

const codeOf = (error: unknown): number => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return CODES[code.split('_')[1] ?? ''] ?? 0;
};
