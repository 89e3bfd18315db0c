import {
  type Duration,
  days,
  type FaultName,
  litres,
  minutes,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { season } from './containers.js'

const EVEN = Array.from({ length: 12 }, () => 1)

describe('a month in which nothing fails', () => {
  it('dries no container around two with probes that get more: a refill goes on until others drain as well', () => {
    const drips = EVEN.map((_, i) => (i < 2 ? 1.08 : 0.984))
    // They fell to 0.24 of 0.62: what drained from the two was taken for a full zone, week after week.
    const { driest } = season({ days: 28, drips, drinks: EVEN, probed: [0, 1] })
    expect(driest[5]).toBeGreaterThan(0.46)
  })
  it('gives young plants that take a tenth of the usual use no day in which most drains', () => {
    const { byDay } = season({ days: 21, drips: EVEN, drinks: EVEN, probed: [0, 1], use: 0.16 })
    const last = byDay.slice(7)
    const sum = (key: 'given' | 'drained') => last.reduce((total, day) => total + day[key], 0)
    // 0.47 of it drained, and 0.4 L a day came for plants that take 0.16.
    expect(sum('drained')).toBeLessThan(0.3 * sum('given'))
  })
  it('takes the scatter of two full zones a day apart for no drift', () => {
    // 52 and 46 h of four weeks above the full level, as a drift of 0.002 to 0.004 a day was told from them: decided each minute.
    expect(month('sphagnum-peat-moss', 5009, []).fullTime).toBeLessThan(6 * 3600)
  })
})

/** Weeks of a ready-made scenario, four where nothing else is said. */
function month(
  medium: Parameters<typeof rehearsalScenario>[0],
  seed: number,
  faults: readonly { fault: FaultName; from: Duration; until?: Duration; size: number }[],
  pollEvery = minutes(1),
  change: { readonly probes?: number; readonly maxPerDay?: number; readonly days?: number } = {},
) {
  const scenario = rehearsalScenario(medium)
  const zone = { ...scenario.zone, probes: change.probes ?? 2 }
  const limits = { ...scenario.limits, maxPerDay: litres(change.maxPerDay ?? 6) }
  const controller = rehearsedWatering({ ...scenario, zone, limits })
  return rehearse({ zone, limits, controller, days: change.days ?? 28, seed, faults, pollEvery, keepCourse: false })
}

describe('a month with a slow change', () => {
  it('fills a zone sooner where its plants grow to drink two and a half times as much', () => {
    const faults = Array.from({ length: 27 }, (_, i) => ({
      fault: 'heat-wave' as const,
      from: days(i + 1),
      until: days(i + 2),
      size: 1 + (1.5 * (i + 1)) / 28,
    }))
    // 344 h: containers part by what plants drink, and refills came by the week.
    const { stressTime, worstDay } = month('coir-dust', 5012, faults, minutes(5), { maxPerDay: 12 })
    expect(stressTime).toBeLessThan(48 * 3600)
    expect(worstDay).toBeLessThanOrEqual(12)
  })
  it('knows on how a probe drifts that says nothing while the zone is full', () => {
    // At its fourth refill the probe read more than can be believed: its drift was forgotten, and the zone dried out for 125 h of the fifth week.
    const { stressTime } = month(
      'stone-wool',
      5002,
      [{ fault: 'probe-drifts-up', from: days(1), size: 0.004 }],
      minutes(1),
      { probes: 1, days: 35 },
    )
    expect(stressTime).toBeLessThan(3600)
  })
})
