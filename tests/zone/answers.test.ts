/** Which probes count by the shots that they saw: common practice, no source. */
import { describe, expect, it } from 'vitest'
import { compareAnswers } from '../../src/zone/probes/answers-to-shots.js'

function compare(shots: number, seen: readonly number[], drained?: boolean) {
  const answers = seen.map((n, i) => ({
    name: `P${i}`,
    answers: {
      openings: shots,
      seen: n,
      withoutRise: new Array<number>(shots - n).fill(0),
      notJudged: [],
      withoutLog: [],
    },
  }))
  const { findings, deaf } = compareAnswers(answers, drained)
  return [...findings.map(({ code }) => code), ...deaf.keys()]
}

describe('the answers of probes to shots', () => {
  it('name the probe; need two shots for no water and three for one deaf probe, below half of the others', () => {
    expect(compare(1, [0, 0])).toEqual([])
    expect(compare(2, [0, 0])).toEqual(['no-water'])
    expect(compare(2, [0, 2])).toEqual([])
    expect(compare(3, [1, 3])).toEqual(['P0'])
    expect(compare(3, [3, 1])).toEqual(['P1'])
    expect(compare(4, [2, 4])).toEqual([])
  })
  it('are told apart by the drain', () => {
    expect(compare(6, [6, 6, 5])).toEqual([])
    expect(compare(6, [0, 0], false)).toEqual(['no-water'])
    expect(compare(6, [0, 0], true)).toEqual(['bypass'])
    expect(compare(6, [6, 1, 6])).toEqual(['P1'])
    expect(compare(6, [])).toEqual([])
  })
})
