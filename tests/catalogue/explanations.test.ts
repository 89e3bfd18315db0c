import { type Finding, isPorewaterError } from 'porewater'
import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { publicNames } from '../../docs/tools/public-names.js'
import { CAUSE_CODES } from '../../src/control/diagnosis/cause/cause-codes.js'

/** Whatever a finding may carry: a sentence takes what it needs. */
const NUMBERS = {
  level: 'note',
  about: 'probe 1',
  value: 0.25,
  limit: 0.75,
  min: 0.125,
  max: 0.875,
  unit: '1',
  time: 1_780_000_000,
  note: 'words',
  of: 'shotVolume',
  samples: [1, 2],
  evidence: [],
  check: 'look',
  by: 1,
  distance: 2,
  needed: 3,
  to: 'wall',
  probe: 'probe 1',
  zone: 'zone 1',
  volume: 1,
  runTime: 60,
  waterContent: 0.5,
  perEmitter: 0.25,
  since: 1_780_000_000,
  weight: 0.5,
  reached: 0.5,
  wanted: 0.25,
  because: 'rest',
  band: 'low',
  rise: 0.5,
  drainFraction: 0.25,
  steadyFraction: 0.25,
  headingFor: 4,
  usual: 0.125,
  standardDeviation: 0.5,
  perDay: 0.5,
  share: 0.5,
  shots: 3,
  levelPerDay: 0.5,
  drainPerDay: 0.5,
  containerCapacity: 0.5,
  start: 1_780_000_000,
  end: 1_780_003_600,
  duration: 60,
  openings: 2,
  hours: 2.5,
  fault: 'leak',
  alarms: 2,
  calls: 2,
  correlation: 0.5,
  autocorrelation: 0.5,
  first: 'first',
  second: 'second',
  series: 'drain',
  ratio: 4,
  aridity: 2,
  sunElevation: 0.1,
  exposure: 'coastal',
  today: 4,
  tomorrow: 5,
  middle: 45.5,
  seen: 1,
  below: 0.25,
  others: 0.125,
  times: [1_780_000_000],
  from: 1_780_000_000,
  change: 0.25,
  difference: 0.25,
  spread: 0.25,
  count: 2,
  use: 2,
  climate: 1,
  given: 4,
  drained: 5,
  entries: 2,
  rises: 5,
  steady: 0.25,
  extreme: 'lowest',
  days: 2,
}

const CAUSES: readonly string[] = CAUSE_CODES

/** What single codes need besides. */
const MORE: Readonly<Record<string, object>> = {
  'root-temperature': { about: 'fruiting-vegetables', band: 'cold' },
  'ec-doubted': { about: 'drainEC', beside: 2 },
  'few-shots-seen': { of: 3 },
  'climbs-between-shots': { to: 1_780_003_600 },
  'root-zone-temperature': { band: 'cool' },
  'unit-doubted': { about: 'airTemperature', like: 'kelvin', unit: '°C' },
  'climate-doubted': {
    weather: { code: 'no-sun', level: 'note', about: 'solar', value: 0, limit: 0, unit: 'MJ/m²/d' },
  },
  'entries-left-out': { table: 'climate', because: 'doubled' },
}

function answer(name: string, finding: unknown): Finding {
  return (publicNames[name] as (finding: unknown) => Finding)(finding)
}

/** The codes of a topic: it names them where it refuses another one. */
function codesOf(name: string): string[] {
  try {
    answer(name, { ...NUMBERS, code: 'no-such-code' })
  } catch (error) {
    const { code, hint = '' } = error as { code?: string; hint?: string }
    const [, list] = /^give one of (.*)$/.exec(hint) ?? []
    if (code === 'bad-input' && list !== undefined) return list.split(', ').filter((word) => /^[a-z-]+$/.test(word))
  }
  return []
}

const told = catalogue
  .filter(({ name }) => name.startsWith('explain'))
  .flatMap((entry) => codesOf(entry.name).map((code) => [`${entry.name}: ${code}`, entry, code] as const))

describe('every code has a sentence with its numbers', () => {
  it('where a topic names its codes', () => expect(told.length).toBeGreaterThan(150))
  it.each(told)('%s', (_, { name }, code) => {
    const cause = CAUSES.includes(code) ? { about: ['A'], check: 'catch-test' } : {}
    const { message, source } = answer(name, { ...NUMBERS, ...cause, ...MORE[code], code })
    expect(message).toMatch(/\w{2,}\W+\w{2,}/)
    expect(message).not.toMatch(/undefined|NaN|\[object|\?/)
    if (source !== undefined) expect(source).toMatch(/\w{3}/)
  })
})

describe('what is no finding of its topic is refused', () => {
  const explainers = catalogue.filter(({ name }) => name.startsWith('explain')).map(({ name }) => name)
  const outcome = (name: string, finding: unknown) => {
    try {
      return answer(name, finding)
    } catch (error) {
      return isPorewaterError(error) ? error.code : error
    }
  }
  it.each(explainers)('by %s', (name) => {
    for (const bad of [undefined, null, 'stress', 3, {}, [], { code: 'toString' }, { code: 3, level: 'note' }])
      expect(outcome(name, bad)).toBe('bad-input')
  })
  it.each(told)('without its numbers, or told all the same: %s', (_, { name }, code) => {
    const said = outcome(name, { code })
    if (said !== 'bad-input') expect((said as Finding).message).toEqual(expect.any(String))
  })
  it.each([
    ['explainZoneFinding', { code: 'root-zone-temperature', band: 'target', extreme: 'highest', value: 20 }],
    ['explainZoneFinding', { code: 'entries-left-out', table: 'readings', because: 'doubled', count: 2 }],
    ['explainZoneFinding', { code: 'entries-left-out', table: 'climate', because: 'lost', count: 2 }],
    ['explainIrrigationFinding', { code: 'media-salts', band: 'salty', about: 'one-to-two', value: 2, unit: 'dS/m' }],
    ['explainIrrigationFinding', { code: 'air-space', band: 'airy', value: 0.2, unit: '1', source: 'x' }],
  ])('with a band that there is not, by %s', (name, finding) => expect(outcome(name, finding)).toBe('bad-input'))
})
