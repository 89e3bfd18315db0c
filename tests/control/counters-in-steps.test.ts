/** Counters that count in steps: pulses of a meter, tips of a gauge. */
import { litres, runReducer, type WatchZoneInput, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const SHOTS = Array.from({ length: 5 }, (_, day) =>
  Array.from({ length: 14 }, (_, k) => 1440 * day + 370 + 53 * k),
).flat()
const isOpen = (minute: number) => SHOTS.some((at) => minute >= at && minute < at + 2)
const DEAD = 4320
const healthy = scripted({
  minutes: 7200,
  probes: AB,
  shots: SHOTS,
  use: (14 * 2 * 0.01) / 1440,
  metered: (minute) => (isOpen(minute) ? 1 : 0),
})
/** A count in steps, which stands still from a minute on. */
const inSteps = (count: number, step: number) => litres(step * Math.floor(count / step + 1e-9))
const metered = (step: number, until = Infinity) =>
  healthy.map(
    (input, minute): WatchZoneInput => ({
      ...input,
      metered: inSteps(0.37 * step + (healthy[Math.min(minute, until)]!.metered as number), step),
    }),
  )
/** A twelfth of each shot drains, a tenth of what is left each minute. */
const drained = (step: number, until = Infinity, readings = (minute: number) => healthy[minute]!.readings) => {
  let [coming, drain] = [0, 0]
  return healthy.map((input, minute): WatchZoneInput => {
    if (isOpen(minute)) coming += 0.1 / 12
    if (minute < until) drain += 0.1 * coming
    coming *= 0.9
    return { ...input, readings: readings(minute), drained: inSteps(drain, step) }
  })
}
const outputs = (inputs: readonly WatchZoneInput[]) =>
  runReducer({ reducer: watchZone({ ...SETTINGS, probes: AB }), inputs }).outputs
const codes = (inputs: readonly WatchZoneInput[]) => [
  ...new Set(outputs(inputs).flatMap(({ causes }) => causes.map(({ code }) => code))),
]
const batches = (minute: number) =>
  minute % 15 === 14 ? healthy.slice(minute - 14, minute + 1).flatMap(({ readings }) => readings) : []

describe('a flow meter whose pulse is larger than a shot', () => {
  it.each([0.25, 1])('of %s L counts well', (step) => {
    expect(codes(metered(step))).toEqual([])
  })
  it('is told when it counts nothing any more, once the shots had brought ten pulses', () => {
    const told = outputs(metered(0.25, DEAD))
    const first = told.findIndex(({ causes }) => causes[0]?.code === 'flow-meter-wrong')
    expect(first).toBeGreaterThan(DEAD + 5 * 53)
  })
  it('says of itself that it tells no shot, where all shots that are kept are less than ten pulses', () => {
    expect(outputs(metered(3)).at(-1)!.cannotTell).toContainEqual({
      code: 'flow-meter-wrong',
      reason: 'counts-too-late',
    })
  })
})

describe('a drain gauge that tips', () => {
  it.each([0.05, 0.1, 0.5])('%s L counts well, though most shots drain nothing by it', (step) => {
    expect(codes(drained(step))).toEqual([])
  })
  it('is told when it tips no more', () => {
    expect(codes(drained(0.05, DEAD))).toEqual(['drain-gauge-wrong'])
  })
  it('that counts nothing is told where readings come by the quarter of an hour in batches', () => {
    expect(codes(drained(0.0001, DEAD, batches))).toEqual(['drain-gauge-wrong'])
  })
})
