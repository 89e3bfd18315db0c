import type { Reporter, TestModule } from 'vitest/node'

/** Ends a run with its counts on one plain line, which programs that know nothing of this test runner can read too. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 }
    for (const module of modules) for (const test of module.children.allTests()) counts[test.result().state]++
    const { passed, failed, skipped, pending } = counts
    process.stdout.write(`\n${passed} passed, ${failed} failed, ${skipped + pending} skipped\n`)
  }
}
