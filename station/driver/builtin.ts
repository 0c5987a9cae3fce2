/** node:sqlite: SQLite as Node (22.13 and later) has it built in. */
import { createRequire } from 'node:module';
import { troubleOf } from './base.ts';
import type { Connection, Driver } from './frame.ts';

interface NodeSqlite {
  readonly DatabaseSync: new (file: string, options: { timeout: number }) => Connection;
  /** Since Node 22.16 and 23.8. */
  readonly backup?: (source: Connection, file: string) => Promise<unknown>;
}

/** The driver, or `undefined` where Node has no SQLite. */
export const builtinSqlite = (busy_ms: number): Driver | undefined => {
  const sqlite = load();
  if (!sqlite) return undefined;
  return {
    name: 'node:sqlite',
    open: (file) => {
      const connection = new sqlite.DatabaseSync(file, { timeout: busy_ms });
      // The option `timeout` came later than the module itself.
      connection.exec(`PRAGMA busy_timeout = ${busy_ms}`);
      const copyTo = async (copy: string): Promise<void> => {
        if (sqlite.backup) await sqlite.backup(connection, copy);
        else connection.prepare('VACUUM INTO ?').run(copy);
      };
      return Object.assign(connection, { copyTo });
    },
    translate: (error) => troubleOf(codeOf(error), error) ?? error,
  };
};

const load = (): NodeSqlite | undefined => {
  try {
    const sqlite: NodeSqlite = createRequire(import.meta.url)('node:sqlite');
    return sqlite;
  } catch {
    return undefined;
  }
};

const codeOf = (error: unknown): number =>
  error instanceof Error && 'errcode' in error ? Number(error.errcode) : 0;
