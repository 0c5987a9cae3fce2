/** Published files speak of tanks: no paths of one machine, no words of the workshop. The bans are in setup/words.ts. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { filesIn, inRoot, root } from './setup/folders.mjs';
import { bannedIn, type Leave } from './setup/words.ts';

/** Each with its reason. One that no longer occurs must go. */
const LEAVES: readonly Leave[] = [];

const texts = published().flatMap((path) => {
  const bytes = readFileSync(inRoot(path));
  return bytes.includes(0) ? [] : [{ path, text: bytes.toString('utf8') }];
});

test('published files hold no path of one machine and no word of the workshop', () => {
  expect(texts.length).toBeGreaterThan(20);
  expect(texts.flatMap(({ path, text }) => bannedIn(path, text, LEAVES))).toEqual([]);
});

test('every word that is left in place is still there', () => {
  for (const leave of LEAVES) {
    const others = LEAVES.filter((other) => other !== leave);
    const needed = texts.flatMap(({ path, text }) => bannedIn(path, text, others));
    expect(needed, `${leave.path}: ${leave.reason}`).not.toEqual([]);
  }
});

/** What git holds; in a copy without git, every file that is not built or installed. */
function published(): string[] {
  if (!existsSync(inRoot('.git'))) return filesIn('.');
  const list = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' });
  return list.split('\0').filter((path) => path !== '' && existsSync(inRoot(path)));
}
