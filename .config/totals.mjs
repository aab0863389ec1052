// A reporter that only counts. The runner's own closing lines are coloured, aligned and reworded from version to version;
// `npm test` ends with one plain line instead, made from this.
import { writeFileSync } from 'node:fs';

export default class Totals {
  onTestRunEnd(modules, unhandledErrors) {
    const totals = { passed: 0, failed: unhandledErrors.length, skipped: 0 };
    for (const module of modules) {
      const tests = [...module.children.allTests()];
      for (const test of tests) totals[test.result().state] = (totals[test.result().state] ?? 0) + 1;
      // A file that cannot even be loaded, or one whose hooks fail, has errors and perhaps no failed test.
      const failedTests = tests.filter((test) => test.result().state === 'failed').length;
      if (module.state() === 'failed' && failedTests === 0) totals.failed += 1;
    }
    if (process.env.SETWRIGHT_TOTALS) writeFileSync(process.env.SETWRIGHT_TOTALS, JSON.stringify(totals));
  }
}
