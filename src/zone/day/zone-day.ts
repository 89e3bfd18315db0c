import type { WaterUseAhead } from '../../record/forecast/fall-ahead.js'
import type { WaterUseOfNextDay } from '../../record/forecast/forecast-daily-use.js'
import type { ForecastTimeToLevel } from '../../record/forecast/forecast-time-to-level.js'
import type { FlagCounts } from '../../record/quality/flags.js'
import type { Known } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { ShotAnswers } from '../probes/answers-to-shots.js'
import type { NightDryDown, ShotFree } from '../probes/last-night.js'
import type { WaterBalance } from '../water/water-balance.js'
import type { ClimateDemand } from '../weather/climate-demand.js'
import type { DayLight } from '../weather/light-of-day.js'
import type { LevelLimits, MediumAtRest } from './zone-levels.js'

/** A rise of the water content that a shot made, as one probe saw it. */
export interface SeenShot {
  /** Last reading before the rise. Unit: s. */
  readonly start: number
  /** Highest reading. Unit: s. */
  readonly peak: number
  /** By how much the water content rose. Unit: m³/m³. */
  readonly rise: number
}

/** The level to which shots that fill the container drain back at one probe. */
export interface DrainedLevel {
  /** Median of the upper half of the levels after shots. Unit: m³/m³. */
  readonly level: number
  /** Half of the span of the middle half of them. Unit: m³/m³. */
  readonly spread: number
  /** How many levels there are in that half. Unit: 1. */
  readonly shots: number
  /** When it was found; the end of the day, or of an earlier day whose level is remembered. Unit: s. */
  readonly at: number
}

/** What one probe says of the day. */
export interface ProbeDay {
  readonly name: string
  /** Readings of the day by what the tests say. */
  readonly counts: FlagCounts
  /** Readings of the day outside the span of the calibration. Unit: 1. */
  readonly extrapolated: number
  /** Lowest and highest water content that can be trusted. Unit: m³/m³. */
  readonly range: Known<{ readonly min: number; readonly max: number }>
  readonly shots: readonly SeenShot[]
  /** How it answered to the openings of the valve, where they are logged. */
  readonly answers?: ShotAnswers
  readonly drainedLevel: Known<DrainedLevel>
  /** Its own limits. */
  readonly limits: Known<LevelLimits>
  readonly night: Known<NightDryDown>
  /** Median of the last three good readings, within three hours of the end of the day or half an hour of the last row of one under way. Unit: m³/m³. */
  readonly last: Known<number>
  /** When it reaches its own refill point if nobody waters, from its last reading on, with bands that hold. */
  readonly timeToRefill: ForecastTimeToLevel | { readonly known: false; readonly reason: 'not-used' }
  /** Water that its container uses in the hour after its last reading if nobody waters, with bands that hold; also while the day goes on. */
  readonly nextHour: WaterUseAhead | { readonly known: false; readonly reason: 'not-used' }
  /** Whether it counts for the zone; if not, a finding says why. */
  readonly used: boolean
}

/** A stretch of the day without a reading that can be trusted. */
export interface ReadingGap {
  readonly probe: string
  /** Last good reading before it, or the beginning of the day. Unit: s. */
  readonly from: number
  /** First good reading behind it, or the end of the day. Unit: s. */
  readonly to: number
}

/** Temperature of the root zone on a day. */
export interface RootZoneTemperature {
  /** Unit: °C. */
  readonly min: number
  /** Unit: °C. */
  readonly max: number
  /** Unit: °C. */
  readonly mean: number
}

/** The zone at the end of the day, or at the last reading of one under way, from the probes that count, each shifted by its own level. */
export interface ZoneLevel {
  /** Mean water content. Unit: m³/m³. */
  readonly mean: number
  /** Share of the weight of all probes that counts. Unit: 1. */
  readonly coverage: number
  readonly limits: LevelLimits
  /** Where the full point comes from. */
  readonly from: 'level-after-drain' | 'container-capacity'
}

/** What is known of a day that is not over: its last reading is more than three hours before its end, and no later one has come. */
export interface DayUnderWay {
  /** Its last reading: what is later has not happened yet. Unit: s. */
  readonly at: number
  /** Radiation that was expected for this day, lamps included, where a forecast was given. Unit: W/m². */
  readonly expectedRadiation?: number
  /** Water that a container should use on this day, learned from the days before it, with bands that hold. Unit: L. */
  readonly use: WaterUseOfNextDay
  /** Water that a container used in the 24 hours before its last reading. Unit: L. */
  readonly usedLately: Known<number>
}

/** One local day of a zone: plain data. */
export interface ZoneDay {
  readonly zone: string
  /** Local date, as `2026-05-19`. */
  readonly date: string
  /** Local midnight. Unit: s. */
  readonly from: number
  /** Next local midnight. Unit: s. */
  readonly to: number
  /** Rows of readings on the day. Unit: 1. */
  readonly readings: number
  /** What is known of the day while it is not over: its light to come is that of the day before, its climate that of the last 24 hours. */
  readonly underWay?: DayUnderWay
  readonly light: DayLight
  readonly medium: Known<MediumAtRest>
  readonly probes: readonly ProbeDay[]
  readonly gaps: readonly ReadingGap[]
  /** The longest stretch without a shot that a shot of the day ended: the night, whatever the light does. */
  readonly shotFree: Known<ShotFree>
  readonly level: Known<ZoneLevel>
  readonly balance: WaterBalance
  /** Times of the openings of the valve on the day, where they are logged. Unit: s. */
  readonly openings: readonly number[]
  readonly climate: Known<ClimateDemand>
  /** Radiation that is expected for the next day, lamps included, where a forecast was given. Unit: W/m². */
  readonly expectedRadiation?: number
  /** Water that a container should use on the next day, learned from the days so far, with bands that hold. Unit: L. */
  readonly nextUse: WaterUseOfNextDay
  readonly rootTemperature: Known<RootZoneTemperature>
  readonly findings: readonly ZoneFinding[]
}
