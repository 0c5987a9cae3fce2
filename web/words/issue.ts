/** What is wrong with a place of the tank file, as a sentence for a person. */
import type { Issue } from '@hoopwright/wire/issue';
import { words } from './say.ts';

export const issueSentence = ({ expected, received, suggestion }: Issue): string =>
  suggestion === undefined
    ? words('issue', { expected, received })
    : words('issueSuggested', {
        suggestion: suggestion.replace(/[.?!]?$/, (stop) => stop || '.'),
        expected,
        received,
      });
