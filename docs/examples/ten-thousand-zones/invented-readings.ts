import type { ZoneReading } from './zone-step.js'

/** An invented day of readings: every zone dries at a speed of its own, one in a hundred falls silent at noon. */
export function inventedReadings(zones: number, stepsADay: number): ZoneReading[] {
  const readings: ZoneReading[] = []
  for (let i = 0; i < stepsADay; i++) {
    for (let z = 0; z < zones; z++) {
      const content = 0.61 - ((((z % 17) + 5) * i) / stepsADay) * 0.008 + 0.002 * Math.sin(z + i)
      readings.push({
        zone: `zone-${z}`,
        ordinal: i + 1,
        now: (i * 86400) / stepsADay,
        waterContent: z % 100 === 7 && i > stepsADay / 2 ? null : content,
      })
    }
  }
  return readings
}
