import { litres, litresPerHour, type Volume, type WatchZoneInput, type WaterContent, waterContent } from 'porewater'

/** A zone on paper, minute by minute: what truly happens stands in the script, so that a diagnosis can be held against it. */
export interface Script {
  readonly minutes: number
  readonly probes: readonly string[]
  /** Minutes at which a shot of two minutes is ordered. */
  readonly shots: readonly number[]
  /** Water content at the start. */
  readonly start?: number
  /** Share of a shot that reaches the place of a probe; 1 by default. */
  readonly reaches?: (minute: number, probe: number) => number
  /** Water content that no place exceeds. */
  readonly capacity?: number
  /** What plants take in a minute. */
  readonly use?: number
  /** What a probe sends, from what is true. */
  readonly sends?: (truth: number, minute: number, probe: number) => unknown
  /** Share of the flow that the meter sees; left out, there is none. */
  readonly metered?: (minute: number) => number
}

export const SETTINGS = {
  probes: ['A', 'B', 'C'],
  substrateVolume: litres(10),
  flow: litresPerHour(6),
  minBelievable: waterContent(0.1),
  maxBelievable: waterContent(0.9),
  fullPoint: waterContent(0.74),
} as const

/** A repeatable noise of a thousandth or two. */
export function noise(minute: number, probe: number): number {
  const x = Math.sin(12.9898 * (minute + 1) + 78.233 * (probe + 1)) * 43758.5453
  return 0.003 * (x - Math.floor(x) - 0.5)
}

export function scripted(script: Script): WatchZoneInput[] {
  const { minutes, probes, shots, start = 0.7, capacity = 0.75, use = 0.00015 } = script
  const truths = probes.map(() => start)
  const shown = [...truths]
  let metered = 0
  return Array.from({ length: minutes }, (_, minute) => {
    const begun = shots.find((at) => minute >= at && minute < at + 2)
    const readings = probes.flatMap((probe, i) => {
      const sent = script.sends?.(shown[i]!, minute, i) ?? shown[i]! + noise(minute, i)
      return sent === 'nothing' ? [] : [{ probe, waterContent: sent as WaterContent, time: 60 * minute }]
    })
    const input: WatchZoneInput = {
      now: 60 * minute,
      readings,
      open: begun !== undefined,
      ...(begun === undefined ? {} : { closeAfter: 60 * (begun + 2 - minute) }),
      ...(script.metered === undefined ? {} : { metered: metered as Volume }),
    }
    // Six litres an hour into ten litres: a hundredth in a minute.
    const came = begun === undefined ? 0 : 0.01
    truths.forEach((truth, i) => {
      truths[i] = Math.min(capacity, truth + came * (script.reaches?.(minute, i) ?? 1) - use)
      shown[i] = shown[i]! + (truths[i]! - shown[i]!) / 4
    })
    metered += 0.1 * (script.metered?.(minute) ?? 0)
    return input
  })
}
