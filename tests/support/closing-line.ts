/**
 * A Vitest reporter whose one line ends the whole test command: "128 passed, 0 failed, 2 skipped".
 * A file that cannot even be loaded, or an error outside any test, counts as one failed, so that the line
 * never reads clean when the command is not.
 */
import { writeSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], strayErrors: readonly unknown[]): void {
    const count = { passed: 0, failed: strayErrors.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state] += 1;
      count.failed += module.errors().length;
    }
    const line = `${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped\n`;
    // At exit, so that it comes after whatever the other reporter still has to say.
    process.once('exit', () => writeSync(1, line));
  }
}
