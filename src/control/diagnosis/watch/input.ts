import type { Irradiance, SolutionEC, Temperature, Volume } from '../../../quantity/generated/kinds.js'
import type { MomentOfProbe } from '../../terms.js'
/** What a probe sent. Anything but a finite number is a reading without a number. */
export interface WatchedReading extends MomentOfProbe {
  /** Name of the probe, as in the settings. Others are passed over. */
  readonly probe: string
}

/** A moment, with all that came since the one before. What is not measured is left out; null and NaN count as left out. */
export interface WatchZoneInput {
  /** Now: seconds, not milliseconds. Unit: s. */
  readonly now: number
  /** Readings since the last moment, in any order. */
  readonly readings: readonly WatchedReading[]
  /** Whether the valve is ordered open now. Only `true` opens. */
  readonly open: boolean
  /** When the order ends by itself. Unit: s from now. */
  readonly closeAfter?: number
  /** Counter of the flow meter. Unit: L. */
  readonly metered?: Volume
  /** Counter of the drain. Unit: L. */
  readonly drained?: Volume
  /** Light; in the dark what falls at a probe is hardly use. Unit: W/m². */
  readonly light?: Irradiance
  /** Temperature in the medium. Unit: °C. */
  readonly temperature?: Temperature
  /** EC of the feed at 25 °C. Unit: dS/m. */
  readonly feedEC?: SolutionEC
  /** EC of the newest drain at 25 °C. Unit: dS/m. */
  readonly drainEC?: SolutionEC
}

/** No quantity of a zone is larger in its unit, and squares of such numbers can still be summed up. */
const MAX = 1e15

/** The number, or null where there is none. */
export function known(value: unknown): number | null {
  return typeof value === 'number' && value >= -MAX && value <= MAX ? value : null
}

/** The sun gives 1361 W/m² outside the air, and clouds a fifth more on top at most: more is another unit. */
const MAX_LIGHT = 2000

/** Light, or null where there is none that can be. */
export function lightOf({ light }: WatchZoneInput): number | null {
  const told = known(light)
  return told === null || told > MAX_LIGHT ? null : told
}
