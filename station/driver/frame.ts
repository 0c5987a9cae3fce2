/** What both drivers share: cached statements, transactions, and troubles told apart. */
import type { Base, Row, SqlValue } from './base.ts';

export interface Statement {
  run(...values: readonly SqlValue[]): { readonly changes: number | bigint };
  get(...values: readonly SqlValue[]): Row | undefined;
  all(...values: readonly SqlValue[]): Row[];
}

/** The part of a driver that this program uses; node:sqlite and better-sqlite3 agree in it. */
export interface Connection {
  exec(sql: string): unknown;
  prepare(sql: string): Statement;
  close(): void;
}

export interface Copier {
  copyTo(file: string): Promise<void>;
}

export interface Driver {
  readonly name: Base['driver'];
  open(file: string): Connection & Copier;
  /** The error as a Trouble where it is one, else as it came. */
  translate(error: unknown): unknown;
}

export const openBase = (driver: Driver, file: string): Base => {
  const guard = <T>(work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw driver.translate(error);
    }
  };
  const connection = guard(() => driver.open(file));
  const statements = new Map<string, Statement>();
  const prepared = (sql: string): Statement => {
    const known = statements.get(sql) ?? connection.prepare(sql);
    statements.set(sql, known);
    return known;
  };

  return {
    driver: driver.name,
    run: (sql) => void guard(() => connection.exec(sql)),
    change: (sql, ...values) => guard(() => Number(prepared(sql).run(...values).changes)),
    one: (sql, ...values) => guard(() => prepared(sql).get(...values)),
    all: (sql, ...values) => guard(() => prepared(sql).all(...values)),
    transaction: (work) => {
      guard(() => connection.exec('BEGIN IMMEDIATE'));
      try {
        const result = work();
        guard(() => connection.exec('COMMIT'));
        return result;
      } catch (error) {
        rollBack(connection);
        throw error;
      }
    },
    backup: async (copy) => {
      await connection.copyTo(copy).catch((error: unknown) => {
        throw driver.translate(error);
      });
    },
    close: () => {
      connection.close();
    },
  };
};

/** SQLite has rolled back by itself after some errors (full disk); then there is nothing left to roll back. */
const rollBack = (connection: Connection): void => {
  try {
    connection.exec('ROLLBACK');
  } catch {
    // the error that led here is the one to tell
  }
};
