import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { argumentIn, isMade, withReplaced } from '../../docs/tools/replaced-argument.js'

const argumentsOf = rememberedCalls()

/** Names that stand for the lower and the upper of two numbers, as patterns of the first and the words of the second. */
const PAIRS: readonly (readonly [RegExp, string])[] = [
  [/\bmin(?=[A-Z]|$)/, 'max'],
  [/Min$/, 'Max'],
  [/\blower\b/, 'upper'],
  [/\bfrom$/, 'to'],
  [/\bfrom$/, 'until'],
  [/\bstart$/, 'end'],
  [/\bfirst(?=[A-Z])/, 'last'],
  [/\bsunrise$/, 'sunset'],
  [/\bdry(?=Mass)/, 'wet'],
  [/\bwetBulb$/, 'dryBulb'],
  [/\bsuspect(?=After|$)/, 'fail'],
  [/\bwiltingPoint$/, 'fieldCapacity'],
  [/\breadily(?=[A-Z])/, 'total'],
  [/\brefillPoint$/, 'fullPoint'],
  [/\bresidual$/, 'saturated'],
]

/** Pairs that are no contradiction, or are looked for elsewhere: function and path of the first, with the reason. */
const LEFT_OUT: readonly (readonly [RegExp, string])[] = [
  [/^emitterFlowRatio input\.from$/, 'two pressures of which either may be the higher'],
  [/^dissolvedSolidsOnScale sample\.from$/, 'two scales of a meter'],
  [/darkHours\.from$/, 'the dark runs over midnight'],
  [/^checkWatering input\.limits\./, 'it says no instead of throwing: no reading lies between'],
  [/ (input\.)?zone\.medium\.residual$/, 'a retention curve, made and checked by a function of `medium`'],
  [/^rehearsed\w+ change\./, 'a part of the settings of `controlWatering` or `watchZone`, which are in the list'],
  [/^explain\w+Finding finding\./, 'numbers of a result, given back as they were found'],
  [/^chartDay day\.refillPoint$/, 'two lines of a picture, which may be drawn alone'],
]

/** The pairs of names that the catalogue has, so that a renamed argument is not lost from sight. */
const LISTED: readonly string[] = [
  'dryMass wetMass',
  'expectedMin expectedMax',
  'firstShot lastShot',
  'from to',
  'lower upper',
  'minBelievable maxBelievable',
  'minCoefficient maxCoefficient',
  'minHumidity maxHumidity',
  'minRunTime maxRunTime',
  'minTemperature maxTemperature',
  'readilyAvailable totalAvailable',
  'readilyEvaporable totalEvaporable',
  'refillPoint fullPoint',
  'residual saturated',
  'sensorMin sensorMax',
  'sunrise sunset',
  'suspect fail',
  'suspectAfter failAfter',
  'wetBulb dryBulb',
  'wiltingPoint fieldCapacity',
]

interface Pair {
  readonly entry: CatalogueEntry
  readonly lower: CatalogueField
  readonly upper: CatalogueField
}

/** Every pair of arguments of a public function that can contradict each other; parts of what the library made are left out. */
const pairs = catalogue.flatMap((entry) =>
  entry.arguments.flatMap((lower) =>
    PAIRS.flatMap(([pattern, word]): Pair[] => {
      if (!pattern.test(lower.path) || LEFT_OUT.some(([part]) => part.test(`${entry.name} ${lower.path}`))) return []
      const path = lower.path.replace(pattern, word)
      const upper = entry.arguments.find((field) => field.path === path)
      return upper === undefined || isMade(entry, lower) ? [] : [{ entry, lower, upper }]
    }),
  ),
)

/** What a function says when the lower of two numbers is above the upper. */
async function contradicted({ entry, lower, upper }: Pair): Promise<unknown> {
  const args = await argumentsOf(entry)
  if (args === undefined) return 'no example calls it'
  const [low, high] = [lower, upper].map((field) => argumentIn(entry, args, field))
  const [first, second] = swapped(low, high, lower, upper)
  const one = withReplaced(entry, args, lower, first)
  const both = one && withReplaced(entry, one, upper, second)
  if (both === undefined) return 'the example does not reach it'
  try {
    ;(publicNames[entry.name] as (...args: unknown[]) => unknown)(...both)
    return `answers to ${first} and ${second}`
  } catch (error) {
    return (error as { code?: string }).code === 'bad-input' ? 'bad-input' : String(error)
  }
}

/** Two numbers of the right size in the wrong order: from those of the example, or one moved beyond the other. */
function swapped(low: unknown, high: unknown, lower: CatalogueField, upper: CatalogueField): readonly [number, number] {
  if (typeof low === 'number' && typeof high === 'number' && low !== high) {
    // Half-way, because the lower may stand at an end that the upper must not reach; whole where both are counts.
    const half = (low + high) / 2
    return [Math.max(low, high), Number.isInteger(low) && Number.isInteger(high) ? Math.floor(half) : half]
  }
  const between = typeof low === 'number' ? low : typeof high === 'number' ? high : middle(lower)
  const room = Math.min(...[lower, upper].flatMap((field) => ends(field).map((end) => Math.abs(end - between) || 1)), 1)
  return [between + room / 4, between - room / 4]
}

const ends = ({ range = '' }: CatalogueField) => {
  const [low = '', high = ''] = range.replace(/^.*?[[(]|[\])].*$/g, '').split(', ')
  return [Number.parseFloat(low), Number.parseFloat(high)].filter(Number.isFinite)
}
const middle = (field: CatalogueField) => {
  const [low = 0, high = low + 2] = ends(field)
  return (low + high) / 2
}

describe('a lower limit above its upper', () => {
  it('is looked for in all these pairs', () => {
    const found = new Set(pairs.map(({ lower, upper }) => `${lastOf(lower)} ${lastOf(upper)}`))
    expect([...found].sort()).toEqual(LISTED)
    expect(pairs.length).toBeGreaterThan(60)
    const paths = catalogue.flatMap(({ name, arguments: fields }) => fields.map(({ path }) => `${name} ${path}`))
    for (const [part] of LEFT_OUT) expect(paths.some((path) => part.test(path))).toBe(true)
  })
  it.each(
    pairs.map(
      (pair) =>
        [`${pair.entry.topic}: ${pair.entry.name}, ${pair.lower.path} above ${lastOf(pair.upper)}`, pair] as const,
    ),
  )('is an InputError in %s', async (_, pair) => {
    expect(await contradicted(pair)).toBe('bad-input')
  })
})

function lastOf({ path }: CatalogueField): string {
  return path.slice(path.lastIndexOf('.') + 1)
}
