/** What must not stand in a published file: paths of one machine, addresses of one network, words of the workshop. */

export interface Ban {
  readonly name: string;
  readonly pattern: RegExp;
  readonly instead: string;
}

/** A banned word that is meant where it stands. `path` is a file, or a folder with a slash at its end. */
export interface Leave {
  readonly path: string;
  readonly word: RegExp;
  readonly reason: string;
}

/** Written so that no pattern matches its own line. */
export const BANS: readonly Ban[] = [
  {
    name: 'a path of one machine',
    pattern: /(?<![\w.}-])[/](?:work|tmp|root|home|Users)[/][\w.-]*/g,
    instead: 'a path from the root of the clone, or the system folder asked of Node',
  },
  {
    name: 'a path of one machine',
    pattern: /\b[A-Z]:\\Users\\[\w.-]*/g,
    instead: 'a path from the root of the clone',
  },
  {
    name: 'the address of a package registry',
    pattern: /\b(?:registry|npm|mirror|artifact\w*|verdaccio|nexus)\.[a-z][\w-]*\.[a-z]{2,}\b/gi,
    instead: 'nothing: everybody has their own',
  },
  {
    name: 'a word about how this was written',
    pattern: /\b(?:ses[s]ions?|(?:coding|helper|sub-?)\s?[a]gents?|language mode[l]s?|chat ?bo[t]s?)\b/gi,
    instead: 'the trade, the tank and the person who reads',
  },
  {
    name: 'a word about how this was written',
    pattern: /\b(?:A[I]|LL[M]s?)\b/g,
    instead: 'the trade, the tank and the person who reads',
  },
];

/** One sentence for each banned word in a text, with its line. */
export function bannedIn(path: string, text: string, leaves: readonly Leave[]): string[] {
  return text
    .split('\n')
    .flatMap((line, row) =>
      BANS.flatMap(({ name, pattern, instead }) =>
        [...line.matchAll(pattern)]
          .filter(([word]) => !leaves.some((leave) => isMeant(leave, path, word)))
          .map(([word]) => `${path}:${row + 1} holds "${word}", ${name}; write ${instead}`),
      ),
    );
}

function isMeant(leave: Leave, path: string, word: string): boolean {
  const covers = leave.path.endsWith('/') ? path.startsWith(leave.path) : path === leave.path;
  return covers && leave.word.test(word);
}
