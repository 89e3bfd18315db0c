import {
  diagnoseDay,
  entriesOfRecord,
  explainZoneFinding,
  followZone,
  isPorewaterError,
  proposeDay,
  reportZone,
  reviewDay,
  reviewZone,
  trustedReadings,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'
import { benchRecord, benchZone } from './bench.js'

/** Days, proposals and diagnoses are plain data: what became of them in a store must not make a plan or a sentence without a number. */
const zone = benchZone()
const record = benchRecord({ days: 9 })
const kept = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T
const day = kept(reviewZone({ zone, record }).days.at(-1)!)
const proposal = kept(proposeDay({ zone, day }))
const diagnosis = kept(diagnoseDay({ zone, record, day }))

type Path = readonly (string | number)[]
/** Every part of plain data; of a list its first entry stands for all. */
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return []
  const keys = Array.isArray(value) ? [0].slice(0, value.length) : Object.keys(value)
  return keys.flatMap((key) => {
    const own = [...path, key]
    return [own, ...pathsOf((value as Record<string | number, unknown>)[key], own)]
  })
}
/** The same with one part taken away or put in its place; what is beside the path is shared. */
function changed<T>(value: T, path: Path, part?: unknown): T {
  const [key, ...rest] = path as readonly [string | number, ...(string | number)[]]
  const copy = (Array.isArray(value) ? value.slice() : { ...value }) as Record<string | number, unknown>
  if (rest.length > 0) copy[key] = changed(copy[key], rest, part)
  else if (part !== undefined) copy[key] = part
  else if (Array.isArray(copy)) copy.splice(key as number, 1)
  else delete copy[key]
  return copy as T
}
function partOf(value: unknown, path: Path): unknown {
  return path.reduce((inside, key) => (inside as Record<string | number, unknown>)[key], value)
}
/** A number that is none, or a sentence with a hole. */
function holesIn(value: unknown): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [String(value)]
  if (typeof value === 'string') return /NaN|undefined|Infinity|\[object/.test(value) ? [value] : []
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(holesIn) : []
}
const PARTS = [undefined, null, 'x', Number.NaN, 1e300, [], {}]

/** What comes of every change: only refusals and whole results. */
function faultsOf<T>(value: T, call: (changed: T) => unknown): string[] {
  return pathsOf(value).flatMap((path) =>
    PARTS.flatMap((part) => {
      const what = `${path.join('.')} = ${Array.isArray(part) ? 'list' : String(part)}`
      try {
        const holes = holesIn(call(changed(value, path, part)))
        return holes.length === 0 ? [] : [`${what}: ${holes[0]}`]
      } catch (error) {
        return isPorewaterError(error) ? [] : [`${what}: ${(error as Error).message}`]
      }
    }),
  )
}

describe('a day that was kept and changed', () => {
  it('gives a refusal or a whole proposal, whichever part is gone or something else', () => {
    expect(faultsOf(day, (one) => proposeDay({ zone, day: one }))).toEqual([])
  })
  it('gives a refusal or a whole report', () => {
    expect(faultsOf(day, (one) => reportZone({ zone, day: one, proposal, diagnosis }))).toEqual([])
  })
  it('is refused wherever a number that the plan rests on is gone, text, or no number, by its name', () => {
    const numbers = pathsOf(day).filter((path) => typeof partOf(day, path) === 'number' && path.at(-1) !== 0)
    expect(numbers.length).toBeGreaterThan(60)
    for (const path of numbers)
      for (const part of [undefined, null, 'x', Number.NaN]) {
        // A late end may be beyond what is foreseen.
        if (path.at(-1) === 'latest' && part === undefined) continue
        const named = path.map((key) => (key === 0 ? '\\[0\\]' : key)).join('\\.?')
        expectInputError(
          () => proposeDay({ zone, day: changed(day, path, part) }),
          path[0] === 'findings' ? 'finding' : `day\\.${named}`,
        )
      }
  })
  it('is refused in milliseconds, in per cent, in millilitres, of another day or another zone', () => {
    for (const [path, by] of [
      [['from'], 1000],
      [['to'], 1000],
      [['light', 'dawn'], 1000],
      [['level', 'value', 'mean'], 100],
      [['level', 'value', 'limits', 'fullPoint'], 100],
      [['nextUse', 'use'], 1000],
      [['balance', 'use', 'value'], 1000],
      [['openings', 0], 1000],
    ] as const)
      expectInputError(() => proposeDay({ zone, day: changed(day, path, (partOf(day, path) as number) * by) }), 'day')
    expectInputError(() => proposeDay({ zone, day: { ...day, date: '2026-05-18' } }), 'day.date')
    const elsewhere = benchZone({ place: { ...zone.place, clock: [{ from: 0, ahead: 3600 as never }] } })
    expectInputError(() => proposeDay({ zone: elsewhere, day }), 'day.from')
    expectInputError(() => proposeDay({ zone: benchZone({ probes: [{ name: 'A' }] }), day }), 'day.probes')
    expectInputError(() => proposeDay({ zone, day: { ...day, probes: [day.probes[0]!] } }), 'day.probes')
    expectInputError(
      () => proposeDay({ zone, day: { ...day, light: { ...day.light, course: day.light.course.slice(1) } } }),
      'day.light.course',
    )
    const turned = { fullPoint: 0.5, refillPoint: 0.6 }
    expectInputError(() => proposeDay({ zone, day: changed(day, ['level', 'value', 'limits'], turned) }), 'refillPoint')
  })
  it('a proposal and a diagnosis that were changed give a refusal or a whole report', () => {
    expect(proposal.known && diagnosis.known).toBe(true)
    expect(faultsOf(proposal, (one) => reportZone({ zone, day, proposal: one }))).toEqual([])
    const told = faultsOf(diagnosis, (one) => reportZone({ zone, day, proposal, diagnosis: one }))
    expect(told).toEqual([])
  })
  it('a day of 23 or 25 hours is taken as it was reviewed', () => {
    // Clocks went forward on 29 March 2026 and back on 25 October 2026, at one o'clock of universal time.
    const [spring, autumn] = [Date.UTC(2026, 2, 29, 1) / 1000, Date.UTC(2026, 9, 25, 1) / 1000]
    const clock = [
      { from: 0, ahead: 3600 as never },
      { from: spring, ahead: 7200 as never },
      { from: autumn, ahead: 3600 as never },
    ]
    const there = benchZone({ place: { ...zone.place, clock } })
    for (const [breakTime, hours] of [
      [spring, 23],
      [autumn, 25],
    ] as const) {
      const shift = breakTime - 4 * 86400 - record.time[0]!
      const moved = (time: ArrayLike<number>) => Array.from(time, (one) => one + shift)
      const { watering, climate } = record
      const days = reviewZone({
        zone: there,
        record: {
          ...record,
          time: moved(record.time),
          watering: { ...watering!, time: moved(watering!.time) },
          climate: { ...climate!, time: moved(climate!.time) },
        },
      }).days
      expect(days.map(({ from, to }) => (to - from) / 3600)).toContain(hours)
      for (const one of days.slice(2, 8)) {
        const found = proposeDay({ zone: there, day: kept(one) })
        if (!found.known) throw new Error(found.reason)
        const next = days.find(({ from }) => from === one.to)
        expect(found.value.date).toBe(next?.date)
        for (const { time } of found.value.shots) {
          expect(time).toBeGreaterThanOrEqual(one.to)
          expect(time).toBeLessThan(next!.to)
        }
        expect(holesIn(reportZone({ zone: there, day: kept(one), proposal: kept(found) }))).toEqual([])
      }
    }
  })
})

describe('arguments that are missing', () => {
  const calls: Readonly<Record<string, (input: never) => unknown>> = {
    reviewZone,
    reviewDay,
    proposeDay,
    reportZone,
    diagnoseDay,
    trustedReadings,
    explainZoneFinding,
    entriesOfRecord,
    followZone,
  }
  it.each(Object.keys(calls))('of %s are refused by a typed error', (name) => {
    const short = benchRecord({ days: 2 })
    const last = reviewZone({ zone, record: short }).days[1]!
    const told = { date: last.date, finding: last.findings[0], clock: zone.place.clock }
    const given: readonly object[] = [
      { zone, record: short, day: last, proposal: proposeDay({ zone, day: last }), diagnosis, ...told },
      short,
      zone,
    ]
    const inputs = [undefined, null, 3, 'x', [], {}, ...given.flatMap((one) => faulty(one))]
    const untyped = inputs.flatMap((input) => {
      try {
        calls[name]?.(input as never)
        return []
      } catch (error) {
        return isPorewaterError(error) ? [] : [(error as Error).message]
      }
    })
    expect(untyped).toEqual([])
  })
  const faulty = (one: object) =>
    Object.keys(one).flatMap((key) => [undefined, null, 3, 'x', [], {}].map((part) => ({ ...one, [key]: part })))
})
