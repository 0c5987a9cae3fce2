/** What every store promises about attachments, bytes, tokens and project files. */
import assert from 'node:assert/strict';
import { type ProjectFile, projectFileText, readProjectFile } from '@hoopwright/wire/project';
import { projectFileOf, takeIn } from '../projectFile.ts';
import type { Store } from '../store.ts';
import { type Claim, must, tankText } from './claim.ts';

/** Every byte there is, so that no text encoding can hide a loss. */
const BYTES = Uint8Array.from({ length: 256 }, (_, i) => 255 - i);
/** sha256sum of those bytes, by another library. */
const BYTES_SHA256 = 'cd6816b77f68d70001fc3eaa4d42bdd67cb5973b3151cc5292ecc02a3daac6ab';

const home = (store: Store): string =>
  store.projects.create({ name: 'Dunlin', file: tankText(1.5) }).project.id;

const ATTACHMENTS: readonly Claim[] = [
  {
    says: 'an attachment gives back exactly its bytes, under their SHA-256',
    holds: (store) => {
      const project = home(store);
      const added = must(
        store.attachments.add(project, { name: 'coupon 1.csv', bytes: BYTES }),
        'the attachment',
      );
      assert.deepEqual([added.bytes, added.sha256, added.name], [256, BYTES_SHA256, 'coupon 1.csv']);
      const back = must(store.attachments.bytes(project, added.id), 'its bytes');
      assert.deepEqual([...back], [...BYTES]);
    },
  },
  {
    says: 'attachments are listed as they were added, and only for their own project',
    holds: (store) => {
      const [project, other] = [home(store), home(store)];
      for (const name of ['b.csv', 'a.csv']) store.attachments.add(project, { name, bytes: BYTES });
      const names = store.attachments.list(project, 'kept').map(({ name }) => name);
      assert.deepEqual(names, ['b.csv', 'a.csv']);
      assert.deepEqual(store.attachments.list(other, 'kept'), []);
      const [{ id }] = store.attachments.list(project, 'kept');
      assert.equal(store.attachments.bytes(other, id), undefined);
      assert.equal(store.attachments.remove(other, id), undefined);
    },
  },
  {
    says: 'a deleted attachment comes back, bytes and all',
    holds: (store) => {
      const project = home(store);
      const { id } = must(store.attachments.add(project, { name: 'c.csv', bytes: BYTES }), 'the attachment');
      assert.notEqual(store.attachments.remove(project, id)?.deleted_ms, undefined);
      assert.equal(store.attachments.remove(project, id), undefined);
      assert.deepEqual(store.attachments.list(project, 'kept'), []);
      assert.equal(store.attachments.restore(project, id)?.deleted_ms, undefined);
      assert.equal(store.attachments.restore(project, id), undefined);
      assert.equal(store.attachments.list(project, 'kept').length, 1);
    },
  },
  {
    says: 'nothing is attached to a project that is deleted or not there',
    holds: (store) => {
      const project = home(store);
      store.projects.remove(project);
      assert.equal(store.attachments.add(project, { name: 'c.csv', bytes: BYTES }), undefined);
      assert.equal(store.attachments.add('nobody', { name: 'c.csv', bytes: BYTES }), undefined);
    },
  },
  {
    says: 'bytes are found under their digest, and a change to what was handed in or out does not reach them',
    holds: (store) => {
      const given = Uint8Array.from(BYTES);
      const digest = store.bytes.keep(given);
      given[0] = 7;
      must(store.bytes.find(digest), 'the bytes')[1] = 7;
      assert.deepEqual([...must(store.bytes.find(digest), 'the bytes')], [...BYTES]);
      assert.equal(store.bytes.keep(BYTES), digest);
      assert.equal(store.bytes.find('0'.repeat(64)), undefined);
    },
  },
];

const TOKENS: readonly Claim[] = [
  {
    says: 'a token opens until it is revoked, and another secret never does',
    holds: (store) => {
      const { token, secret } = store.tokens.make({ label: 'phone of the note taker', role: 'viewer' });
      assert.deepEqual(store.tokens.check(secret), token);
      assert.equal(store.tokens.check(`${secret.slice(0, -1)}!`), undefined);
      assert.equal(store.tokens.check(''), undefined);
      assert.notEqual(store.tokens.revoke(token.id)?.revoked_ms, undefined);
      assert.equal(store.tokens.check(secret), undefined);
      assert.equal(store.tokens.revoke('nobody'), undefined);
    },
  },
  {
    says: 'a token of a day says which, and one of the projects says none',
    holds: (store) => {
      const made = store.tokens.make({ label: 'note taker', role: 'note taker', record: 'dunlin-2' });
      assert.equal(store.tokens.check(made.secret)?.record, 'dunlin-2');
      const other = store.tokens.make({ label: 'phone', role: 'viewer' });
      assert.deepEqual(store.tokens.check(other.secret), other.token);
      assert.ok(!('record' in other.token));
    },
  },
  {
    says: 'the list of tokens never shows a secret',
    holds: (store) => {
      const { token, secret } = store.tokens.make({ label: 'laptop by the pump', role: 'writer' });
      assert.equal(store.tokens.list()[0].id, token.id);
      assert.ok(!JSON.stringify(store.tokens.list()).includes(secret));
      assert.ok(secret.length >= 32);
    },
  },
];

const exported = (store: Store, project: string, which: 'all' | 'current'): ProjectFile => {
  const text = projectFileText(must(projectFileOf(store, project, which), 'the project file'));
  const read = readProjectFile(text);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
};

const FILES: readonly Claim[] = [
  {
    says: 'a project goes out and comes in whole: versions, undo, attachments',
    holds: (store) => {
      const project = home(store);
      store.projects.save(project, { basedOn: 1, file: tankText(2), by: 'left window' });
      store.projects.save(project, { basedOn: 2, file: tankText(3) });
      store.projects.undo(project, { from: 3 });
      store.attachments.add(project, { name: 'c.csv', bytes: BYTES });
      const taken = takeIn(store, exported(store, project, 'all'));
      if (taken.kind !== 'done') throw new Error(JSON.stringify(taken));
      const { project: copy, version } = taken.opened;
      assert.deepEqual([copy.current, copy.undo, copy.redo, version.file], [2, 1, 3, tankText(2)]);
      assert.deepEqual(store.projects.versions(copy.id), store.projects.versions(project));
      const [attachment] = store.attachments.list(copy.id, 'kept');
      assert.deepEqual([...must(store.attachments.bytes(copy.id, attachment.id), 'its bytes')], [...BYTES]);
    },
  },
  {
    says: 'a project goes out with the standing version alone where that is asked for',
    holds: (store) => {
      const project = home(store);
      store.projects.save(project, { basedOn: 1, file: tankText(2) });
      const file = exported(store, project, 'current');
      assert.deepEqual(
        file.versions.map(({ number, parent }) => [number, parent]),
        [[2, undefined]],
      );
      const taken = takeIn(store, file);
      assert.equal(taken.kind === 'done' && taken.opened.version.file, tankText(2));
    },
  },
  {
    says: 'a project file whose attachment was changed on the way is refused whole',
    holds: (store) => {
      const project = home(store);
      store.attachments.add(project, { name: 'c.csv', bytes: BYTES });
      const file = exported(store, project, 'all');
      const before = store.projects.list('kept').length;
      const [attachment] = file.attachments;
      const changed = {
        ...file,
        attachments: [{ ...attachment, base64: Buffer.from('other').toString('base64') }],
      };
      const taken = takeIn(store, changed);
      assert.equal(taken.kind === 'refused' && taken.issues[0].path, 'attachments[0].sha256');
      assert.equal(store.projects.list('kept').length, before);
    },
  },
];

export const KEEPING_CLAIMS: readonly Claim[] = [...ATTACHMENTS, ...TOKENS, ...FILES];
