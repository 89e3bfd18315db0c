import type { ReasonWords } from '../../quantity/explained.js'
import type { OwnZoneReason } from '../findings/zone-reason.js'

/** Why a result of a zone is not known. */
export const ZONE_REASON_WORDS: ReasonWords<OwnZoneReason> = {
  'no-bench-test': ['the medium has no bench test'],
  'no-watering-log': ['there is no log of water given and drained'],
  'no-entry-on-this-day': ['the log has no entry on this day'],
  'given-not-logged': ['an entry of the log has no volume given'],
  'drain-not-logged': ['an entry of the log has no volume drained'],
  'log-impossible': ['the log has impossible volumes: check their unit and sign'],
  'rises-exceed-log': [
    'the probes rose by more than ten times the water of the log: check the unit of its volumes, and look for water that is not logged',
  ],
  'nothing-given-or-not-logged': ['nothing was given, or not all was logged'],
  'no-readings-at-midnight': ['no trusted probe has readings at both the beginning and the end of the day'],
  'day-not-over': ['the day is not over'],
  'shot-not-read-yet': ['the readings do not show the last shot yet'],
  'climate-not-recorded': ['air temperature, humidity and radiation are not all recorded'],
  'climate-has-gaps': ['the climate of the day has too many gaps'],
  'climate-impossible': ['the climate of the day has impossible numbers'],
  'not-logged': ['it is not logged'],
  'not-recorded': ['it is not recorded'],
  'numbers-impossible': ['its numbers are impossible: check their unit'],
  'no-shot-on-this-day': ['no shot was seen or logged on this day'],
  'last-shot-not-in-record': ['the record begins after the last shot'],
  'no-long-stretch-without-shots': ['no three hours passed without a shot'],
  'not-used': ['the probe is left out'],
  'no-reading-late-in-day': ['there is no late reading'],
  'no-trusted-readings': ['no reading can be trusted'],
  'no-trusted-probe': [
    'no probe can be trusted: look at plants and probes, and weigh a container before anybody waters by hand',
  ],
  'more-than-eight-probes': ['the zone has more than eight probes'],
  'full-point-not-believed': ['the full point is outside the range of believable water contents'],
  'no-log-of-openings': ['there is no log of the single openings of the valve'],
  'no-full-point': ['there is neither a level after drain nor a bench test of the medium'],
  'full-point-below-lower-limit': ['no refill point lies between the lower limit and the full point'],
  'use-not-known': ['neither the water balance nor the climate says how much the plants use'],
  'no-time-for-shots': ['the first shot would come after the last'],
  'plan-not-possible': ['the limits of the zone contradict each other'],
}
