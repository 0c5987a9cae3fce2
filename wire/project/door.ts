/** What other packages may use of projects. */
export { type Difference, difference } from './difference.ts';
export {
  type Create,
  type Save,
  readAttach,
  readCopy,
  readCreate,
  readEntrance,
  readForecast,
  readFreeze,
  readNewToken,
  readRename,
  readSave,
  readStep,
} from './message.ts';
export {
  type Attachment,
  CHANGE_KINDS,
  type Change,
  type ChangeKind,
  type Opened,
  type Project,
  ROLES,
  type Role,
  type Token,
  type Version,
  type VersionLine,
} from './project.ts';
export {
  type CarriedPlan,
  PROJECT_FORMAT,
  type ProjectFile,
  projectFileText,
  readProjectFile,
} from './projectFile.ts';
export { readLongJson } from './longJson.ts';
export type { Message } from './reader.ts';
