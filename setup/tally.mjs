/** Counts what a test run did, from the test runner's own record of it (its JSON reporter). */

/**
 * @typedef {{ status: string, fullName: string }} Check
 * @typedef {{ name: string, status: string, assertionResults: Check[] }} TestFile
 * @typedef {{ success: boolean, testResults: TestFile[] }} RunRecord
 * @typedef {{ passed: number, failed: string[], skipped: string[] }} Tally
 */

/**
 * @param {RunRecord | undefined} record undefined if the runner ended without writing one
 * @param {number} exitCode of the runner
 * @returns {Tally}
 */
export function tally(record, exitCode) {
  if (!record) return { passed: 0, failed: ['the test runner ended without a result'], skipped: [] };
  const total = sum(record.testResults.map(tallyFile));
  if (exitCode === 0 || total.failed.length > 0) return total;
  // An error outside any test (a rejected promise nobody awaited) fails the run and no test in it.
  return { ...total, failed: [`the test runner, which ended with code ${exitCode}`] };
}

/** @param {TestFile} file @returns {Tally} */
function tallyFile({ name, status, assertionResults }) {
  const titles = (/** @type {(check: Check) => boolean} */ wanted) =>
    assertionResults.filter(wanted).map((check) => `${name} > ${check.fullName}`);
  const failed = titles((check) => check.status === 'failed');
  // A file that does not load has no tests to report.
  if (status === 'failed' && failed.length === 0) failed.push(name);
  return {
    passed: titles((check) => check.status === 'passed').length,
    failed,
    skipped: titles((check) => check.status !== 'passed' && check.status !== 'failed'),
  };
}

/** @param {Tally[]} parts @returns {Tally} */
export function sum(parts) {
  return {
    passed: parts.reduce((total, part) => total + part.passed, 0),
    failed: parts.flatMap((part) => part.failed),
    skipped: parts.flatMap((part) => part.skipped),
  };
}

/**
 * What is said last: what was skipped and what failed, by name, then one line of counts.
 * @param {Tally} tally
 */
export function closing({ passed, failed, skipped }) {
  return [
    ...(skipped.length > 0 ? ['Skipped:', ...skipped.map((name) => `  ${name}`), ''] : []),
    ...(failed.length > 0 ? ['Failed:', ...failed.map((name) => `  ${name}`), ''] : []),
    `${passed} passed, ${failed.length} failed, ${skipped.length} skipped`,
  ].join('\n');
}
