/** A verdict as a sentence. */
import { headGroups } from './chain.ts';
import type { Verdict } from './verify.ts';

export const verdictSentence = (verdict: Verdict): string => {
  if (verdict.kind === 'altered') return alteredSentence(verdict);
  if (verdict.kind === 'witnessed') return witnessedSentence(verdict);
  const stock = `${verdict.entries} entries, head ${headGroups(verdict.digest)}`;
  return verdict.kind === 'whole'
    ? `Whole in itself, not witnessed: ${stock}. Give the head from the signed log sheet to know more.`
    : `Whole in itself, but this head is not in it: ${stock}. The record was written anew, its end is cut off, or the head was copied wrongly.`;
};

type Of<K extends Verdict['kind']> = Extract<Verdict, { kind: K }>;

const witnessedSentence = ({ witnessed, entries }: Of<'witnessed'>): string =>
  witnessed === entries
    ? `Whole and witnessed: all ${entries} entries are as they were when this head was written down.`
    : `Whole and witnessed up to entry ${witnessed} of ${entries}: the later ones are whole in themselves, not witnessed.`;

const alteredSentence = ({ line, entry, why }: Of<'altered'>): string =>
  entry === 0
    ? `Altered at line ${line} (what the record says of itself): ${why}.`
    : `Altered at line ${line} (entry ${entry}): ${why}.`;
