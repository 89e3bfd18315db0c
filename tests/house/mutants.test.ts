import { describe, expect, it } from 'vitest'
import { type Report, scoreOf, survivorsOf, wilson } from '../../docs/tools/mutants/score.js'

describe('the score of mutation testing', () => {
  // Newcombe (1998), Statistics in Medicine 17:857-872, Table I, method 3 (from memory; scipy's binomtest gives the same).
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('has the interval of Wilson: %i of %i', (hits, tries, low, high) => {
    const ends = wilson(hits, tries)
    expect(ends[0]).toBeCloseTo(low, 4)
    expect(ends[1]).toBeCloseTo(high, 4)
  })

  const place = { start: { line: 2, column: 8 }, end: { line: 2, column: 13 } }
  const mutants = ['Killed', 'Killed', 'Timeout', 'Survived', 'CompileError', 'NoCoverage', 'Ignored'].map(
    (status) => ({
      status,
      replacement: 'a - b',
      location: place,
    }),
  )
  const report: Report = { files: { 'src/a.ts': { source: 'f(\nreturn a + b\n', mutants } } }

  it('counts what no test reaches against the share, and what was not drawn not at all', () => {
    // Five of six changes are reached, three of the four that were tried are noticed: 5/6 of 75 %.
    expect(scoreOf(report)).toMatch(/^62\.5 % \[.*\]: 3 of 4 noticed, 1 by not ending; of 6 changes no test reaches 1$/)
  })

  it('lists what was not noticed with what stood there', () => {
    expect(survivorsOf(report)).toEqual([
      'src/a.ts:2  a + b  ->  a - b',
      'src/a.ts:2  a + b  ->  a - b (no test reaches it)',
    ])
  })
})
