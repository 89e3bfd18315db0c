import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import {
  demandCourse,
  fraction,
  instant,
  litres,
  litresPerHour,
  minutes,
  planDay,
  seconds,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Would the plan for each day, made from the days before it alone, have given the water that the growers gave? Hemming, S. and
 * others (2020), Autonomous Greenhouse Challenge, second edition, doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7.
 */
const data = process.env.POREWATER_DATA

interface Day {
  readonly date: string
  /** Water given and drained, litres a square metre. */
  readonly given: number
  readonly drained: number
  /** Light of the day, J/cm², and its course in steps of ten minutes. */
  readonly light: number
  readonly course: readonly number[]
}

function table(file: string): string[][] {
  return readFileSync(join(data as string, '01_greenhouse_tomato_slab_5min', file), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','))
}

function days(compartment: number): Day[] {
  const courses = new Map<string, number[]>()
  for (const [time, , , radiation] of table('outside_weather_5min.csv')) {
    const [date = '', clock = ''] = (time as string).split('T')
    const [h = 0, m = 0] = clock.split(':').map(Number)
    const course = courses.get(date) ?? new Array<number>(144).fill(0)
    // Five minutes of W/m² are 0.03 J/cm² a watt.
    course[Math.floor((h * 60 + m) / 10)] =
      course[Math.floor((h * 60 + m) / 10)]! + Math.max(0, Number(radiation)) * 0.03
    courses.set(date, course)
  }
  return table(`irrigation_drain_daily_compartment_${compartment}.csv`).flatMap(
    ([date = '', given = '', drained = '']) => {
      const course = courses.get(date)
      if (course === undefined || given === '' || drained === '') return []
      return [
        { date, given: Number(given), drained: Number(drained), light: course.reduce((a, b) => a + b, 0), course },
      ]
    },
  )
}

/** The plan of a day for one square metre with 12 L of slab, from what the two weeks before it teach. */
function planned(before: readonly Day[], light: Day, content: number): { applied: number; waterContent: number } {
  // Lamps and heating use water too, so that use is a base and a part that follows the light, learned from two weeks.
  const weeks = before.slice(-14)
  const mean = (of: (day: Day) => number) => weeks.reduce((total, day) => total + of(day) / weeks.length, 0)
  const [meanUse, meanLight] = [mean((day) => day.given - day.drained), mean((day) => day.light)]
  const spread = mean((day) => (day.light - meanLight) ** 2)
  const slope = Math.max(0, mean((day) => (day.light - meanLight) * (day.given - day.drained - meanUse)) / spread)
  const use = meanUse + slope * (light.light - meanLight)
  const drain = mean((day) => day.drained) / mean((day) => day.given)
  const start = 1580515200
  const lit = light.course.flatMap((value, i) => (value > 1 ? [i] : []))
  const plan = planDay({
    start: instant(start),
    step: minutes(10),
    demand: demandCourse({ total: litres(Math.max(0, use)), light: light.course, evenShare: fraction(0.15) }),
    container: {
      substrateVolume: litres(12),
      containerCapacity: waterContent(0.75),
      minWaterContent: waterContent(0.1),
      bypass: fraction(0.05),
      drainLag: minutes(15),
    },
    waterContent: waterContent(content),
    refillPoint: waterContent(0.725),
    fullPoint: waterContent(0.75),
    drainFraction: fraction(Math.min(0.9, Math.max(0, drain))),
    firstShot: instant(start + ((lit[0] ?? 40) * 10 + 60) * 60),
    lastShot: instant(start + ((lit.at(-1) ?? 100) * 10 - 90) * 60),
    emitters: 4,
    emitterFlow: litresPerHour(2),
    lineFill: seconds(0),
    minRunTime: seconds(60),
    maxRunTime: minutes(30),
    minRest: minutes(0),
    maxPerDay: litres(20),
    trigger: { by: 'level' },
  })
  return { applied: plan.applied, waterContent: plan.waterContent.at(-1) as number }
}

function error(pairs: readonly (readonly [got: number, wanted: number])[]): { bias: number; rmse: number } {
  const n = pairs.length
  return {
    bias: pairs.reduce((sum, [got, wanted]) => sum + (got - wanted) / n, 0),
    rmse: Math.sqrt(pairs.reduce((sum, [got, wanted]) => sum + (got - wanted) ** 2 / n, 0)),
  }
}

describe.skipIf(data === undefined).each([2, 5])(
  'a plan for each day of February to April, compartment %i',
  (compartment) => {
    it('gives what was given, but for a fifth', () => {
      const all = days(compartment)
      const wanted = all.filter((day) => day.date >= '2020-02-01' && day.date <= '2020-04-30')
      const run = (light: (i: number) => Day) => {
        // Each day begins with what the plan of the day before leaves.
        let content = 0.7
        return error(
          wanted.map((day) => {
            const i = all.indexOf(day)
            const plan = planned(all.slice(0, i), light(i), content)
            content = plan.waterContent
            return [plan.applied, day.given] as const
          }),
        )
      }
      const mean = wanted.reduce((sum, day) => sum + day.given / wanted.length, 0)
      const persistent = run((i) => all[i - 1]!)
      const knowing = run((i) => all[i]!)
      const yesterday = error(wanted.map((day) => [all[all.indexOf(day) - 1]!.given, day.given]))
      process.stdout.write(
        `compartment ${compartment}: ${wanted.length} days, ${mean.toFixed(2)} L/m² given a day; ${[
          ['light of the day before', persistent],
          ['light of the day itself', knowing],
          ['the water of the day before', yesterday],
        ]
          .map(
            ([name, e]) =>
              `${name}: bias ${(e as typeof yesterday).bias.toFixed(2)}, RMSE ${(e as typeof yesterday).rmse.toFixed(2)}`,
          )
          .join('; ')}\n`,
      )
      expect(wanted.length).toBeGreaterThan(85)
      for (const { bias, rmse } of [persistent, knowing]) {
        expect(Math.abs(bias)).toBeLessThan(0.1 * mean)
        expect(rmse).toBeLessThan(0.2 * mean)
      }
    })
  },
)
