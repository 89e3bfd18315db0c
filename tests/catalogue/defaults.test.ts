import { type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { parseRange } from '../../docs/tools/ranges.js'
import { argumentIn, withReplaced } from '../../docs/tools/replaced-argument.js'
import { SHOWING, type Showing } from './where-defaults-show.js'

const argumentsOf = rememberedCalls()

const WORDS: Readonly<Record<string, number>> = { none: 0, zero: 0, one: 1, six: 6, seven: 7, 'the whole': 1 }
const SECONDS: Readonly<Record<string, number>> = {
  minute: 60,
  minutes: 60,
  hour: 3600,
  hours: 3600,
  h: 3600,
  week: 604_800,
}
const HOW_MANY: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  every: 1,
  'half an': 0.5,
  two: 2,
  eight: 8,
  ten: 10,
  twenty: 20,
  thirty: 30,
}

/** What the description says stands in for an argument that is left out; undefined where that is no plain value. */
function toldDefault({ text, unit }: CatalogueField): number | string | boolean | undefined {
  const told =
    /(?:^|[;:,.] |, of \d, )([^;:,]+?) by default/.exec(text) ??
    /(?:^|[;:,] )([^;:,]+?) (?:when|if) left out/.exec(text) ??
    /(?:^|[;:,] )([^;:,]+?),? (?:unless it was fitted|and left out)/.exec(text) ??
    /(?:^|[;:,] )([\d.]+) for [^;:,.]*, which is the default/.exec(text)
  const [, words = ''] = told ?? []
  const code = /^[`"](.*)[`"]$/.exec(words)
  if (code !== null) return code[1]
  if (words === 'true' || words === 'false') return words === 'true'
  if (words in WORDS) return WORDS[words]
  const [, much = '', of = ''] = /^(.+?)(?: (\S+))?$/.exec(words) ?? []
  const count = HOW_MANY[much] ?? (/^[\d.]+$/.test(much) ? Number(much) : undefined)
  if (count === undefined || (of !== '' && of !== unit && unit !== 's')) return undefined
  return of === '' || of === unit ? count : SECONDS[of] === undefined ? undefined : count * SECONDS[of]!
}

class Refusal {
  constructor(readonly message: string) {}
}

/** Everything that a result says; what it can be asked is asked at three places. */
function shown(result: unknown, depth = 0): unknown {
  if (ArrayBuffer.isView(result)) return [...(result as Float64Array)]
  if (typeof result === 'function')
    return result.length > 1 ? 'asked for more' : [3, 30, 300].map((place) => asked(() => result(place), depth + 1))
  if (typeof result !== 'object' || result === null || depth > 8) return result
  if (Array.isArray(result)) return result.map((item) => shown(item, depth + 1))
  return Object.fromEntries(Object.entries(result).map(([key, value]) => [key, shown(value, depth + 1)]))
}

function asked(call: () => unknown, depth = 0): unknown {
  try {
    return shown(call(), depth)
  } catch (error) {
    return new Refusal((error as Error).message)
  }
}

const same = (result: unknown): unknown => result

/** Other values that the argument may have, nearer ones first. */
function others(field: CatalogueField, told: number | string | boolean): unknown[] {
  if (typeof told === 'boolean') return [!told]
  if (typeof told === 'string')
    return field.type === 'string'
      ? ['x']
      : [...field.type.matchAll(/"([^"]+)"/g)].map((code) => code[1]).filter((code) => code !== told)
  const range = parseRange(field.range ?? '') ?? { min: 0, max: Number.POSITIVE_INFINITY, integers: false }
  const near = told === 0 ? [0.25, 0.05, 100] : [told * 1.5, told / 2, told * 0.9, told * 0.99, told / 50, told * 50]
  const whole = near.map((value) => (range.integers ? Math.ceil(value) : value))
  return whole.filter((value) => value > range.min && value < range.max && value !== told)
}

/**
 * Arguments that change nothing in the example of their function, and for which `SHOWING` has no other call: given and left out they
 * agree, which alone proves little.
 */
const UNSEEN = new Set([
  'checkWateringSettings settings.ahead',
  'fitMediumToRecord record.airDry',
  'diagnoseDay input.daysBefore',
  'proposeDay input.zone.wateringLog',
  'reportZone input.zone.wateringLog',
])

/** Every default that is told, where the example reaches it: a part that it leaves out may miss other numbers. */
const told = catalogue
  .filter(({ topic }) => topic !== 'rehearsal')
  .flatMap((entry) =>
    entry.arguments
      .filter(({ optional, shape }) => optional && shape !== 'list')
      .flatMap((field) => {
        const value = toldDefault(field)
        const fits = value !== undefined && (typeof value === 'number') === (field.shape === 'number')
        return fits ? [[`${entry.name}: ${field.path} is ${value}`, entry, field, value] as const] : []
      }),
  )

describe('an argument that is left out is what the documentation says', () => {
  it('where that can be read', () => expect(told.length).toBeGreaterThan(150))

  it.each(told)('%s', async (_, entry, field, value) => {
    const showing: Showing = SHOWING[`${entry.name} ${field.path}`] ?? SHOWING[entry.name] ?? {}
    const example = (await argumentsOf(entry)) as never[]
    const args = showing.given?.(example) ?? example
    const whole = field.path.slice(0, Math.max(0, field.path.lastIndexOf('.')))
    // A part that the example leaves out needs other numbers as well.
    if (whole !== '' && argumentIn(entry, args, { ...field, path: whole }) === undefined) return
    const answer = (instead: unknown) => {
      const call = withReplaced(entry, args, field, instead) as unknown[]
      const result = () => (publicNames[entry.name] as (...list: unknown[]) => never)(...call)
      return asked(() => (showing.of ?? same)(result()))
    }
    const left = answer(undefined)
    // A refusal says the same whatever the value.
    expect(left).not.toBeInstanceOf(Refusal)
    expect(answer(value)).toEqual(left)
    if (UNSEEN.has(`${entry.name} ${field.path}`)) return
    const changes = others(field, value).some((other) => JSON.stringify(answer(other)) !== JSON.stringify(left))
    expect(changes, 'some other value changes the answer').toBe(true)
  })
})
