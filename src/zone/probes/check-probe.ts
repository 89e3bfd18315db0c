import { medianInPlace } from '../../numerics/select.js'
import { applyCalibrationToSeries } from '../../probe/apply-to-series.js'
import type { Duration, WaterContentChange } from '../../quantity/generated/kinds.js'
import { checkReadings } from '../../record/quality/check-readings.js'
import { combineFlags, countFlags, type FlagCounts, QUALITY } from '../../record/quality/flags.js'
import { findShots } from '../../record/shots/find-shots.js'
import type { FoundShot } from '../../record/shots/watch-shots.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'
import type { DescribedProbe, Zone } from '../zone.js'
import { flatLineOfProbe } from './flat-line-of-probe.js'

/** A probe's readings in the window of a day, after the tests. */
export interface CheckedProbe {
  readonly name: string
  readonly weight: number
  /** Water content; NaN where it is missing or not to be trusted. */
  readonly waterContent: Float64Array
  /** Flags of the readings of the day. */
  readonly counts: FlagCounts
  /** Readings of the day outside the span of the calibration. */
  readonly extrapolated: number
  readonly shots: readonly FoundShot[]
  /** Median of the numbers that were reported, where they look like per cent. */
  readonly looksLikePercent: number | undefined
}

/** No probe reports a water content outside this. */
const POSSIBLE = { min: -0.1, max: 1 }

/** Nothing is followed over a longer step between two good readings: one missing reading is bridged, no more. */
export function maxStepOf(zone: Zone): Duration {
  return Math.min(86400, 2.2 * zone.readingStep) as Duration
}

/** The rise of one shot takes no longer. */
export function maxRiseTimeOf(zone: Zone): Duration {
  return Math.min(86400, Math.max(1800, 4 * zone.readingStep)) as Duration
}

/** Tests the readings of a probe and finds the shots in those that can be trusted. */
export function checkProbe(zone: Zone, window: ZoneWindow, position: number): CheckedProbe {
  const probe = zone.probes[position]!
  const raw = window.probes[position]!
  const { day, time } = window
  const value = raw.slice()
  if (probe.calibration !== undefined)
    applyCalibrationToSeries({ calibration: probe.calibration, readings: raw, output: value })
  const impossible = new Uint8Array(value.length).fill(QUALITY.pass)
  // A number that no probe can report says nothing, also not about its neighbours: it is missing before any other test.
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    if (x >= POSSIBLE.min && x <= POSSIBLE.max) continue
    impossible[i] = Number.isNaN(raw[i]) ? QUALITY.missing : QUALITY.fail
    value[i] = Number.NaN
  }
  const flags = flagsOf(zone, time, value)
  const waterContent = value.slice()
  for (let i = 0; i < value.length; i++) {
    if (Number.isNaN(value[i])) flags[i] = impossible[i]!
    if (flags[i]! > QUALITY.notEvaluated) waterContent[i] = Number.NaN
  }
  const shots = findShots({
    time,
    waterContent,
    minRise: zone.limits.minRise as WaterContentChange,
    maxRiseTime: maxRiseTimeOf(zone),
    maxStep: maxStepOf(zone),
  })
  const first = firstAt(time, day.from)
  return {
    name: probe.name,
    weight: probe.weight ?? 1,
    waterContent,
    counts: countFlags(flags.subarray(first)),
    extrapolated: extrapolatedIn(probe, raw.subarray(first)),
    shots,
    looksLikePercent: probe.calibration === undefined ? percentIn(raw.subarray(first)) : undefined,
  }
}

function flagsOf(zone: Zone, time: Float64Array, value: Float64Array): Uint8Array {
  const { limits, readingStep } = zone
  const flat = flatLineOfProbe(value)
  const { tests } = checkReadings({
    time,
    value,
    expectedStep: readingStep,
    grossRange: {
      sensorMin: POSSIBLE.min,
      sensorMax: POSSIBLE.max,
      expectedMin: limits.minBelievable,
      expectedMax: limits.maxBelievable,
    },
    spike: { suspect: 6 * limits.minRise, fail: 12 * limits.minRise },
    rateOfChange: { max: (4 * limits.minRise) / readingStep, direction: 'fall' },
    flatLine: flat,
  })
  // The first reading after a gap is as good as any, so that the gap test has no say here.
  const { timeGap, flatLine, ...others } = tests
  const frozen = fromTheFirstRepeat(flatLine as Uint8Array, flat.suspectAfter)
  return combineFlags([...Object.values(others), dips(value, tests.rateOfChange as Uint8Array, limits.minRise), frozen])
}

/** A dip lasts no more readings than this; what stays down longer is a new level. */
const MAX_DIP = 12

/** After a fall that is too fast to be believed, the readings until the level is back are no better than the first. */
function dips(value: Float64Array, rate: Uint8Array, minRise: number): Uint8Array {
  const out = new Uint8Array(value.length).fill(QUALITY.pass)
  for (let i = 1; i < value.length; i++) {
    if (rate[i] !== QUALITY.suspect) continue
    const back = value[i - 1]! - 2 * minRise
    let j = i
    while (j < value.length && j <= i + MAX_DIP && !(value[j]! >= back)) j++
    if (value[j]! >= back) out.fill(QUALITY.suspect, i, j)
  }
  return out
}

/** The flat line test flags a frozen probe only when it has repeated itself long enough; the repeats before are no better. */
function fromTheFirstRepeat(flags: Uint8Array, repeats: number): Uint8Array {
  const out = flags.slice()
  for (let i = 0; i < flags.length; i++) {
    if (flags[i] !== QUALITY.suspect && flags[i] !== QUALITY.fail) continue
    for (let j = Math.max(0, i - repeats); j < i; j++) if (out[j] === QUALITY.pass) out[j] = QUALITY.suspect
  }
  return out
}

function extrapolatedIn(probe: DescribedProbe, raw: Float64Array): number {
  const { calibration } = probe
  if (calibration === undefined) return 0
  return raw.filter((x) => x < calibration.span.min || x > calibration.span.max).length
}

/** The middle of the reported numbers, if it can only be per cent. */
function percentIn(raw: Float64Array): number | undefined {
  let above = 0
  for (const x of raw) if (x > 1) above++
  // The middle is above one only where half of the numbers are: looking for it costs more than this.
  if (above === 0) return undefined
  const there = raw.filter((x) => !Number.isNaN(x))
  const middle = medianInPlace(there)
  return middle > 1 && middle <= 100 ? middle : undefined
}
