import type { WeatherAssumption } from '../../demand/reference/weather-assumption.js'
import type { WeatherFinding } from '../../demand/reference/weather-doubts.js'
import type { EcDoubt } from '../../irrigation/salt/ec-doubt.js'
import type { LeftOutFor, ZoneTable } from '../record/left-out.js'

/** What one finding of a zone is about, with its numbers. `explainZoneFinding` puts it into words. */
export type ZoneFinding = {
  /** How much it matters. */
  readonly level: 'note' | 'caution' | 'danger'
} & (
  | {
      readonly code: 'no-readings'
      /** The probe that it is about. */
      readonly probe: string
    }
  | {
      readonly code: 'looks-like-percent'
      readonly probe: string
      /** Middle of the reported numbers. Unit: that of the probe. */
      readonly middle: number
    }
  | {
      readonly code: 'few-shots-seen'
      readonly probe: string
      /** Shots that this probe saw. Unit: 1. */
      readonly seen: number
      /** Shots that another one saw. Unit: 1. */
      readonly of: number
    }
  | {
      readonly code: 'fell-away'
      readonly probe: string
      /** By how much it stands below its own level after drain. Unit: m³/m³. */
      readonly below: number
      /** The same for the other probes. Unit: m³/m³. */
      readonly others: number
    }
  | { readonly code: 'no-late-reading'; readonly probe: string }
  | { readonly code: 'no-level-after-drain'; readonly probe: string }
  | {
      readonly code: 'shots-without-rise' | 'shots-not-judged' | 'rises-without-shot'
      readonly probe: string
      /** When it was so. Unit: s. */
      readonly times: readonly number[]
    }
  | {
      readonly code: 'rises-alone'
      readonly probe: string
      /** How often it rose without an opening, while the others hardly did. Unit: 1. */
      readonly rises: number
    }
  | {
      readonly code: 'climbs-between-shots'
      readonly probe: string
      /** Time of the lowest level. Unit: s. */
      readonly from: number
      /** Time of the highest level after it. Unit: s. */
      readonly to: number
      /** By how much it climbed. Unit: m³/m³. */
      readonly rise: number
    }
  | {
      readonly code: 'level-stepped'
      readonly probe: string
      /** First reading at the new level. Unit: s. */
      readonly time: number
      /** New level less the old one. Unit: m³/m³. */
      readonly change: number
    }
  | {
      readonly code: 'rises-with-salt'
      readonly probe: string
      /** Change of the level after drain in a day. Unit: m³/m³/d. */
      readonly levelPerDay: number
      /** Change of the drain in a day. Unit: dS/m/d. */
      readonly drainPerDay: number
    }
  | {
      readonly code: 'no-water' | 'bypass'
      /** Shots in the log. Unit: 1. */
      readonly shots: number
    }
  | {
      readonly code: 'off-capacity'
      readonly probe: string
      /** Level after drain less container capacity. Unit: m³/m³. */
      readonly difference: number
    }
  | {
      readonly code: 'probes-differ'
      /** Highest less lowest level at the end of the day. Unit: m³/m³. */
      readonly spread: number
    }
  | {
      readonly code: 'readings-out-of-order'
      /** Readings that were left out. Unit: 1. */
      readonly count: number
    }
  | {
      readonly code: 'entries-left-out'
      /** The table in which they stand. */
      readonly table: ZoneTable
      /** What is wrong with them. */
      readonly because: LeftOutFor
      /** How many they are. Unit: 1. */
      readonly count: number
    }
  | {
      readonly code: 'root-readings-left-out'
      /** Readings of the root zone that cannot be. Unit: 1. */
      readonly count: number
    }
  | {
      readonly code: 'negative-use'
      /** Use of the water balance, for one container. Unit: L. */
      readonly use: number
    }
  | {
      readonly code: 'use-doubted'
      /** Use of the water balance, for one container. Unit: L. */
      readonly use: number
      /** Use of the climate, for one container. Unit: L. */
      readonly climate: number
    }
  | {
      readonly code: 'drain-gauge-silent'
      /** Water given to one container. Unit: L. */
      readonly given: number
      /** Entries of the log. Unit: 1. */
      readonly entries: number
    }
  | {
      readonly code: 'more-drain-than-given'
      /** Water given to one container. Unit: L. */
      readonly given: number
      /** Water drained from it. Unit: L. */
      readonly drained: number
    }
  | {
      readonly code: 'salts-not-steady'
      /** Share that drained. Unit: 1. */
      readonly share: number
      /** Share that would drain at a steady state without uptake of salts. Unit: 1. */
      readonly steady: number
    }
  | EcDoubt
  | {
      readonly code: 'root-zone-temperature'
      /** Where it lies among the bands of fruiting vegetables. */
      readonly band: OffTargetBand
      /** Whether it is the lowest or the highest temperature of the day. */
      readonly extreme: 'lowest' | 'highest'
      /** How cold or warm it was then. Unit: °C. */
      readonly value: number
    }
  | {
      readonly code: 'climate-doubted'
      /** What was assumed of the weather or is odd about it. */
      readonly weather: WeatherFinding | WeatherAssumption
    }
  | { readonly code: 'light-assumed' }
  | {
      readonly code: 'light-off-noon'
      /** The moment before which half of the light of the day came. Unit: s. */
      readonly time: number
    }
  | UnitDoubt
  | {
      readonly code: 'log-on-another-clock'
      /** By how much the log must be moved to fit the rises. Unit: h. */
      readonly hours: number
    }
  | {
      readonly code: 'level-remembered'
      readonly probe: string
      /** Age of the level that is used. Unit: d. */
      readonly days: number
    }
  | { readonly code: 'all-probes-left-out' }
)

/** A column whose numbers look like those of another unit. */
export interface UnitDoubt {
  readonly code: 'unit-doubted'
  /** The column that is doubted. */
  readonly about: (typeof DOUBTED_COLUMNS)[number]
  /** The middle of the numbers of the day; of light what a twentieth of them reach. Unit: that of `unit`. */
  readonly value: number
  /** The unit that is expected. */
  readonly unit: '°C' | '1' | 'W/m²' | 'm/s' | 'dS/m'
  /** The unit that the numbers look like. */
  readonly like: (typeof LIKE_UNITS)[number]
}

/** Columns whose unit is doubted, and what they look like. */
export const DOUBTED_COLUMNS = [
  'airTemperature',
  'relativeHumidity',
  'irradiance',
  'windSpeed',
  'rootTemperature',
  'feedEC',
  'drainEC',
] as const
export const LIKE_UNITS = [
  'fahrenheit',
  'kelvin',
  'per-cent',
  'fraction',
  'kilometres-per-hour',
  'megajoules',
  'light-for-growth',
  'millisiemens-per-metre',
  'microsiemens-per-centimetre',
] as const

/** Bands of root temperature that a zone is told of. */
export const OFF_TARGET = ['cold', 'cool', 'warm', 'hot'] as const
export type OffTargetBand = (typeof OFF_TARGET)[number]

/** The code of a finding. */
export type ZoneFindingCode = ZoneFinding['code']
