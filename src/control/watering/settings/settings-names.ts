import type { NamesOf } from '../../../quantity/one-of.js'
import type { AllowedHours, ProbeSettings, WateringSettings } from './settings.js'

/** Names that settings may have. */

export const WATERING_SETTINGS: NamesOf<WateringSettings> = {
  zone: 1,
  minBelievable: 1,
  maxBelievable: 1,
  substrateVolume: 1,
  flow: 1,
  shot: 1,
  maxRunTime: 1,
  maxPerDay: 1,
  usualPerDay: 1,
  backUpPerDay: 1,
  minRest: 1,
  probeLag: 1,
  maxReadingAge: 1,
  maxUnchanged: 1,
  maxShotsWithoutRise: 1,
  allowedHours: 1,
  ahead: 1,
  valveClosesByItself: 1,
  inDoubt: 1,
  refillEvery: 1,
  drainFraction: 1,
  decideEvery: 1,
  probes: 1,
  maxDisagreement: 1,
  lower: 1,
  upper: 1,
}
export const ALLOWED_HOURS: NamesOf<AllowedHours> = { from: 1, to: 1 }
export const PROBE_SETTINGS: NamesOf<ProbeSettings> = { name: 1, offset: 1 }
