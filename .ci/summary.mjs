/** The last line of a test run, counted from the runner's own report: node .ci/summary.mjs REPORT.json STATUS */
import { readFileSync } from 'node:fs';

const [report = '', status = '1'] = process.argv.slice(2);
const counts = read(report);
if (counts.skipped > 0) console.log(`${counts.skipped} skipped`);
if (counts.broken > 0) console.log(`${counts.broken} test files could not be run`);
const failed = counts.failed + counts.broken;
// types, lint or build may fail before a single test ran: that is a failure of its own
const other = Number(status) !== 0 && failed === 0 ? 1 : 0;
console.log(`${counts.passed} passed, ${failed + other} failed`);
process.exit(failed + other > 0 || counts.passed === 0 || counts.skipped > 0 ? 1 : 0);

function read(path) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(readFileSync(path, 'utf8'));
    const broken = testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
    return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests, broken };
  } catch {
    return { passed: 0, failed: 0, skipped: 0, broken: 0 };
  }
}
