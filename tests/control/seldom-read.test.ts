/** Zones whose probes are read, or asked, by the half hour or the hour: what such readings can tell, and what not. */
import { type Diagnosis, hours, runReducer, type WatchZoneInput, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const FROM = 2880
/** Shots by day that bring what is drunk then; the night is for the plants. */
const SHOTS = Array.from({ length: 6 }, (_, day) =>
  Array.from({ length: 14 }, (_, k) => 1440 * day + 370 + 53 * k),
).flat()
const inShot = (minute: number) => SHOTS.some((at) => minute >= at && minute < at + 2)
const base: Script = {
  minutes: 8640,
  probes: AB,
  shots: SHOTS,
  use: (14 * 2 * 0.01) / 1440,
  metered: (minute) => (inShot(minute) ? 1 : 0),
}
const zone = watchZone({ ...SETTINGS, probes: AB, maxReadingAge: hours(2) })
const hourly = (inputs: readonly WatchZoneInput[]) =>
  inputs.map((input, minute) => (minute % 60 === 0 ? input : { ...input, readings: [] }))
const watched = (inputs: readonly WatchZoneInput[]) => runReducer({ reducer: zone, inputs }).outputs
const told = (outputs: readonly Diagnosis[]) => [
  ...new Set(outputs.flatMap(({ causes }) => causes.map(({ code }) => code))),
]

describe('a zone that is read by the hour', () => {
  const healthy = watched(hourly(scripted(base)))

  it('has no false alarm, though readings leap by shots and by what is drunk between them', () => {
    expect(told(healthy)).toEqual([])
  })

  it('says of its drippers that readings so far apart cannot tell', () => {
    expect(healthy.at(-1)!.cannotTell).toContainEqual({ code: 'clogged-dripper', reason: 'readings-far-apart' })
  })

  it('tells a probe that was pulled out by half', () => {
    const lifted = hourly(
      scripted({ ...base, sends: (truth, minute, i) => (i === 1 && minute > FROM ? truth * 0.7 : truth) }),
    )
    expect(told(watched(lifted).slice(0, FROM + 360))).toContain('probe-lifted')
  })

  it('tells by the meter that shots bring no water', () => {
    const dry = hourly(
      scripted({
        ...base,
        reaches: (minute) => (minute > FROM ? 0 : 1),
        metered: (minute) => (minute <= FROM && inShot(minute) ? 1 : 0),
      }),
    )
    expect(watched(dry)[FROM + 600]!.causes[0]?.code).toBe('no-water')
  })

  it('tells a probe that scatters, by the readings between which no shot came', () => {
    const noisy = hourly(
      scripted({
        ...base,
        sends: (truth, minute, i) => truth + (i === 1 && minute > FROM ? 0.03 * (-1) ** (minute / 60) : 0),
      }),
    )
    expect(told(watched(noisy))).toContain('probe-noisy')
  })
})

it('a zone that is asked by the half hour is told of each of its shots, though each has ended before the next is ordered', () => {
  const asked = scripted({ ...base, shots: Array.from({ length: 40 }, (_, k) => 30 * k), minutes: 1200 }).filter(
    ({ now }) => now % 1800 === 0,
  )
  const { state } = runReducer({ reducer: zone, inputs: asked })
  expect(state.shots.length).toBe(39)
})
