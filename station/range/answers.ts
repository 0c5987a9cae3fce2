/** Answers given last, so that the same question costs nothing: opening a page again, a second window, undo. */

export interface Answers<T> {
  of(question: string): T | undefined;
  keep(question: string, answer: T): void;
}

/** Keeps the `most` answers that were asked for last. */
export function openAnswers<T>(most = 12): Answers<T> {
  const kept = new Map<string, T>();
  const keep = (question: string, answer: T): void => {
    kept.delete(question);
    kept.set(question, answer);
    if (kept.size > most) kept.delete([...kept.keys()][0]);
  };
  return {
    of: (question) => {
      const answer = kept.get(question);
      if (answer !== undefined) keep(question, answer);
      return answer;
    },
    keep,
  };
}
