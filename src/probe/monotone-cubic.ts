import { InputError } from '../quantity/errors.js'
import type { CalibrationKnot } from './calibration.js'

/** A reading with the weighted mean of the water contents of all samples that have it. */
export interface Level {
  readonly reading: number
  readonly waterContent: number
  readonly weight: number
}

/** Samples by rising reading, those of one reading made into one. */
export function levelsOf(
  readings: readonly number[],
  waterContents: readonly number[],
  weights: readonly number[],
): Level[] {
  const order = readings.map((_, i) => i).sort((a, b) => readings[a]! - readings[b]!)
  const levels: Level[] = []
  for (const i of order) {
    const [reading, waterContent, weight] = [readings[i]!, waterContents[i]!, weights[i]!]
    const last = levels.at(-1)
    if (last?.reading !== reading) levels.push({ reading, waterContent, weight })
    else {
      const total = last.weight + weight
      const mean = last.waterContent + ((waterContent - last.waterContent) * weight) / total
      levels[levels.length - 1] = { reading, waterContent: mean, weight: total }
    }
  }
  return levels
}

/**
 * Knots of the cubic through the levels that rises or falls all the way: slopes after fritsch-1984, with the slope of a parabola at the ends, or none where that would turn.
 */
export function monotoneKnots(levels: readonly Level[]): CalibrationKnot[] {
  const chords: number[] = []
  const widths: number[] = []
  for (let i = 1; i < levels.length; i++) {
    const [a, b] = [levels[i - 1]!, levels[i]!]
    widths.push(b.reading - a.reading)
    chords.push((b.waterContent - a.waterContent) / (b.reading - a.reading))
    if (chords[i - 1]! * chords[0]! <= 0)
      throw new InputError(
        'samples',
        `the water content ${chords[0]! > 0 ? 'rises' : 'falls'} with the reading at first, but not from ${a.waterContent} m³/m³ at ${a.reading} to ${b.waterContent} m³/m³ at ${b.reading}`,
        'read and weigh these two samples again, or fit a line or a parabola, which smooth small disorder',
      )
  }
  const last = levels.length - 1
  return levels.map(({ reading, waterContent }, i) => {
    let slope: number
    if (i === 0) slope = endSlope(widths[0]!, widths[1]!, chords[0]!, chords[1]!)
    else if (i === last) slope = endSlope(widths[i - 1]!, widths[i - 2]!, chords[i - 1]!, chords[i - 2]!)
    else {
      const [h1, h2, d1, d2] = [widths[i - 1]!, widths[i]!, chords[i - 1]!, chords[i]!]
      const share = (h1 + 2 * h2) / (3 * (h1 + h2))
      slope = (d1 * d2) / (share * d2 + (1 - share) * d1)
    }
    return { reading, waterContent, slope }
  })
}

function endSlope(h1: number, h2: number, d1: number, d2: number): number {
  const slope = ((2 * h1 + h2) * d1 - h1 * d2) / (h1 + h2)
  // Chords of one sign keep it below twice the first chord; it only can be too flat.
  return slope * d1 > 0 ? slope : 0
}
