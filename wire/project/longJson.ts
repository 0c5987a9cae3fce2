/** JSON that a program wrote, and that may be long: read by the engine, and explained only where it is short enough. */
import { WHOLE_FILE } from '../issue/issue.ts';
import { type JsonText, readJson } from '../issue/jsonText.ts';

/** Longest text whose first slip is looked for, characters: nobody mends a longer one by hand. */
const LONGEST_EXPLAINED = 2_000_000;

/** Unlike `readJson` it takes the last of two equal keys, as the engine does: people do not write these texts. */
export const readLongJson = (text: string): JsonText => {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return text.length <= LONGEST_EXPLAINED ? readJson(text) : UNEXPLAINED;
  }
};

const UNEXPLAINED: JsonText = {
  ok: false,
  issues: [
    {
      path: WHOLE_FILE,
      expected: 'JSON',
      received: 'text that is none',
      suggestion: 'it was probably cut off or changed on the way; export it again',
    },
  ],
};
