/** May these drafts be tied to this record? Whoever asks wrongly has a mistake in the program, so it throws. */
import type { Draft, RecordKind } from '@hoopwright/wire/record';
import type { RecordLine } from './store.ts';

export const writable = (
  line: RecordLine | undefined,
  { record, kind }: { readonly record: string; readonly kind: RecordKind },
  drafts: readonly Draft[],
): RecordLine => {
  if (!line) throw new Error(`there is no record ${record}`);
  const { about, origin, run } = line;
  if (origin === 'imported') throw new Error(`record ${record} was imported; nothing is added to it`);
  if (about.kind !== kind)
    throw new Error(`record ${record} is a ${about.kind}; a ${kind} must not write into it`);
  drafts.reduce((before, draft) => {
    if (draft.run >= before) return draft.run;
    throw new Error(`record ${record} is at run ${before}; an entry of run ${draft.run} came`);
  }, run);
  return line;
};
