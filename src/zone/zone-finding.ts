import type { WeatherAssumption } from '../demand/reference/weather-assumption.js'
import type { WeatherFinding } from '../demand/reference/weather-doubts.js'

/** What one finding is about, with its numbers in the units that the comments name. */
export type ZoneFinding = { readonly level: 'note' | 'caution' | 'danger' } & (
  | { readonly code: 'no-readings'; readonly probe: string }
  | {
      readonly code: 'looks-like-percent'
      readonly probe: string
      /** Middle of the reported numbers. */
      readonly middle: number
    }
  | { readonly code: 'few-shots-seen'; readonly probe: string; readonly seen: number; readonly of: number }
  | {
      readonly code: 'fell-away'
      readonly probe: string
      /** By how much it stands below its own level after drain, m³/m³. */
      readonly below: number
      /** The same for the other probes, m³/m³. */
      readonly others: number
    }
  | { readonly code: 'no-late-reading'; readonly probe: string }
  | { readonly code: 'no-level-after-drain'; readonly probe: string }
  | { readonly code: 'shots-without-rise'; readonly probe: string; readonly times: readonly number[] }
  | { readonly code: 'shots-not-judged'; readonly probe: string; readonly times: readonly number[] }
  | { readonly code: 'rises-without-shot'; readonly probe: string; readonly times: readonly number[] }
  | {
      readonly code: 'climbs-between-shots'
      readonly probe: string
      /** Time of the lowest level, s. */
      readonly from: number
      /** Time of the highest level after it, s. */
      readonly to: number
      /** By how much it climbed, m³/m³. */
      readonly rise: number
    }
  | {
      readonly code: 'level-stepped'
      readonly probe: string
      /** First reading at the new level, s. */
      readonly time: number
      /** New level less the old one, m³/m³. */
      readonly change: number
    }
  | {
      readonly code: 'rises-with-salt'
      readonly probe: string
      /** Change of the level after drain in a day, m³/m³/d. */
      readonly levelPerDay: number
      /** Change of the drain in a day, dS/m/d. */
      readonly drainPerDay: number
    }
  | { readonly code: 'no-water' | 'bypass'; readonly shots: number }
  | {
      readonly code: 'off-capacity'
      readonly probe: string
      /** Level after drain less container capacity, m³/m³. */
      readonly difference: number
    }
  | { readonly code: 'probes-differ'; readonly spread: number }
  | { readonly code: 'readings-out-of-order'; readonly count: number }
  | { readonly code: 'negative-use'; readonly use: number }
  | {
      readonly code: 'use-doubted'
      /** Use of the water balance, L a container. */
      readonly use: number
      /** Use of the climate, L a container. */
      readonly climate: number
    }
  | { readonly code: 'drain-gauge-silent'; readonly given: number; readonly entries: number }
  | { readonly code: 'more-drain-than-given'; readonly given: number; readonly drained: number }
  | {
      readonly code: 'salts-not-steady'
      /** Share that drained. */
      readonly share: number
      /** Share that would drain at a steady state without uptake of salts. */
      readonly steady: number
    }
  | {
      readonly code: 'root-zone-temperature'
      readonly band: string
      readonly extreme: 'lowest' | 'highest'
      /** °C */
      readonly value: number
    }
  | {
      readonly code: 'climate-doubted'
      /** What was assumed of the weather or is odd about it. */
      readonly weather: WeatherFinding | WeatherAssumption
    }
  | { readonly code: 'light-assumed' }
  | { readonly code: 'level-remembered'; readonly probe: string; readonly days: number }
  | { readonly code: 'all-probes-left-out' }
)

/** The code of a finding. */
export type ZoneFindingCode = ZoneFinding['code']
