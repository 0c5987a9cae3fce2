/** Words for tests that do not count, from the catalogue of the report. */
import { verdictText } from '@hoopwright/report/coupon';
import type { EvidenceWords } from '@hoopwright/wire/evidence';

export const EVIDENCE_WORDS: EvidenceWords = {
  verdict: (result, lines) => verdictText(result.verdict, (at) => lines[at]),
  missing: 'The file is not there.',
  unread: 'The file cannot be read as a tensile test.',
  preloaded: 'Preloaded before the test: it shows ductility, not the flow curve.',
};
