import { expect, test } from 'vitest';
import { bannedIn } from './words.ts';

/** Split, so that this file does not hold what it plants. */
const glue = (...parts: string[]): string => parts.join('');
const found = (text: string): number => bannedIn('docs/x.md', text, []).length;

test.each([
  ['a folder of one machine', glue('see ', '/wo', 'rk/main')],
  ['a scratch folder', glue('"', '/tm', 'p/x.json"')],
  ['a home folder', glue('(', '/ho', 'me/ann/clone)')],
  ['a home folder in an address', glue('file://', '/ro', 'ot/clone')],
  ['a home folder elsewhere', glue('C:\\Us', 'ers\\ann')],
  ['a registry', glue('https://', 'regis', 'try.example.org/x')],
  ['how it was written', glue('found in an earlier ses', 'sion')],
  ['who wrote it', glue('made by an A', 'I assist', 'ant')],
  ['whom it was handed to', glue('left to a helper ', 'agent')],
])('%s is found', (_, text) => {
  expect(found(text)).toBe(1);
});

test.each([
  'a framework/main and core/tmp/x are paths from the root of the clone',
  'https://example.org/homes/17 is an address',
  'the wetting agent, the user-agent, PRAISE and aid',
  'sessionStorage and the obsession of one word',
  '`${folder}/work/` follows a folder that is asked for',
])('"%s" passes', (text) => {
  expect(found(text)).toBe(0);
});

test('a word is left in the file that has a reason for it, and nowhere else', () => {
  const word = glue('ses', 'sion');
  const leave = { path: 'station/instrument/', word: new RegExp(`^${word}$`), reason: 'MQTT names it so' };
  expect(bannedIn('station/instrument/mqtt.ts', `a persistent ${word}`, [leave])).toEqual([]);
  expect(bannedIn('station/store/x.ts', `a persistent ${word}`, [leave])).toHaveLength(1);
  expect(bannedIn('station/instrument/mqtt.ts', glue('/ro', 'ot/x'), [leave])).toHaveLength(1);
});

test('a finding names file, line, word and what to write', () => {
  expect(bannedIn('docs/x.md', glue('one\ntwo /tm', 'p/x'), [])).toEqual([
    glue('docs/x.md:2 holds "/tm', 'p/x", a path of one machine; ') +
      'write a path from the root of the clone, or the system folder asked of Node',
  ]);
});
