/** A drain gauge that counts twice what drains is told for as long as it does. */
import { type Diagnosis, runReducer, type Volume, type WatchZoneInput, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const DAY = 1440
const SHOTS = Array.from({ length: 9 }, (_, day) =>
  Array.from({ length: 12 }, (_, k) => DAY * day + 370 + 62 * k),
).flat()
const base: Script = {
  minutes: 9 * DAY,
  probes: AB,
  shots: SHOTS,
  use: (12 * 2 * 0.01) / DAY,
  metered: (minute) => (inShot(minute) ? 1 : 0),
}
const zone = watchZone({ ...SETTINGS, probes: AB })

function inShot(minute: number): boolean {
  return SHOTS.some((at) => minute >= at && minute < at + 2)
}

/** Every other minute; of each shot a share drains within ten minutes, and is counted so many times. */
function drained(counts: (minute: number) => number, share: (minute: number) => number): WatchZoneInput[] {
  let drain = 0
  return scripted(base).flatMap((input, minute) => {
    const after = SHOTS.find((at) => minute >= at && minute < at + 10)
    if (after !== undefined) drain += (share(minute) * 0.2 * counts(minute)) / 10
    return minute % 2 === 0 ? [{ ...input, drained: drain as Volume }] : []
  })
}

const isTold = ({ causes }: Diagnosis) => causes.some(({ code }) => code === 'drain-gauge-wrong')
const watched = (inputs: readonly WatchZoneInput[]) => runReducer({ reducer: zone, inputs }).outputs
const at = (outputs: readonly Diagnosis[], day: number) => outputs[(day * DAY) / 2 - 1]!

describe('a drain gauge that counts twice from the fourth day on', () => {
  const usually = () => 0.06
  it('is told a day later, and still when twice as much has become usual', () => {
    const outputs = watched(drained((minute) => (minute < 3 * DAY ? 1 : 2), usually))
    expect([3, 5, 9].map((day) => isTold(at(outputs, day)))).toEqual([false, true, true])
  })

  it('is told no more a day after it was mended', () => {
    const outputs = watched(drained((minute) => (minute < 3 * DAY || minute > 6 * DAY ? 1 : 2), usually))
    expect([6, 8].map((day) => isTold(at(outputs, day)))).toEqual([true, false])
  })
})

describe('more drain than the shots brought', () => {
  const full = (days: readonly number[], share: number) => (minute: number) =>
    days.includes(Math.floor(minute / DAY)) && minute % DAY < 1000 ? share : 0.06

  it('on two days by the same share is a gauge that counts too much, also after them', () => {
    expect(isTold(at(watched(drained(() => 1, full([2, 5], 1.5))), 8))).toBe(true)
  })

  it('once, as by rain, is nothing any more days later', () => {
    expect(isTold(at(watched(drained(() => 1, full([2], 1.5))), 8))).toBe(false)
  })
})
