/** Answers given last, so that the same question costs nothing: opening a page again, a second window, undo. */

export interface Answers<T> {
  of(question: string): T | undefined;
  keep(question: string, answer: T): void;
}

/** Puts an entry last; beyond `most` of them the first one goes. */
export function keepLast<K, V>(kept: Map<K, V>, most: number, [key, value]: readonly [K, V]): void {
  kept.delete(key);
  kept.set(key, value);
  if (kept.size > most) kept.delete([...kept.keys()][0]);
}

/** Keeps the `most` answers that were asked for last. */
export function openAnswers<T>(most = 12): Answers<T> {
  const kept = new Map<string, T>();
  const keep = (question: string, answer: T): void => keepLast(kept, most, [question, answer]);
  return {
    of: (question) => {
      const answer = kept.get(question);
      if (answer !== undefined) keep(question, answer);
      return answer;
    },
    keep,
  };
}
