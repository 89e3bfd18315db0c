import { deadBand, runReducer, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'control.deadband', ({ theta, lower, upper }) => {
  const reducer = deadBand({ lower: waterContent(lower), upper: waterContent(upper) })
  const on = runReducer({ reducer, inputs: theta.map((x: number | null) => x ?? Number.NaN) }).outputs
  return { state: on.map(Number), starts: on.filter((now, i) => now && !on[i - 1]).length }
})

describe('a dead-band', () => {
  const run = (inputs: number[]) =>
    runReducer({ reducer: deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) }), inputs }).outputs
  it('is off until a reading was at the lower limit', () => {
    expect(run([0.55, 0.51, 0.5, 0.55])).toEqual([false, false, true, true])
  })
  it('is off from the upper limit on', () => {
    expect(run([0.5, 0.59, 0.6, 0.59])).toEqual([true, true, false, false])
  })
  it('is switched on by no null of JSON, no text, and nothing that a dead probe sends', () => {
    for (const lost of [null, undefined, '0.3', '', Number.NaN, -Infinity, -999, -0.2, 0, 65535, true, []])
      expect(run([0.5, lost as number, 0.55])).toEqual([true, false, false])
  })
  it('is off in a state that was lost', () => {
    const { step } = deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) })
    for (const lost of [null, undefined, {}, { on: 'true' }, { on: 1 }])
      expect(step(lost as never, 0.55)).toEqual([{ on: false }, false])
  })
  it('is not made from limits that leave no band', () => {
    expectInputError(() => deadBand({ lower: waterContent(0.6), upper: waterContent(0.5) }), 'upper')
  })
})
