import { step, type ZoneDecision, type ZoneReading } from './zone-step.js'

/** What all zones come to in one process: rows and decisions by zone, which every other way of running them must equal. */
export function runInOneProcess(readings: readonly ZoneReading[]): {
  decisions: ZoneDecision[]
  rows: Map<string, string>
} {
  const rows = new Map<string, string>()
  const decisions: ZoneDecision[] = []
  for (const reading of readings) {
    const { row, decision } = step(rows.get(reading.zone), reading)
    rows.set(reading.zone, row)
    decisions.push(decision)
  }
  return { decisions, rows }
}
