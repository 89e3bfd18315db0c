import type { Duration } from '../../quantity/generated/kinds.js'
import type { CheckedFault } from '../faults/fault.js'
import type { FaultSign } from '../faults/fault-signs.js'
import type { TimeToAlarm } from './rehearsal-reason.js'

/** An alarm that was raised. */
export interface HeardAlarm {
  /** When, from the start of the rehearsal. Unit: s. */
  readonly time: number
  /** The controller's own name of it. */
  readonly alarm: string
  /** Whether it names a fault that lasts, or lasted until a day ago. */
  readonly right: boolean
}

export interface Ears {
  readonly hear: (alarms: readonly string[], time: number) => void
  readonly heard: readonly HeardAlarm[]
  /** Time from the start of each fault to an alarm that names it; the same for one that stands first or second. */
  readonly named: readonly TimeToAlarm[]
  readonly namedFirst: readonly TimeToAlarm[]
}

/** After the end of a fault its alarm may still come for so long. */
const AFTER = 86400

export function earsFor(
  faults: readonly CheckedFault[],
  alarmsFor: Readonly<Partial<Record<FaultSign, readonly string[]>>> | undefined,
): Ears {
  let standing: readonly string[] = []
  const heard: HeardAlarm[] = []
  const named = faults.map(
    ({ row }): TimeToAlarm => ({ known: false, reason: row.sign === 'none' ? 'nothing-to-name' : 'never-named' }),
  )
  const namedFirst = [...named]
  const names = ({ row }: CheckedFault, alarm: string) =>
    alarmsFor === undefined || (alarmsFor[row.sign]?.includes(alarm) ?? false)
  const concerns = (fault: CheckedFault, time: number) => time >= fault.from && time <= fault.until + AFTER
  return {
    heard,
    named,
    namedFirst,
    hear: (alarms, time) => {
      if (alarms.length === 0 && standing.length === 0) return
      for (const alarm of new Set(alarms)) {
        if (standing.includes(alarm)) continue
        const right = faults.some((fault) => concerns(fault, time) && names(fault, alarm))
        heard.push({ time, alarm, right })
      }
      faults.forEach((fault, i) => {
        if (!concerns(fault, time)) return
        const place = alarms.findIndex((alarm) => names(fault, alarm))
        if (place < 0) return
        const since: TimeToAlarm = { known: true, time: (time - fault.from) as Duration }
        if (!named[i]!.known) named[i] = since
        if (place < 2 && !namedFirst[i]!.known) namedFirst[i] = since
      })
      standing = alarms
    },
  }
}
