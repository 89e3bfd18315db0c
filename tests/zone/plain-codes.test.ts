import { explainIrrigationFinding, explainZoneFinding, litres, proposeDay, reviewZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone } from './bench.js'

/** Every text in a piece of plain data. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : []
}
/** What a program can rely on: codes, names of arguments, dates, units, and the names that the zone was given. */
const isPlain = (text: string) =>
  /^[a-z]+(-[a-z0-9]+)*$/.test(text) ||
  /^[a-z]+([A-Z][a-z]+)*$/.test(text) ||
  /^\d{4}-\d\d-\d\d$/.test(text) ||
  ['A', 'B', 'm³/m³', 'L', '1', 'MJ/m²/d', 'm/s'].includes(text)

describe('a review and a proposal are data', () => {
  // No wind is recorded, the light is dimmer than clouds make it, and a day may have less than it needs.
  const zone = benchZone({ limits: { ...benchZone().limits, maxPerDay: litres(1.5) } })
  const whole = benchRecord({ days: 3 })
  const { windSpeed: _, ...climate } = whole.climate!
  const dim = { ...climate, irradiance: Array.from(climate.irradiance!, (x) => 0.05 * (x as number)) }
  const { days } = reviewZone({ zone, record: { ...whole, climate: dim } })
  const day = days[1]!
  const proposal = proposeDay({ zone, day })
  if (!proposal.known) throw new Error(proposal.reason)

  it('without a sentence in them', () => {
    expect(textsOf(JSON.parse(JSON.stringify({ days, proposal }))).filter((one) => !isPlain(one))).toEqual([])
  })
  it('whose doubts of the climate carry the code and the numbers of the weather', () => {
    const doubts = day.findings.filter(({ code }) => code === 'climate-doubted')
    expect(doubts).toMatchObject([
      { level: 'caution', weather: { code: 'assumed-wind', value: 2, unit: 'm/s' } },
      { weather: { code: 'darker-than-overcast', about: 'solar', unit: 'MJ/m²/d' } },
    ])
    const said = doubts.map((finding) => explainZoneFinding(finding, zone.place.clock).message)
    expect(said[0]).toBe('no wind is given: 2 m/s at 2 m is assumed')
    expect(said[1]).toMatch(/^the solar radiation of [\d.]+ MJ\/m²\/d is below [\d.]+ MJ\/m²\/d/)
  })
  it('whose shots and compromises have their words from the plan', () => {
    const { shots, compromises } = proposal.value
    expect(shots[0]).toMatchObject({ reason: 'morning-rewet', waterContent: expect.any(Number) })
    expect(explainIrrigationFinding({ ...shots[0]!, code: shots[0]!.reason }).message).toBe(
      `morning rewet from ${(100 * shots[0]!.waterContent).toFixed(1)} %`,
    )
    const limit = compromises.find(({ code }) => code === 'daily-limit-reached')
    expect(limit).toMatchObject({ wanted: 1.5, unit: 'L' })
    expect(explainIrrigationFinding(limit!).message).toMatch(/of the daily limit of 1\.5 L/)
  })
})
