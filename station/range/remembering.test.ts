/** Solutions are remembered by what was asked, not by who asks. */
import { expect, test } from 'vitest';
import type { ShellRun } from '@hoopwright/core/stretch';
import type { ShellMessage } from '../worker/shell.ts';
import { remembering } from './remembering.ts';

/** Only a target, and an answer that names it: the runner looks at nothing else. */
const asked = (target: number): ShellMessage[] =>
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- a part of a message is all that is looked at
  [{ target }, { target: target + 0.5 }] as unknown as ShellMessage[];

test('the same question is solved once, another one anew, and only so many are kept', async () => {
  const solved: (number | undefined)[] = [];
  const run = remembering(async (messages) => {
    solved.push(messages[0].target);
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- see above
    return messages.map(({ target }) => ({ target })) as unknown as ShellRun[];
  }, 2);
  let done = 0;
  const watch = { done: () => void done++ };
  expect(await run(asked(1), watch)).toEqual(await run(asked(1), watch));
  expect([solved, done]).toEqual([[1], 2]);
  await run(asked(2), watch);
  await run(asked(3), watch);
  await run(asked(1), watch);
  expect(solved).toEqual([1, 2, 3, 1]);
});

test('what was asked to stop is not remembered', async () => {
  let tries = 0;
  const run = remembering(async () => {
    if (++tries === 1) throw new Error('asked to stop');
    return [];
  });
  await expect(run(asked(1), {})).rejects.toThrow('asked to stop');
  expect(await run(asked(1), {})).toEqual([]);
});
