/** Which of the words that are allowed here was meant. */

/** Number of letters to insert, drop, replace or swap with their neighbour to turn one word into the other. */
export function editDistance(from: string, to: string): number {
  const rows = Array.from({ length: from.length + 1 }, (_, i) =>
    Array.from({ length: to.length + 1 }, (_unused, j) => (j === 0 ? i : 0)),
  );
  for (let j = 0; j <= to.length; j++) rows[0][j] = j;
  for (let i = 1; i <= from.length; i++) {
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      rows[i][j] = Math.min(rows[i - 1][j] + 1, rows[i][j - 1] + 1, rows[i - 1][j - 1] + (same ? 0 : 1));
      if (swapped) rows[i][j] = Math.min(rows[i][j], rows[i - 2][j - 2] + 1);
    }
  }
  return rows[from.length][to.length];
}

/** Longest word worth comparing: what is longer is no slip of a key, and the table would grow with its square. */
const LONGEST_WORD = 60;

/** The nearest of the words, or undefined where none is near: up to two slips, or 45 % of the longer word. */
export function nearest(word: string, words: readonly string[]): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const lower = word.toLowerCase();
  const ranked = words
    .map((candidate) => ({ candidate, distance: editDistance(lower, candidate.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  if (best === undefined) return undefined;
  return best.distance <= Math.max(2, 0.45 * Math.max(word.length, best.candidate.length))
    ? best.candidate
    : undefined;
}
