/** The checks, for the command that prints them. */
export { runChecks } from '../check.ts';
export { SOURCES, WITHOUT_CHECK } from '../registry.ts';
export { convergenceTables } from '../shell/convergenceTable.ts';
export { verificationPage } from '../table.ts';
