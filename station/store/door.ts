/** What others may use of the store. */
export type { By } from './by.ts';
export { STORE_CONTRACT } from './contract/contract.ts';
export type { Claim } from './contract/claim.ts';
export { rising } from './contract/rising.ts';
export { chainHash, sha256 } from './hash.ts';
export { openMemoryStore } from './memory/open.ts';
export { type TakenIn, projectFileOf, takeIn } from './projectFile.ts';
export {
  type RecordTakenIn,
  exportRecord,
  importRecord,
  recordLines,
  verifyRecord,
  verifyRecordFile,
} from './recordFile.ts';
export {
  COMMIT_MS,
  type Clocks,
  type Recorder,
  type RecorderParts,
  type RecorderState,
  openRecorder,
} from './recorder.ts';
export { BASE_NAME, openStore } from './sqlite/open.ts';
export type {
  Attachments,
  Bytes,
  Changes,
  Edit,
  PlanKept,
  Plans,
  Projects,
  RecordLine,
  Records,
  Store,
  Surroundings,
  Tokens,
} from './store.ts';
