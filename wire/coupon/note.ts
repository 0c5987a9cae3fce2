/** Something taken for granted, left out or doubted in reading a file; the line is given where there is one. */
export interface Note {
  readonly line?: number;
  readonly says: string;
}

/** At most this many lines are named one by one. */
const NAMED = 3;

/** "line 7: …", "lines 7 and 9: …", "lines 7, 9, 12 and 5 more: …" with the first line kept for sorting. */
export const noteOnLines = (lines: readonly number[], says: string): Note => {
  if (lines.length === 1) return { line: lines[0], says };
  const named = lines.slice(0, NAMED);
  const more = lines.length - named.length;
  const list =
    more > 0
      ? `${named.join(', ')} and ${more} more`
      : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
  return { line: lines[0], says: `lines ${list}: ${says}` };
};

/** The note as one sentence that names its line. */
export const noteText = ({ line, says }: Note): string =>
  line === undefined || says.startsWith('lines ') ? says : `line ${line}: ${says}`;
