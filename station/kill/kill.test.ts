import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { foldAll } from '@hoopwright/wire/day';
import { emptyFold } from '../day/live/kept.ts';
import { STORE_CONTRACT } from '../store/contract/contract.ts';
import { rising } from '../store/contract/rising.ts';
import { openStore } from '../store/sqlite/open.ts';
import { check } from './verdict.ts';
import { soakDay, soakEditing, soakRecording } from './soak.ts';
import type { Task } from './victim.ts';
import type { Window } from './window.ts';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-kill-'));
});
afterEach(() => {
  rmSync(dir, { recursive: true });
});

const start = (task: Task, where: string) =>
  fork(fileURLToPath(new URL('./victim.entry.ts', import.meta.url)), [task, where]);

describe('a process that is killed at any moment', () => {
  it('loses no edit that it acknowledged, and its base keeps the contract (3 kills; 50 in the soak)', async () => {
    const report = await soakEditing({ kills: 3, seed: 20_260_503, dir, start });
    expect(report.acknowledged).toBeGreaterThan(20);
    const store = openStore(dir, rising());
    for (const { says, holds } of STORE_CONTRACT) expect(() => holds(store), says).not.toThrow();
    store.close();
  });

  it('loses no reading that it acknowledged, and its record is whole (3 kills; 100 in the soak)', async () => {
    const report = await soakRecording({ kills: 3, seed: 20_260_504, dir, start });
    expect(report.acknowledged).toBeGreaterThan(3);
    expect(report.entries).toBeGreaterThanOrEqual(report.acknowledged);
  });

  it('loses no reading of a day under way, and goes on as broken off (2 kills; 100 in the soak)', async () => {
    const report = await soakDay({ kills: 2, seed: 20_260_505, dir, start });
    expect(report.acknowledged).toBeGreaterThan(3);
    const store = openStore(dir);
    const [{ about }] = store.records.list();
    const { state } = foldAll(emptyFold(about).fold, store.records.entries(about.record));
    store.close();
    expect(state.run).toBe(2);
    expect(state.phase).toBe('broken off');
  });
});

describe('the check after a kill', () => {
  const scene = (change: Partial<Window>) => {
    const store = openStore(dir);
    const project = store.projects.create({ name: 'x', file: 'first' }).project.id;
    store.projects.save(project, { basedOn: 1, file: 'second' });
    const known = new Map([
      [1, { file: 'first' }],
      [2, { file: 'second', parent: 1 }],
    ]);
    const window = {
      name: 'x',
      project,
      known,
      standing: 2,
      attached: new Set<string>(),
      refused: 0,
      shared: false,
    };
    const run = () => check(store, [{ ...window, ...change }]);
    return { run, store };
  };

  it('passes where everything is as it was acknowledged', () => {
    const { run, store } = scene({});
    expect(run).not.toThrow();
    store.close();
  });

  it.each<[string, Partial<Window>, RegExp]>([
    ['a lost save', { known: new Map([[3, { file: 'third', parent: 2 }]]) }, /version 3 was acknowledged/],
    ['a changed save', { known: new Map([[2, { file: 'other', parent: 1 }]]) }, /version 2 was acknowledged/],
    ['an overwritten save', { known: new Map([[2, { file: 'second', parent: 7 }]]) }, /was based on 7/],
    ['a step back', { standing: 3 }, /version 2 stands, 3 was acknowledged/],
    [
      'a save by nobody',
      { known: new Map([[1, { file: 'first' }]]), standing: 2 },
      /version 2 .* sent by nobody/,
    ],
    ['a lost attachment', { attached: new Set(['ab'.repeat(32)]) }, /attachment .* lost/],
  ])('finds %s', (_, change, says) => {
    const { run, store } = scene(change);
    expect(run).toThrow(says);
    store.close();
  });
});
