import { middle } from '../../middle.js'
import { isFarApart } from './leap-by-water.js'
import type { ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** Readings whose times tell how far apart they lie: few enough to follow a change at once, and enough that one gap changes nothing. */
const READINGS = 6

/** Time between the newest readings by their own times, whatever messages they came in; zero where there are no two. Unit: s. */
export function timeApart({ times }: Pick<ProbeWatch, 'times'>): number {
  const late = times.slice(-READINGS)
  return late.length < 2 ? 0 : middle(late.slice(1).map((time, i) => time - late[i]!))
}

/** Whether its readings lie so far apart that a shot between two of them looks like a leap. */
export function isSlow(probe: Pick<ProbeWatch, 'times'>, zone: Pick<Watched, 'responseTime'>): boolean {
  return isFarApart(timeApart(probe), zone)
}
