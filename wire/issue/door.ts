/** Issues in files that people write. */
export { type Issue, issueLine, pathText, shown, WHOLE_FILE } from './issue.ts';
export { type JsonText, readJson } from './jsonText.ts';
export { editDistance, nearest } from './nearest.ts';
