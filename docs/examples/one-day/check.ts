import {
  combineFlags,
  countFlags,
  type FlagCounts,
  type FoundShot,
  findShots,
  findTimeBreaks,
  flatLineTest,
  grossRangeTest,
  minutes,
  rateOfChangeTest,
  scale,
  spikeTest,
  type TimeBreak,
  timeGapTest,
  waterContentChange,
} from 'porewater'
import type { Loaded } from './load.js'
import type { Setup } from './setup.js'

/** A probe's readings after the tests: what can be trusted, and what was found in it. */
export interface CheckedProbe {
  readonly name: string
  readonly counts: FlagCounts
  /** Water content; NaN where it is missing or not to be trusted. */
  readonly content: Float64Array
  readonly shots: readonly FoundShot[]
  readonly extrapolated: number
}

export interface Checked {
  readonly seams: readonly TimeBreak[]
  readonly probes: readonly CheckedProbe[]
}

/** With so many equal readings before it, a reading is doubtful. */
const REPEATS = 6

/** The test flags a frozen probe only when it has repeated itself long enough; the repeats before are no better. */
function fromTheFirstRepeat(flags: Uint8Array): Uint8Array {
  const out = flags.slice()
  flags.forEach((flag, i) => {
    if (flag !== 3 && flag !== 4) return
    for (let j = Math.max(0, i - REPEATS); j < i; j++) if (out[j] === 1) out[j] = 3
  })
  return out
}

/** Tests every reading of the record and finds the shots in those that can be trusted. */
export function check(loaded: Loaded, setup: Setup): Checked {
  const expectedStep = minutes(setup.minutesBetweenReadings)
  const { time } = loaded
  const gaps = timeGapTest({ time, expectedStep })
  // The first reading after a gap is as good as any; only a clock that did not advance makes a reading doubtful.
  const clock = gaps.map((flag) => (flag === 3 ? 1 : flag))
  const probes = loaded.probes.map(({ name, content: value, extrapolated }) => {
    const flags = combineFlags([
      clock,
      grossRangeTest({
        value,
        sensorMin: -0.1,
        sensorMax: 1,
        expectedMin: setup.limits.lowest,
        expectedMax: setup.limits.highest,
      }),
      spikeTest({ value, suspect: 6 * setup.limits.minRise, fail: 12 * setup.limits.minRise }),
      fromTheFirstRepeat(flatLineTest({ value, tolerance: 0, suspectAfter: REPEATS, failAfter: 4 * REPEATS })),
      rateOfChangeTest({ time, value, most: (4 * setup.limits.minRise) / expectedStep, direction: 'fall' }),
    ])
    const content = value.map((x, i) => ((flags[i] as number) <= 2 ? x : Number.NaN))
    const shots = findShots({
      time,
      content,
      minRise: waterContentChange(setup.limits.minRise),
      maxRiseTime: minutes(Math.max(30, 4 * setup.minutesBetweenReadings)),
      // One missing reading is bridged, no more.
      maxStep: scale(expectedStep, 2.2),
    })
    return { name, counts: countFlags(flags), content, shots, extrapolated }
  })
  return { seams: findTimeBreaks({ time, expectedStep }), probes }
}
