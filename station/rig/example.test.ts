/** The rehearsed record that a first start takes in, so that the replay is never empty. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { foldAll, startFold } from '@hoopwright/wire/day';
import { tankDigest } from '@hoopwright/wire/plan';
import { parseTankFile } from '@hoopwright/wire/tank';
import { sha256 } from '../store/hash.ts';
import { openMemoryStore } from '../store/memory/open.ts';
import { importRecord, verifyRecordFile } from '../store/recordFile.ts';

const inExamples = (name: string): string =>
  fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const file = inExamples('dunlin-rehearsed.ndjson');

test('it is whole, a rehearsal of the demo tank, and is taken in as it is', () => {
  expect(verifyRecordFile(file)).toMatchObject({ kind: 'whole', about: { kind: 'rehearsal' } });
  const { records } = openMemoryStore({ clock: () => 0, dice: (n) => new Uint8Array(n) });
  const taken = importRecord(records, file);
  expect(taken.kind).toBe('done');
  const [line] = records.list();
  const { state } = foldAll(startFold(line.about, ''), records.entries(line.about.record));
  const tank = parseTankFile(readFileSync(inExamples('dunlin-oxidiser.json'), 'utf8'));
  expect(tank.ok && tankDigest(tank.file, sha256)).toBe(state.plan?.plan.tank.digest);
  expect(state.end?.name).toBe('leaked');
  expect(state.causes).toMatchObject([{ limit: 'leak_mL_per_min', state: 'stop and release' }]);
});
