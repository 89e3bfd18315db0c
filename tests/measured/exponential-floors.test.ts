import { readFileSync } from 'node:fs'
import { findDryDowns, findShots, fitExponentialDryDown, hours, minutes } from 'porewater'
import { describe, expect, it } from 'vitest'
import { shotLimits, slabRecord } from './walk-forward.js'

/**
 * How often levels that came later in the same stretch passed the floor of a known fit, and its asymptote.
 *
 * Hemming, S. et al. (2020), Autonomous Greenhouse Challenge, Second Edition, 4TU.ResearchData,
 * doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7 (four probes in slabs); the soils are those of folders 04 and 09 of the open data,
 * plot E1 and the station at Manhattan, Kansas, with a value a day.
 */
const folder = process.env.POREWATER_DATA ?? ''

interface Course {
  readonly time: readonly number[]
  readonly content: readonly number[]
}
/** Two steps of rounding below a level are no passing. */
const PASSED = 0.002

function passed(courses: readonly Course[], moments: (course: Course) => readonly number[], together: number) {
  let [known, asymptote, floor] = [0, 0, 0]
  for (const course of courses)
    for (const k of moments(course)) {
      const fit = fitExponentialDryDown({ time: course.time.slice(0, k), waterContent: course.content.slice(0, k) })
      if (!fit.known) continue
      const later = course.content.slice(k)
      const middles = later.slice(together - 1).map((_, j) => {
        const few = later.slice(j, j + together).sort((a, b) => a - b)
        return few[few.length >> 1]!
      })
      const lowest = Math.min(...middles)
      known++
      if (lowest < fit.asymptote - PASSED) asymptote++
      if (lowest < fit.floor - PASSED) floor++
    }
  return { known, asymptote: asymptote / known, floor: floor / known }
}

function slabs(): Course[] {
  return [2, 5].flatMap((compartment) => {
    const { time, probes } = slabRecord(folder, compartment)
    return probes.flatMap((waterContent) => {
      const shots = findShots({ time, waterContent, ...shotLimits })
      const drainTime = hours(1)
      const found = findDryDowns({
        time,
        waterContent,
        shots,
        drainTime,
        maxStep: minutes(11),
        minDuration: hours(2),
      })
      return found.map(({ first, last }) => {
        const good = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(
          (i) => !Number.isNaN(waterContent[i]),
        )
        return { time: good.map((i) => time[i]!), content: good.map((i) => waterContent[i]!) }
      })
    })
  })
}

/** From one rise to the next, days that follow each other. */
function soils(): Course[] {
  const files: [string, string[]][] = [
    ['04_soil_plot_water_content_and_drainage/plot_E1_daily.csv', ['1', '2']],
    ['09_us_climate_network_soil_daily/manhattan_kansas_2010_2017.csv', ['5cm', '10cm', '20cm']],
  ]
  return files.flatMap(([file, depths]) => {
    const [head = '', ...rows] = readFileSync(`${folder}/${file}`, 'utf8').trim().split('\n')
    return depths.flatMap((depth) => {
      const column = head.split(',').indexOf(`water_content_${depth}_m3_m3`)
      const courses: { time: number[]; content: number[] }[] = [{ time: [], content: [] }]
      for (const row of rows.map((line) => line.split(','))) {
        const [day, level] = [Date.parse(row[0]!) / 1000, row[column] ? Number(row[column]) : Number.NaN]
        const { time, content } = courses.at(-1) as { time: number[]; content: number[] }
        const goesOn = day - (time.at(-1) ?? day) <= 86400 && level - (content.at(-1) ?? level) <= 0.006
        if (!goesOn) courses.push({ time: [], content: [] })
        if (Number.isNaN(level)) continue
        courses.at(-1)?.time.push(day)
        courses.at(-1)?.content.push(level)
      }
      return courses.filter(({ time }) => time.length >= 10)
    })
  })
}

describe.skipIf(!folder)('a known floor', () => {
  it.each([
    {
      name: 'slabs, every other hour',
      courses: slabs,
      together: 5,
      moments: ({ time }: Course) =>
        Array.from({ length: 11 }, (_, j) => time.findIndex((t) => t > time[0]! + 3600 * (3 + 2 * j))).filter(
          (k) => k >= 12 && time.length - k >= 24,
        ),
    },
    {
      name: 'soils, every day from the ninth',
      courses: soils,
      together: 1,
      moments: ({ time }: Course) => time.flatMap((_, k) => (k >= 9 && k < time.length - 1 ? [k] : [])),
    },
  ])('is seldom passed by what comes, the asymptote often ($name)', ({ name, courses, moments, together }) => {
    const found = passed(courses(), moments, together)
    process.stdout.write(`known floors, ${name}: ${JSON.stringify(found)}\n`)
    expect(found.known).toBeGreaterThan(300)
    expect(found.asymptote).toBeGreaterThan(0.2)
    expect(found.asymptote).toBeLessThan(0.5)
    expect(found.floor).toBeLessThanOrEqual(0.1)
  })
})
