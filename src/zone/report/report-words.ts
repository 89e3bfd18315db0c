import { fixed } from '../../quantity/in-words.js'
import { explainZoneFinding } from '../explain-zone-finding.js'
import type { Known } from '../findings/known.js'
import type { ZoneReason } from '../findings/zone-reason.js'

/** A moment by the clock of the zone. */
export type Clock = (time: number) => string

export const inHours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`
export const asMillilitres = (volume: number) => fixed(1000 * volume, 0)
export const counted = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`
export const told = <T>(
  what: Known<T> | { readonly known: false; readonly reason: ZoneReason },
  say: (value: T) => string,
) => (what.known ? say(what.value) : `not known (${explainZoneFinding({ code: what.reason }).message})`)
/** A code in words. */
export const spelt = (code: string) => code.replaceAll('-', ' ')
