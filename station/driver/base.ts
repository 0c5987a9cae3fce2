/** The one small interface through which the store speaks SQL; behind it either SQLite driver. */

export type SqlValue = null | number | string | Uint8Array;
export type Row = Readonly<Record<string, SqlValue>>;

/** One open base. Synchronous: when `transaction` has returned, what it wrote is on the disk. */
export interface Base {
  readonly driver: 'node:sqlite' | 'better-sqlite3';
  /** Runs statements without parameters, several at once. */
  run(sql: string): void;
  /** Runs one statement; answers how many rows it changed. */
  change(sql: string, ...values: readonly SqlValue[]): number;
  one(sql: string, ...values: readonly SqlValue[]): Row | undefined;
  all(sql: string, ...values: readonly SqlValue[]): Row[];
  /** All of `work` or nothing. Takes the right to write at once, so that it never fails half way for a rival. */
  transaction<T>(work: () => T): T;
  /** Writes a whole copy to a new file while the base stays in use. */
  backup(file: string): Promise<void>;
  close(): void;
}

/** Why SQLite could not do it, where people can do something about it. */
export type TroubleKind = 'full' | 'locked' | 'read-only' | 'broken';

/** The base could not be read or written for a reason outside the program; nothing of the transaction was kept. */
export class Trouble extends Error {
  readonly kind: TroubleKind;
  constructor(kind: TroubleKind, cause: unknown) {
    super(SENTENCES[kind], { cause });
    this.name = 'Trouble';
    this.kind = kind;
  }
}

const SENTENCES: Readonly<Record<TroubleKind, string>> = {
  full: 'The disk is full, so nothing was saved: make room, then save again.',
  locked: 'Another program holds the project base, so nothing was saved: close it, then save again.',
  'read-only':
    'The project base cannot be written: check the rights of its folder, the quota and whether the disk still works.',
  broken: 'The project base is damaged or is no project base: put a backup in its place.',
};

/** Primary result codes (sqlite.org/rescode.html). */
const KINDS: Readonly<Record<number, TroubleKind>> = {
  5: 'locked',
  6: 'locked',
  8: 'read-only',
  10: 'read-only',
  11: 'broken',
  13: 'full',
  14: 'read-only',
  26: 'broken',
};

/** The trouble that a primary or extended result code stands for; `undefined`: our own mistake. */
export const troubleOf = (code: number, cause: unknown): Trouble | undefined => {
  const kind = KINDS[code & 0xff];
  return kind && new Trouble(kind, cause);
};
