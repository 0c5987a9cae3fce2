/** What other packages may use of the record. */
export { type Json, canonical } from './canonical.ts';
export { type ChainHash, type End, aboutDigest, entryDigest, headGroups, parseHead, tie } from './chain.ts';
export { type Column, type CsvStyle, readingsCsv } from './csv.ts';
export {
  type About,
  type Body,
  type CorrectionBody,
  type Draft,
  ENTRY_KINDS,
  type Entry,
  type EntryKind,
  type Link,
  RECORD_FORMAT,
  RECORD_KINDS,
  type ReadingBody,
  type RecordKind,
} from './entry.ts';
export { CLOCKS_PART_MS, type Gap, type Moment, clockGap } from './gap.ts';
export { type Read, aboutLine, entryLine, readAboutLine, readEntryLine } from './lines.ts';
export { verdictSentence } from './say.ts';
export { type Verdict, type Verifier, startVerify, verifyRecord } from './verify.ts';
