import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { openMemoryStore } from '../memory/open.ts';
import { openStore } from '../sqlite/open.ts';
import type { Store, Surroundings } from '../store.ts';
import { STORE_CONTRACT } from './contract.ts';

/** A clock that counts and dice that count: nothing here depends on the hour. */
const counting = (): Surroundings => {
  let tick = 0;
  return {
    clock: () => 1_790_000_000_000 + ++tick,
    dice: (bytes) => Uint8Array.from({ length: bytes }, (_, i) => (i < 4 ? ++tick >>> (8 * i) : 0x5a)),
  };
};

let dir: string;
let stores: Readonly<Record<'SQLite' | 'memory', Store>>;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-contract-'));
  stores = { SQLite: openStore(dir, counting()), memory: openMemoryStore(counting()) };
});
afterAll(() => {
  for (const store of Object.values(stores)) store.close();
  rmSync(dir, { recursive: true });
});

describe.each(['SQLite', 'memory'] as const)('a store in %s', (kind) => {
  it.each(STORE_CONTRACT)('$says', ({ holds }) => {
    holds(stores[kind]);
  });
});
