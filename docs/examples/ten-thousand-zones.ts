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
  /** Water content, or null where the probe was silent. */
  readonly waterContent: number | null
}

export interface ZoneDecision {
  readonly zone: string
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
      now: reading.now,
      open: decision.open,
      reason: decision.reason,
      givenMillilitres: inMillilitres(decision.givenInDay),
    },
  }
}

/** A stand-in for the engine: readings go to the partition of their zone, and each partition keeps only its own rows. */
export function runPartitioned(
  readings: readonly ZoneReading[],
  partitions: number,
): { decisions: ZoneDecision[]; rows: Map<string, string> } {
  const rows = Array.from({ length: partitions }, () => new Map<string, string>())
  const decisions: ZoneDecision[] = []
  for (const reading of readings) {
    const own = rows[hash(reading.zone) % partitions] as Map<string, string>
    const { row, decision } = step(own.get(reading.zone), reading)
    own.set(reading.zone, row)
    decisions.push(decision)
  }
  return { decisions, rows: new Map(rows.flatMap((part) => [...part])) }
}

/** Fowler, Noll and Vo's hash (FNV-1a, 32 bits), as many engines use to spread keys. */
function hash(text: string): number {
  let value = 0x811c9dc5
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193)
  return value >>> 0
}

/** An invented day of readings: every zone dries at a speed of its own, one in a hundred falls silent at noon. */
export function inventedReadings(zones: number, stepsADay: number): ZoneReading[] {
  const readings: ZoneReading[] = []
  for (let i = 0; i < stepsADay; i++) {
    for (let z = 0; z < zones; z++) {
      const content = 0.61 - ((((z % 17) + 5) * i) / stepsADay) * 0.008 + 0.002 * Math.sin(z + i)
      readings.push({
        zone: `zone-${z}`,
        now: (i * 86400) / stepsADay,
        waterContent: z % 100 === 7 && i > stepsADay / 2 ? null : content,
      })
    }
  }
  return readings
}
