import { readFileSync } from 'node:fs'
import {
  checkReadings,
  days,
  estimateNoise,
  findDryDowns,
  findShots,
  findSteps,
  findTimeBreaks,
  flatLineLimits,
  hours,
  minutes,
  overnightDryDowns,
  plateauAfterDrain,
  runReducer,
  splitRecord,
  utcFromLocal,
  watchReadings,
  watchShots,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'

// Hemming, S. et al. (2020), Autonomous Greenhouse Challenge, Second Edition, 4TU.ResearchData,
// doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7: tomato on slabs, water content every 5 minutes, civil local time.
const folder = process.env.POREWATER_DATA

/** Clock changes of the record: directive 2000/84/EC. */
const offsets = [
  { from: Date.UTC(2019, 9, 27, 1) / 1000, ahead: 3600 },
  { from: Date.UTC(2020, 2, 29, 1) / 1000, ahead: 7200 },
]
const springChange = Date.UTC(2020, 2, 29, 1) / 1000

function column(file: string, name: string): { local: Float64Array; value: Float64Array } {
  const [head = '', ...lines] = readFileSync(`${folder}/01_greenhouse_tomato_slab_5min/${file}`, 'utf8')
    .trim()
    .split('\n')
  const at = head.split(',').indexOf(name)
  const cells = lines.map((line) => line.split(','))
  return {
    local: Float64Array.from(cells, (row) => Date.parse(`${row[0]}Z`) / 1000),
    value: Float64Array.from(cells, (row) => (row[at] === '' || row[at] === undefined ? Number.NaN : Number(row[at]))),
  }
}

/** Light from the radiation of the record: a period each day from the first to the last reading above 5 W/m². */
function lightPeriods() {
  const { local, value } = column('outside_weather_5min.csv', 'global_radiation_W_m2')
  const { time } = utcFromLocal({ local, offsets })
  const byDay = new Map<number, { start: number; end: number }>()
  time.forEach((t, i) => {
    if (Number.isNaN(t) || !(value[i]! > 5)) return
    const day = Math.floor(t / 86400)
    const seen = byDay.get(day)
    byDay.set(day, { start: seen?.start ?? t, end: t + 1 })
  })
  return [...byDay.values()].filter(({ start, end }) => end - start > 3600).sort((a, b) => a.start - b.start)
}

const limits = { minRise: waterContentChange(0.008), maxRiseTime: minutes(40), maxStep: minutes(11) }
const runs = [2, 5].flatMap((compartment) => [1, 2].map((sensor) => [compartment, sensor] as const))

describe.skipIf(!folder)('five-minute records of slabs', () => {
  it.each(runs)(
    'compartment %i, sensor %i: gaps and the clock change are breaks, and nothing reaches across',
    (compartment, sensor) => {
      const { local, value } = column(`slab_5min_compartment_${compartment}.csv`, `water_content_${sensor}_m3_m3`)
      const { time, skipped, repeated } = utcFromLocal({ local, offsets })
      // The hour from 02:00 to 03:00 on 29 March does not exist; its rows are empty in the record.
      expect({ skipped, repeated }).toEqual({ skipped: 12, repeated: 0 })
      const breaks = findTimeBreaks({ time: local, value, expectedStep: minutes(5) })
      const change = breaks.find(({ index }) => time[index] === springChange)
      // Two readings before it are missing as well.
      expect(change).toMatchObject({ kind: 'gap', seconds: 4500, mayBeClockChange: 'forward' })
      // In universal time only those are.
      const real = findTimeBreaks({ time, value, expectedStep: minutes(5) }).find(
        ({ index }) => time[index] === springChange,
      )
      expect(real).toMatchObject({ kind: 'gap', seconds: 900 })
      expect(real).not.toHaveProperty('mayBeClockChange')

      const noise = estimateNoise({ value })
      const flat = flatLineLimits({ noise })
      const tests = {
        expectedStep: minutes(5),
        grossRange: { sensorMin: 0, sensorMax: 1, expectedMin: 0.2, expectedMax: 0.95 },
        spike: { suspect: 0.03, fail: 0.06, direction: 'fall' },
        rateOfChange: { max: 0.05 / 300, direction: 'fall' },
        flatLine: { tolerance: 0.0001, suspectAfter: 6, failAfter: 12 },
      } as const
      const checked = checkReadings({ time: local, value, ...tests })
      const good = value.map((x, i) => (checked.flags[i] === 4 || Number.isNaN(time[i]) ? Number.NaN : x))
      for (const clock of [local, time]) {
        const series = { time: clock, waterContent: good }
        const shots = findShots({ ...series, ...limits })
        const segments = splitRecord({ time: clock, value: good, maxStep: limits.maxStep })
        const within = (first: number, last: number) => segments.some((one) => one.first <= first && last <= one.last)
        for (const shot of shots) {
          expect(within(shot.startIndex, shot.peakIndex)).toBe(true)
          expect(shot.peak - shot.start).toBeLessThanOrEqual(2400)
        }
        const downs = findDryDowns({
          ...series,
          shots,
          drainTime: minutes(30),
          maxStep: limits.maxStep,
          minDuration: hours(2),
        })
        for (const down of downs) expect(within(down.first, down.last)).toBe(true)
        if (clock === local) continue
        const light = lightPeriods()
        const nights = overnightDryDowns({
          ...series,
          shots,
          drainTime: minutes(30),
          maxStep: limits.maxStep,
          light,
        })
        const falls = nights.flatMap((night) => (night.known ? [night.fall] : [])).sort((a, b) => a - b)
        const plateau = plateauAfterDrain({ ...series, shots, drainTime: minutes(30) })
        const steps = findSteps({
          ...series,
          shots,
          minChange: waterContentChange(0.05),
          side: 6,
          maxStep: limits.maxStep,
        })
        const stream = runReducer({
          reducer: watchShots(limits),
          inputs: Array.from(clock, (t, i) => ({ time: t, waterContent: good[i]! })),
        })
        expect(stream.outputs.flat().concat(watchShots(limits).finish(stream.state))).toEqual(shots)
        const watch = watchReadings(tests)
        const some = 3000
        const verdicts = runReducer({
          reducer: watch,
          inputs: Array.from(local.subarray(0, some), (t, i) => ({ time: t, value: value[i]! })),
        }).outputs.flat()
        expect(verdicts.map(({ flag }) => flag)).toEqual(Array.from(checked.flags.subarray(0, some - 1)))
        process.stdout.write(
          `${JSON.stringify({
            compartment,
            sensor,
            rows: value.length,
            counts: checked.counts,
            noise: noise.known ? { deviation: noise.standardDeviation, resolved: noise.resolved } : noise.reason,
            flatLimits: flat.known,
            breaks: {
              local: breaks.length,
              universal: findTimeBreaks({ time, value, expectedStep: minutes(5) }).length,
            },
            stretches: segments.length,
            shots: shots.length,
            shotsPerDay: shots.length / (segments.reduce((sum, { start, end }) => sum + end - start, 0) / days(1)),
            dryDowns: downs.length,
            nights: { all: nights.length, known: falls.length, medianFall: falls[falls.length >> 1] },
            plateau,
            steps: steps.length,
          })}\n`,
        )
      }
    },
  )
})
