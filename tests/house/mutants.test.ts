import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { inDrawnOrder } from '../../docs/tools/mutants/draw.js'
import { EQUAL_CHANGES } from '../../docs/tools/mutants/equal.js'
import {
  joined,
  type Report,
  scoreOf,
  survivorsOf,
  wilson,
  withoutEqual,
  wronglyEqual,
} from '../../docs/tools/mutants/score.js'

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
  const mutants = ['Killed', 'Killed', 'Timeout', 'Survived', 'NotDrawn', 'NoCoverage', 'Ignored'].map((status, i) => ({
    id: String(i),
    status,
    replacement: 'a - b',
    location: place,
  }))
  const report: Report = { files: { 'src/a.ts': { source: 'f(\nreturn a + b\n', mutants } } }

  it('counts what no test reaches against the share, and what was not drawn not at all', () => {
    // Five of six changes are reached, three of the four that were tried are noticed: 5/6 of 75 %.
    expect(scoreOf(report)).toMatch(/^62\.5 % \[.*\]: 3 of 4 noticed, 1 by not ending; of 6 changes no test reaches 1$/)
  })

  it('goes on with a draw, and not over other code', () => {
    const first: Report = { files: { 'src/a.ts': { source: 'a', mutants: mutants.slice(0, 2) } } }
    const second: Report = {
      files: {
        'src/a.ts': {
          source: 'a',
          mutants: [mutants[3]!, { ...mutants[0]!, status: 'NotDrawn' }, { ...mutants[1]!, status: 'Survived' }],
        },
      },
    }
    expect(joined(first, second).files['src/a.ts']!.mutants.map(({ status }) => status)).toEqual([
      'Survived',
      'Killed',
      'Survived',
    ])
    expect(() => joined(report, second)).toThrow('src/a.ts')
  })

  it('lists what was not noticed with what stood there', () => {
    expect(survivorsOf(report)).toEqual([
      'src/a.ts:2  a + b  ->  a - b',
      'src/a.ts:2  a + b  ->  a - b (no test reaches it)',
    ])
  })
})

describe('changes that do the same', () => {
  const place = (start: number, end: number) => ({ start: { line: 1, column: start }, end: { line: 1, column: end } })
  const mutants = [
    { id: '0', status: 'Survived', replacement: 'i <= n', location: place(2, 7) },
    { id: '1', status: 'Survived', replacement: 'i >= n', location: place(2, 7) },
    { id: '2', status: 'Killed', replacement: 'true', location: place(2, 7) },
  ]
  const report: Report = { files: { 'src/a.ts': { source: '(i < n) x', mutants } } }
  const change = { path: 'src/a.ts', line: '(i < n) x', was: 'i < n', becomes: 'i <= n', why: 'nothing is there' }
  it('count nowhere where they survive, and others do', () => {
    const left = withoutEqual(report, [change])
    expect(survivorsOf(left)).toEqual(['src/a.ts:1  i < n  ->  i >= n'])
    expect(scoreOf(left)).toMatch(/^50\.0 % .*: 1 of 2 noticed.*; 1 do the same$/)
    expect(withoutEqual(report, [{ ...change, line: 'i < n' }])).toEqual(report)
  })
  it('are told where a test notices them', () => {
    expect(wronglyEqual(report, [change])).toEqual([])
    expect(wronglyEqual(report, [{ ...change, becomes: 'true' }])).toHaveLength(1)
  })
  it.each(EQUAL_CHANGES)('are changes of code that is there: $path $was', ({ path, line, was, becomes }) => {
    const lines = readFileSync(path, 'utf8').split('\n')
    expect(lines.filter((one) => one.trim() === line)).toHaveLength(1)
    expect(line).toContain(was)
    expect(becomes).not.toBe(was)
  })
})

describe('the draw of mutation testing', () => {
  const changes = Array.from({ length: 40 }, (_, i) => ({
    id: String(i),
    fileName: `src/${i % 5}.ts`,
    replacement: i % 2 ? 'true' : 'false',
    location: { start: { line: i, column: 1 }, end: { line: i, column: 5 } },
  }))
  const order = (seed: string, list = changes) => inDrawnOrder(list, seed).map(({ id }) => id)
  it('hangs on the seed, and not on where a change stands in the list or what number it has', () => {
    expect(order('1')).toEqual(order('1', [...changes].reverse()))
    expect(order('1')).not.toEqual(order('2'))
    expect(new Set(order('1')).size).toBe(40)
    const renumbered = changes.map((change) => ({ ...change, id: `${change.id}x` }))
    expect(order('1', renumbered)).toEqual(order('1').map((id) => `${id}x`))
  })
})
