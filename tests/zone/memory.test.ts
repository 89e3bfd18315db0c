import { expect, it } from 'vitest'
import { runAlone } from '../../benchmarks/run-alone.js'

it('a year of minute readings of two probes goes through the whole job within 250 MB', { timeout: 120_000 }, () => {
  const { checked, peak } = runAlone(365)
  // Each day was reviewed, and shots were proposed.
  expect(checked).toBeGreaterThan(365)
  expect(1024 * peak).toBeLessThan(250e6)
})
