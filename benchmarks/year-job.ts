/** An invented record of minute readings of two probes, and the whole job: quality, shots, dry-downs, balance, forecasts and proposal. */
import * as pw from 'porewater'

const zone: pw.Zone = {
  name: 'invented bench',
  container: { substrateVolume: pw.litres(14), height: pw.centimetres(12), plants: 2 },
  plantDensity: pw.plantsPerSquareMetre(2.5),
  cropCoefficient: pw.cropCoefficient(1),
  emitters: { count: 2, flow: pw.litresPerHour(2), lineFill: pw.seconds(8) },
  probes: [{ name: 'A' }, { name: 'B' }],
  place: { latitude: pw.latitude(47.5), elevation: pw.metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
  readingStep: pw.minutes(1),
  limits: {
    maxPerDay: pw.litres(9),
    minRunTime: pw.minutes(2),
    maxRunTime: pw.minutes(20),
    minRest: pw.minutes(20),
    drainFraction: pw.fraction(0.25),
    allowedFall: pw.waterContentChange(0.03),
    lowerLimit: pw.waterContent(0.12),
    minBelievable: pw.waterContent(0.05),
    maxBelievable: pw.waterContent(0.9),
    minRise: pw.waterContentChange(0.01),
    firstShotAfterLight: pw.hours(1.5),
    lastShotBeforeDark: pw.hours(4),
  },
}

/** An invented record: ten shots a day, drain, dry-down, noise, and an hour without readings each week. */
export function yearRecord(days: number): pw.ZoneRecord {
  const time: number[] = []
  const A: number[] = []
  const B: number[] = []
  const watering = { time: [] as number[], given: [] as number[], drained: [] as number[] }
  let seed = 1
  const noise = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0
    return 0.0008 * (seed / 2 ** 32 - 0.5)
  }
  let level = 0.6
  for (let i = 0; i < days * 1440; i++) {
    const minute = i % 1440
    const place = (minute - 480) % 60
    level -= minute > 360 && minute < 1200 ? 0.0001 : 0.00004
    if (minute >= 480 && minute < 1080 && place < 14) level += place < 6 ? 0.003 : -0.0009
    level += (0.6 - level) * 0.0005
    if (minute >= 480 && minute < 1080 && place === 0) {
      watering.time.push(60 * i)
      watering.given.push(0.4)
      watering.drained.push(0.1)
    }
    if (i % 10080 < 60) continue
    time.push(60 * i)
    A.push(level + noise())
    B.push(level - 0.02 + noise())
  }
  return { time, probes: { A, B }, watering }
}

/** The readings of a record as a logger writes them: a line a minute. */
export function tableOf({ time, probes }: pw.ZoneRecord): string {
  const lines = Array.from(time, (now, i) => {
    const stamp = new Date(1000 * now).toISOString().slice(0, 16)
    return `${stamp}Z,${probes.A![i]!.toFixed(4)},${probes.B![i]!.toFixed(4)}`
  })
  return `time,a,b\n${lines.join('\n')}\n`
}

/** Review of each day, with what it teaches of drying and use, and the proposal for the day after the last. */
export function wholeYear(year: pw.ZoneRecord): number {
  const { days } = pw.reviewZone({ zone, record: year })
  const proposal = pw.proposeDay({ zone, day: days[days.length - 1]! })
  return days.length + (proposal.known ? proposal.value.shots.length : 0)
}
