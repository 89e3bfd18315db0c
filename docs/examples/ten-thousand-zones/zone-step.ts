/**
 * One zone's logic run for many zones by an engine that people run already: the engine keeps one row of state for each zone and
 * calls a pure function with it. Nothing else is remembered, so rows may live anywhere and move at any time.
 */
import {
  controlWatering,
  hours,
  inMillilitres,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  type WateringDecision,
  type WateringState,
  waterContent,
} from 'porewater'

/** One reading of one zone, as it comes out of a queue. */
export interface ZoneReading {
  readonly zone: string
  readonly now: number
  /** Which reading of its zone it is, counted from one by the gateway: so that doubles and gaps are seen. */
  readonly ordinal: number
  /** Water content, or null where the probe was silent. */
  readonly waterContent: number | null
}

export interface ZoneDecision {
  readonly zone: string
  readonly ordinal: number
  readonly now: number
  readonly open: boolean
  readonly reason: WateringDecision['reason']
  readonly givenMillilitres: number
}

const reducer = controlWatering({
  lower: waterContent(0.55),
  upper: waterContent(0.62),
  minBelievable: waterContent(0.2),
  maxBelievable: waterContent(0.85),
  substrateVolume: litres(12),
  flow: litresPerHour(4),
  shot: millilitres(300),
  maxRunTime: minutes(8),
  maxPerDay: litres(4),
  usualPerDay: litres(2.5),
  minRest: minutes(20),
  probeLag: minutes(15),
  maxReadingAge: hours(1),
  maxUnchanged: hours(8),
  maxShotsWithoutRise: 4,
  allowedHours: [{ from: hours(6), to: hours(20) }],
  valveClosesByItself: true,
  inDoubt: 'staying-closed',
})

/** The function that an engine calls: the row of a zone and a reading in, the next row and a decision out. All of it is JSON. */
export function step(row: string | undefined, reading: ZoneReading): { row: string; decision: ZoneDecision } {
  const state = row === undefined ? reducer.start : (JSON.parse(row) as WateringState)
  const { now, waterContent: content } = reading
  const readings = content === null ? [] : [{ waterContent: content, time: now }]
  const [next, decision] = reducer.step(state, { now, readings, locked: false })
  return {
    row: JSON.stringify(next),
    decision: {
      zone: reading.zone,
      ordinal: reading.ordinal,
      now: reading.now,
      open: decision.open,
      reason: decision.reason,
      givenMillilitres: inMillilitres(decision.givenInDay),
    },
  }
}
