/** Words for tests that do not count, from the catalogue of the report. */
import { findingText } from '@hoopwright/report/coupon';
import type { EvidenceWords } from '@hoopwright/wire/evidence';

export const EVIDENCE_WORDS: EvidenceWords = {
  verdict: ({ verdict }, lines) =>
    verdict.reasons.map((reason) => findingText(reason, (at) => lines[at])).join('; '),
  missing: 'the file is not there',
  unread: 'the file cannot be read as a tensile test',
  preloaded: 'preloaded before the test: it shows ductility, not the flow curve',
  girthSeam: 'it stands for a girth seam; only the long seam has a range',
  acrossSeam: 'its file says that it lies across a seam: list it under seamCoupons',
};
