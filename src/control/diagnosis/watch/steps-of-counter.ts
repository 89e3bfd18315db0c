/** Steps are told with rounded numbers. Chosen. Unit: 1. */
const ROUNDED = 0.02

/** The largest grain of which what came is a multiple too, as far as one can tell. Unit: L. */
export function grainOf(grain: number, came: number): number {
  if (grain === 0) return came
  const left = Math.abs(came - Math.round(came / grain) * grain)
  return Math.min(grain, came, left > ROUNDED * grain ? left : grain)
}

/** So much of a volume one step of a counter is at most where the counter tells of it. Chosen. Unit: 1. */
const FINE = 0.1

/** Whether a counter tells of so much water to a tenth. Unit: L. */
export function tells(step: number, volume: number): boolean {
  return step <= FINE * volume
}
