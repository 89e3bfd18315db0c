import { entriesOfRecord, followZone, proposeDay, reviewZone, runReducer, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 3 })
const whole = reviewZone({ zone, record }).days.at(-1)!
/** Five minutes after noon of the third day. */
const NOON = 721

type Column = 'airTemperature' | 'relativeHumidity' | 'irradiance' | 'windSpeed'

function withClimate(column: Column, places: readonly number[], value: number): ZoneRecord {
  const list = Array.from(record.climate![column]!, (x, i) => (places.includes(i) ? value : x))
  return { ...record, climate: { ...record.climate!, [column]: list } }
}

function lastOf(odd: ZoneRecord) {
  const { days } = reviewZone({ zone, record: odd })
  const follower = followZone(zone)
  const { state, outputs } = runReducer({ reducer: follower, inputs: entriesOfRecord(odd) })
  expect(JSON.stringify([...outputs.flat(), ...follower.finish(state)])).toBe(JSON.stringify(days))
  return days.at(-1)!
}

const told = (day: typeof whole) => day.findings.filter(({ code }) => code === 'entries-left-out')

/** What sensors send as they start or fail: 85 °C is the power-on value of a DS18B20 (data sheet, from memory), the others are usual words for missing. */
describe('a wild number of the climate', () => {
  it.each([
    ['airTemperature', 85],
    ['airTemperature', -40],
    ['airTemperature', -999],
    ['airTemperature', 65535],
    ['relativeHumidity', 0],
    ['relativeHumidity', 1.2],
    ['relativeHumidity', -999],
    ['irradiance', 65535],
    ['irradiance', -999],
  ] as const)('costs itself and is told: %s of %d', (column, value) => {
    const day = lastOf(withClimate(column, [NOON, NOON + 5], value))
    expect(told(day)).toEqual([
      { code: 'entries-left-out', level: 'caution', table: 'climate', because: 'impossible', count: 2 },
    ])
    expect(day.climate.known && whole.climate.known).toBe(true)
    const [odd, right] = [day.climate, whole.climate].map((one) => (one.known ? one.value.referenceET : 0))
    expect(Math.abs(odd! / right! - 1)).toBeLessThan(0.005)
    const shots = (one: typeof whole) => {
      const plan = proposeDay({ zone, day: one })
      return plan.known ? plan.value.shots.map(({ time }) => time) : []
    }
    expect(shots(day)).toEqual(shots(whole))
  })
  it('is none where weather moves fast and goes on', () => {
    const front = Array.from({ length: 70 }, (_, i) => NOON + i)
    expect(told(lastOf(withClimate('airTemperature', front, -5)))).toEqual([])
    expect(told(lastOf(withClimate('relativeHumidity', front, 0.1)))).toEqual([])
    expect(told(lastOf(withClimate('airTemperature', [NOON], 40)))).toEqual([])
    expect(told(whole)).toEqual([])
  })
  it('is not looked for among readings an hour and more apart', () => {
    const rare = (step: number) => {
      const at = Array.from(record.climate!.time, (_, i) => i).filter((i) => i % step === 0)
      const pick = (column: Column) =>
        at.map((i) => (i === 720 && column === 'airTemperature' ? 60 : record.climate![column]![i]!))
      const columns = (['airTemperature', 'relativeHumidity', 'irradiance', 'windSpeed'] as const).map((name) => [
        name,
        pick(name),
      ])
      return { ...record, climate: { time: at.map((i) => record.climate!.time[i]!), ...Object.fromEntries(columns) } }
    }
    expect(told(lastOf(rare(12)))).toHaveLength(1)
    expect(told(lastOf(rare(24)))).toEqual([])
  })
})

describe('readings of the root zone that cannot be', () => {
  const withRoot = (value: number, places: readonly number[]): ZoneRecord => ({
    ...record,
    rootTemperature: Array.from(record.rootTemperature!, (x, i) => (places.includes(i) ? value : x)),
  })
  it.each([85, -127, 60.1, -5.1])('cost themselves and are counted: %d', (value) => {
    const day = lastOf(withRoot(value, [NOON, NOON + 1, NOON + 40]))
    expect(day.findings).toContainEqual({ code: 'root-readings-left-out', level: 'caution', count: 3 })
    expect(day.rootTemperature).toMatchObject({ known: true, value: { max: 22, min: 18 } })
  })
  it.each([60, -5, Number.NaN])('are none at the ends of the range, nor where one is missing: %d', (value) => {
    const { findings } = lastOf(withRoot(value, [NOON]))
    expect(findings.filter(({ code }) => code === 'root-readings-left-out')).toEqual([])
  })
})
