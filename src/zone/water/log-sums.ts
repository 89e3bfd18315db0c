import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneReason } from '../findings/zone-reason.js'
import type { WateringColumns } from '../record/zone-window.js'
import type { Zone } from '../zone.js'

/** A day never gives or drains so many times the volume of the medium, but millilitres taken for litres do. */
const MAX_FILLS = 50
/** Nor does one opening so many times. */
const MAX_FILLS_OF_ENTRY = 10
/** A scale under the drain may read so little below nothing, as a share of the medium. */
const MIN_FILL = -0.001

/** Entries of the log from the first to before the end. */
interface Entries {
  readonly a: number
  readonly b: number
  readonly zone: Zone
}

/** The sum of the volumes of some entries, where each of them can be. */
export function sumOf(
  column: Float64Array,
  { a, b, zone }: Entries,
  reason: ZoneReason | undefined,
  missing: ZoneReason,
): Known<number> {
  if (reason !== undefined) return unknown(reason)
  const medium = zone.container.substrateVolume
  const max = zone.wateringLog === 'days' ? MAX_FILLS : MAX_FILLS_OF_ENTRY
  let sum = 0
  let possible = true
  for (let i = a; i < b; i++) {
    const volume = column[i]!
    sum += volume
    possible &&= !(volume < MIN_FILL * medium || volume > max * medium)
  }
  if (!possible) return unknown('log-impossible')
  if (Number.isNaN(sum)) return unknown(missing)
  return sum >= 0 && sum <= MAX_FILLS * medium ? known(sum) : unknown('log-impossible')
}

/** Saltier than sea water, of 53 dS/m (from memory), is no feed and no drain: such numbers are microsiemens, or no reading. Unit: dS/m. */
const MAX_EC = 60

/** Volume-weighted mean of a conductivity, over the entries that have both. */
export function weightedEC(
  watering: WateringColumns,
  name: 'feedEC' | 'drainEC',
  volume: 'given' | 'drained',
  a: number,
  b: number,
): Known<number> {
  let [water, salt] = [0, 0]
  let impossible = false
  for (let i = a; i < b; i++) {
    const [v, ec] = [watering[volume][i]!, watering[name][i]!]
    if (!(v > 0) || Number.isNaN(ec)) continue
    if (ec < 0 || ec > MAX_EC) {
      impossible = true
      continue
    }
    water += v
    salt += v * ec
  }
  return water > 0 ? known(salt / water) : unknown(impossible ? 'numbers-impossible' : 'not-logged')
}
