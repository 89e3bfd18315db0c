import { above, below, type Found } from './beyond.js'
import type { Limits } from './checked-settings.js'

/** No probe in a medium shows water sooner, and hardly one sends more often. Own judgement, no source. Unit: s. */
const SOON = 60
/** Water reaches a probe of a container in less, and no timer asks so often. Own judgement, no source. Unit: s. */
const LATE = 7200
const AT_ONCE = 1
/** In a reading so old a zone in bright sun may have dried by a shot or two. Own judgement, no source. Unit: s. */
const OLD = 7200
/** In the dark a probe that sends tenths of a percent shows the same number for as long. Own judgement, no source. Unit: s. */
const STILL = 1800
/** Local clocks differ from universal time by whole quarters of an hour: common practice, no source. Unit: s. */
const QUARTER = 900
/** Hours or minutes of a day that were given as seconds all lie before this. Unit: s. */
const MINUTES_OF_DAY = 1440
const DAY = 86400

/** What the times of a zone leave unguarded, or have most likely wrong. */
export function doubtsOfTimes(limits: Limits): Found[] {
  const { allowed, closesByItself, decideEvery, lag, maxAge, maxUnchanged, ahead } = limits
  return [
    allowed >= DAY ? { code: 'day-and-night', level: 'note', about: 'allowedHours' } : null,
    nearMidnight(limits),
    tooSeldom(limits),
    closesByItself ? null : { code: 'valve-needs-decisions', level: 'caution', about: 'valveClosesByItself' },
    decideEvery === null
      ? { code: 'pace-unknown', level: 'note', about: 'decideEvery' }
      : below('pace-too-fast', 'decideEvery', decideEvery, AT_ONCE, 's'),
    below('shows-at-once', 'probeLag', lag, SOON, 's'),
    above('shows-too-late', 'probeLag', lag, LATE, 's'),
    below('readings-too-old-at-once', 'maxReadingAge', maxAge, SOON, 's'),
    above('old-readings-decide', 'maxReadingAge', maxAge, OLD, 's'),
    below('frozen-told-at-once', 'maxUnchanged', maxUnchanged, STILL, 's'),
    above('frozen-told-late', 'maxUnchanged', maxUnchanged, DAY, 's'),
    ahead % QUARTER === 0
      ? null
      : { code: 'ahead-by-no-quarter', level: 'caution', about: 'ahead', value: ahead, unit: 's' },
  ]
}

/** Hours that begin or end within the first minutes of a day, midnight itself left out. */
function nearMidnight({ hours }: Limits): Found {
  const ends = hours.flatMap(({ from, to }) => [from, to > DAY ? to - DAY : to])
  const end = ends.find((time) => time > 0 && time <= MINUTES_OF_DAY)
  return end === undefined
    ? null
    : {
        code: 'hours-at-midnight',
        level: 'caution',
        about: 'allowedHours',
        value: end,
        limit: MINUTES_OF_DAY,
        unit: 's',
      }
}

/** Shots, and longer openings by time, that the pauses leave room for. */
function tooSeldom({ hours, run, maxRun, rest, lag, usual, shot, litresPerSecond }: Limits): Found {
  const room = (open: number, pause: number) =>
    hours.reduce((sum, { from, to }) => sum + Math.max(0, Math.floor((to - from + pause) / (open + pause))), 0)
  const byTime = room(maxRun, Math.max(rest, lag)) * maxRun * litresPerSecond
  return below('too-few-shots-for-use', 'usualPerDay', Math.min(room(run, rest) * shot, byTime), usual, 'L')
}
