import { litres, minutes, runReducer, type WatchZoneInput, type WaterContent, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { noise, SETTINGS } from './scripted-zone.js'

const DAY = 86400
const CAPACITY = 0.75

interface Weeks {
  readonly days: number
  /** What each place gets of a shot from the third day on; all of it by default. */
  readonly gets?: readonly [number, number]
  /** What each probe says beyond the truth, day by day from the third on. Unit: m³/m³/d. */
  readonly drifts?: readonly [number, number]
  /** What the clock of the sender is off by. Unit: s. */
  readonly off?: (now: number) => number
}

/** Two containers that plants dry by 0.1 m³/m³ a day and that are filled at noon until they drain. Invented. */
function filledDaily({ days, gets = [1, 1], drifts = [0, 0], off = () => 0 }: Weeks): WatchZoneInput[] {
  const inputs: WatchZoneInput[] = []
  const truths = [0.73, 0.73]
  let [now, drained, last] = [0, 0, 0]
  for (; now < days * DAY; now += now % DAY > 39600 && now % DAY < 50400 ? 120 : 600) {
    const passed = now - last
    const time = now % DAY
    const late = Math.max(0, now / DAY - 2)
    const isOpen = time >= 43200 && time < 43200 + 9 * 720 && (time - 43200) % 720 < 120
    // Two minutes of six litres an hour into ten litres raise a place by 0.02, and what has no room drains.
    const came = isOpen ? 0.02 : 0
    truths.forEach((truth, i) => {
      const filled = truth + came * (late > 0 ? gets[i]! : 1) - (0.1 * passed) / DAY
      truths[i] = Math.max(0.2, Math.min(CAPACITY, filled))
      drained += 5 * Math.max(0, filled - CAPACITY)
    })
    const readings = truths.map((truth, i) => ({
      probe: SETTINGS.probes[i]!,
      waterContent: (truth + late * drifts[i]! + noise(inputs.length, i)) as WaterContent,
      time: now + off(now),
    }))
    inputs.push({
      now: now + off(now),
      open: isOpen,
      ...(isOpen ? { closeAfter: minutes(2) } : {}),
      readings,
      drained: litres(drained),
    })
    last = now
  }
  return inputs
}

const zone = watchZone({ ...SETTINGS, probes: ['A', 'B'] })
/** Day on which a probe was told to drift first, and which ones. */
function driftTold(weeks: Weeks): { readonly day: number; readonly about: readonly string[] } | null {
  const inputs = filledDaily(weeks)
  const { outputs } = runReducer({ reducer: zone, inputs })
  for (const [k, { causes }] of outputs.entries()) {
    const drift = causes.find(({ code }) => code === 'probe-drifting')
    if (drift !== undefined) return { day: inputs[k]!.now / DAY, about: drift.about! }
  }
  return null
}

describe('a full container holds what it held the last time', () => {
  it.each([0.004, -0.004])(
    'a probe that drifts by %d m³/m³ a day is named within two weeks, and its neighbour not',
    (rate) => {
      const told = driftTold({ days: 16, drifts: [rate, 0] })
      expect(told?.about).toEqual(['A'])
      expect(told!.day - 2).toBeLessThan(14)
    },
  )

  it('healthy probes, and a medium that holds less from day to day at all places, are not told', () => {
    expect(driftTold({ days: 16 })).toBeNull()
    expect(driftTold({ days: 16, drifts: [-0.004, -0.004] })).toBeNull()
  })

  it('a place that gets nothing any more dries beside one that drains: its probe does not drift', () => {
    expect(driftTold({ days: 10, gets: [0, 1] })).toBeNull()
  })

  it.each([
    ['a year ahead', 365 * DAY],
    ['at 1970', -20_000 * DAY],
  ])('a clock that stood %s for two days hides no drift', (_, wrong) => {
    const off = (now: number) => 20_000 * DAY + (now >= 3 * DAY && now < 5 * DAY ? wrong : 0)
    const told = driftTold({ days: 16, drifts: [0.004, 0], off })
    expect(told?.about).toEqual(['A'])
    expect(told!.day - 20_000).toBeLessThan(16)
  })

  it('full times go through a stored state, and a damaged one is named', () => {
    const { state } = runReducer({ reducer: zone, inputs: filledDaily({ days: 4 }) })
    const kept = JSON.parse(JSON.stringify(state))
    expect(kept.fulls.length).toBeGreaterThan(2)
    expect(zone.restore(kept)).toEqual(state)
    expect(() => zone.restore({ ...kept, fulls: [{ ...kept.fulls[0], levels: [0.7] }] })).toThrow(/fulls/)
  })
})
