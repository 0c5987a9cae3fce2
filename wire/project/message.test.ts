import { describe, expect, it } from 'vitest';
import { readAttach, readCreate, readNewToken, readSave } from './message.ts';

const issues = (read: { ok: boolean; issues?: unknown }) => read.issues;

describe('a message', () => {
  it('is taken as it came when nothing is wrong with it', () => {
    const message = { basedOn: 3, file: ' {"wall_mm": 1.50}\n', note: 'thinner' };
    expect(readSave(message)).toEqual({ ok: true, value: message });
  });

  it('with a misspelt key is refused, and the key that was meant is named', () => {
    expect(issues(readSave({ baseOn: 3, file: '{}' }))).toMatchObject([
      { path: 'baseOn', received: '"baseOn"', suggestion: 'did you mean basedOn?' },
    ]);
  });

  it('without a key is refused, and says which', () => {
    expect(issues(readCreate({ name: 'Dunlin' }))).toMatchObject([{ path: 'file', received: 'nothing' }]);
  });

  it.each(['', '   ', 'two\nlines', 'x'.repeat(121)])('is refused when the name is %j', (name) => {
    expect(issues(readCreate({ name, file: '{}' }))).toMatchObject([
      { path: 'name', expected: 'some text (on one line, 1 to 120 characters)' },
    ]);
  });

  it('is refused when bytes are not base64, a version is no whole number, or a role is unknown', () => {
    expect(issues(readAttach({ name: 'c1.csv', base64: '%%%' }))).toMatchObject([{ path: 'base64' }]);
    expect(issues(readSave({ basedOn: 1.5, file: '{}' }))).toMatchObject([
      { path: 'basedOn', received: '1.5' },
    ]);
    expect(issues(readNewToken({ label: 'phone', role: 'viewr' }))).toMatchObject([
      { path: 'role', suggestion: 'did you mean "viewer"?' },
    ]);
  });

  it('that is no object at all is refused', () => {
    for (const value of [undefined, null, 3, 'text', []]) expect(readCreate(value).ok).toBe(false);
  });
});
