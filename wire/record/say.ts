/** A verdict as a sentence. */
import { headGroups } from './chain.ts';
import type { Verdict } from './verify.ts';

export const verdictSentence = (verdict: Verdict): string => {
  switch (verdict.kind) {
    case 'witnessed':
      return verdict.witnessed === verdict.entries
        ? `Whole and witnessed: all ${verdict.entries} entries are as they were when this head was written down.`
        : `Whole and witnessed up to entry ${verdict.witnessed} of ${verdict.entries}: the later ones are whole in themselves, not witnessed.`;
    case 'whole':
      return `Whole in itself, not witnessed: ${verdict.entries} entries, head ${headGroups(verdict.digest)}. Give the head from the signed log sheet to know more.`;
    case 'other head':
      return `Whole in itself, but this head is not in it: ${verdict.entries} entries, head ${headGroups(verdict.digest)}. The record was written anew or its end is cut off, or the head was copied wrongly.`;
    case 'altered':
      return `Altered at line ${verdict.line} (${verdict.entry === 0 ? 'what the record says of itself' : `entry ${verdict.entry}`}): ${verdict.why}.`;
  }
};
