import { type CatalogueField, catalogue } from 'porewater/catalogue'
import { type DocumentName, documentJsonSchema } from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import HELD from './ranges-that-differ.json' with { type: 'json' }

/**
 * Arguments of one name, kind and unit that do not have one range everywhere, by the reason for it: the ranges that they may have.
 * A new range, or one that is gone, fails here: make it agree (`domains.ts` of the topic, or of `src/quantity`), or say why not.
 */
const REASONS: Record<string, Record<string, readonly string[]>> = {
  'only the ends differ: zero, or all of it, has no answer where it divides or is taken as a logarithm': {
    'applied: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'at25: AnyEC in dS/m': ['(0, ∞)', '[0, ∞)'],
    'cover: GroundFraction in 1': ['[0, 0.999]', '[0, 1]'],
    'cropET: CropET in mm/d': ['(0, 90]', '[0, 90]'],
    'dailyUse: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'dayLength: Duration in s': ['(0, 86400]', '[0, 86400]'],
    'depletion: DepletionFraction in 1': ['(0, 1)', '[0, 1)', '[0, 1]'],
    'dispersivity: Length in cm': ['(0, ∞)', '[0, ∞)'],
    'drainedVolume: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'drainTime: Duration in s': ['(0, 86400]', '[0, 86400]'],
    'dryMass: Mass in g': ['(0, ∞)', '[0, ∞)'],
    'extractEC: SaturatedExtractEC in dS/m': ['(0, 200]', '[0, 200]'],
    'extraterrestrial: DailyRadiation in MJ/m²/d': ['(0, 60]', '[0, 60]'],
    'heights: Length in cm': ['(0, ∞)', '[0, ∞)'],
    'lossPerDecisiemens: number in %/(dS/m)': ['(0, 100]', '[0, 100]'],
    'lowerLimit: WaterContent in m³/m³': ['[0, 1)', '[0, 1]'],
    'meanHumidity: RelativeHumidity in 1': ['(0, 1]', '[0, 1]'],
    'substrateVolume: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'photoperiod: Duration in s': ['(0, 86400]', '[0, 86400]'],
    'porosity: Porosity in 1': ['(0, 1)', '(0, 1]', '[0, 1]'],
    'rise: WaterContentChange in m³/m³': ['(0, 1]', '[0, 1]'],
    'saturation: DegreeOfSaturation in 1': ['(0, 1]', '[0, 1]'],
    'scaled: number in 1': ['(0, 2]', '[0, 2]'],
    'shot: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'time: Duration in s': ['(0, ∞)', '[0, ∞)'],
    'totalAvailable: WaterDepth in mm': ['(0, 10000]', '[0, 10000]'],
    'totalEvaporable: WaterDepth in mm': ['(0, 10000]', '[0, 10000]'],
    'volume: Volume in L': ['(0, ∞)', '[0, ∞)'],
    'waterContents: WaterContent in m³/m³': ['(0, 1]', '[0, 1]'],
  },
  'each equation reaches, or was measured over, other values of it': {
    'apparent: Permittivity in 1': [
      '[1, 49]',
      '[1, 76.77311]',
      '[1, 76.96829]',
      '[1, 77.13433]',
      '[1, 81.32334]',
      '[1, 90]',
      '[1.754659, 41.38142]',
      '[1.820663, 80.819]',
      '[1.880712, 81.44688]',
      '[2.172654, 49]',
      '[2.386455, 90]',
    ],
    'bulkDensity: BulkDensity in g/cm³': ['(0, 10]', '(0, 2.65]'],
    'conductivity: SolutionEC in dS/m': ['[0, 60]', '[0.19, 19.19]'],
    'deficit: VapourPressureDeficit in kPa': ['[-10, 102]', '[0, 10]'],
    'downwardFlux: WaterFlux in mm/h': ['(-∞, ∞)', '(0, ∞)'],
    'firstTemperature: Temperature in °C': ['[-20, 110]', '[0, 100]'],
    'frequency: Frequency in Hz': ['(0, ∞)', '[300000000, 18000000000]'],
    'leafTemperature: Temperature in °C': ['[-60, 100]', '[0, 60]'],
    'real: number in 1': ['(0, ∞)', '[1, ∞)'],
    'referenceET: ReferenceET in mm/d': ['(0, 30]', '[-5, 30]'],
    'referenceTemperature: Temperature in °C': ['[-10, 60]', '[-20, 110]'],
    'secondTemperature: Temperature in °C': ['[-20, 110]', '[0, 100]'],
    'suction: SuctionHead in cm': ['[0, 1000000000]', '[0, ∞)'],
    'temperature: Temperature in °C': [
      '(-∞, ∞)',
      '[-100, 0.01]',
      '[-100, 100]',
      '[-20, 110]',
      '[-20, 150]',
      '[-20, 373.946]',
      '[-20, 60]',
      '[-35, 600]',
      '[-5, 100]',
      '[-5, 60]',
      '[-60, 100]',
      '[0, 35.9]',
      '[0, 373.946]',
      '[0, 50]',
      '[0, 60]',
    ],
    'uniformity: Share in 1': ['(-∞, 1]', '(0, 1]'],
    'vapourPressure: VapourPressure in kPa': ['(0, 102]', '[0, 102]', '[0, 10]', '[1e-5, 0.6116]', '[1e-5, 101]'],
    'waterContent: WaterContent in m³/m³': [
      '(-∞, ∞)',
      '(0, 1)',
      '(0, 1]',
      '[0, 0.903802]',
      '[0, 0.9627221]',
      '[0, 1]',
      '[0.004772, 1]',
      '[0.01, 1]',
      '[0.0126436, 1]',
      '[0.0702525, 1]',
      '[0.1041049, 1]',
    ],
  },
  'one word for the numbers of several equations': {
    'coefficient: number in 1': ['[0, 1.5]', '[0, 3]'],
    'exponent: number in 1': [
      '(0, 10]',
      '[-0.5, 1.5]',
      '[0.001, 1]',
      '[0.1, 10]',
      '[0.2, 5]',
      '[0.5, 1.2]',
      '[0.5, 1]',
    ],
    'extinction: number in 1': ['(0, 2]', '[0, ∞)'],
    'factor: number in 1': ['(-∞, ∞)', '(0, 10]', '[1, ∞)'],
    'n: number in 1': ['(0, ∞)', '(1, ∞)', '(2, ∞)'],
    'offset: number in 1': ['[0, 1]', '[0, 20]'],
    'slope: number in 1': ['(0, 1]', '(0, ∞)', '[-10, 10]'],
  },
  'the word names several things: a crop, a container, a layer, an instrument, air or water, a measured light or the limit of one':
    {
      'ahead: Duration in s': ['(0, 86400]', '[-50400, 50400]'],
      'duration: Duration in s': ['(0, 86400]', '(0, ∞)'],
      'count: number in 1': ['(0, 100000]', '(0, ∞)'],
      'depth: Length in cm': ['(0, 2000]', '(0, ∞)', '[0, 500]', '[0, ∞)'],
      'height: Length in cm': ['(0, 1000]', '(0, ∞)', '[0, 10000]', '[0, ∞)', '[0.001, ∞)', '[50, 10000]'],
      'irradiance: Irradiance in W/m²': ['(0, 1000]', '[0, 5000]'],
      'pressure: Pressure in kPa': ['(0, ∞)', '[30, 120]', '[30, 200]', '[33, 107]'],
      'probeOffset: WaterContentChange in m³/m³': ['[-0.3, 0.3]', '[0, 0.2]'],
      'step: Duration in s': ['[1, 3600]', '[30, 3600]'],
    },
  'a day may go without water; a zone that is set up to get none for ever is a slip': {
    'maxPerDay: Volume in L': ['(0, ∞)', '[0, ∞)'],
  },
  'by day, by night, in the open, on one leaf or under lamps other values occur': {
    'airResistance: number in s/m': ['[1, 100000]', '[1, 50000]'],
    'leafResistance: number in s/m': ['[1, 100000]', '[1, 50000]', '[10, 10000]'],
    'netRadiation: Irradiance in W/m²': ['[-300, 1500]', '[-300, 300]'],
    'photonFlux: PhotonFluxDensity in µmol/m²/s': ['[0, 20000]', '[0, 3000]'],
    'photonYield: PhotonYield in µmol/J': ['(0, 3]', '(0, 6]'],
    'windSpeed: WindSpeed in m/s': ['(0, 30]', '[0, 120]'],
  },
  'what acts by itself is held tighter than what is only worked out': {
    'maxReadingAge: Duration in s': ['(0, 86400]', '[60, 86400]'],
    'runTime: Duration in s': ['(0, ∞)', '[0, 86400]', '[0, ∞)'],
    'responseTime: Duration in s': ['(0, 86400]', '[60, 7200]'],
  },
  'a search has ends beyond which it finds nothing, and each of its many runs has to be short': {
    'nodes: number in 1': ['[5, 201]', '[5, 5001]'],
    'tolerance: number in m³/m³': ['[0.00001, 0.01]', '[1e-9, 0.01]'],
    'poreConnection: number in 1': ['(-2, 10]', '(-∞, ∞)'],
  },
  'what a probe reads, with all that is off in it, may lie beyond what a medium can hold': {
    'level: WaterContent in m³/m³': ['[-1, 2]', '[0, 1]'],
    'minBelievable: WaterContent in m³/m³': ['[-0.1, 1)', '[0, 1]'],
  },
  'a container has whole plants, a mean of several need not': {
    'plants: number in 1': ['(0, 10000]', '[1, ∞)'],
  },
  'a prediction goes where no wish does: a day that begins wet drains more than it is given, and a night may end wetter':
    {
      'drainFraction: DrainFraction in 1': ['(0, 1]', '[0, 1)', '[0, ∞)'],
      'overnightDryDown: WaterContentChange in m³/m³': ['[-1, 1]', '[0, 1]'],
    },
}

const intervalOf = (field: CatalogueField) => /[[(][^\])]*[\])]/.exec(field.range ?? '')?.[0]
const kindOf = (field: CatalogueField) => field.type.replace(/readonly |\[\]|ArrayLike<|>/g, '').split(' | ')[0]

/** A number of a document, as its schema tells it. */
interface DocumentNumber {
  readonly name: string
  readonly kind: string
  readonly unit: string
  readonly range: string
}

interface JsonSchema {
  readonly type?: string
  readonly description?: string
  readonly const?: unknown
  readonly minimum?: number
  readonly maximum?: number
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly items?: JsonSchema
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
}

const NAMES: Record<DocumentName, true> = {
  calibration: true,
  container: true,
  emitters: true,
  limits: true,
  medium: true,
  plan: true,
  'plan-request': true,
  probe: true,
  reading: true,
  record: true,
  shot: true,
  zone: true,
}

/** `about; Volume, a number of L or text with one of …, in (0, ∞) L`, and the like for plain numbers and lists of them. */
const TOLD =
  /; (?:(\w+), a number (?:of ([^\s,]+)|without unit)(?: or text with .*)?,|a (?:whole )?number|a list of at most \d+ numbers) in ([[(][^\])]*[\])])(?: (.+?))?(?:, null where one is missing)?$/

const INSTANTS = '[-62135596800, 253402300799]'

/** What a schema says of one number; a moment tells its range by its limits. */
function numberTold(name: string, { description = '', minimum, maximum }: JsonSchema): DocumentNumber | undefined {
  if (/; seconds since 1970/.test(description))
    return { name, kind: 'Instant', unit: 's', range: `[${minimum}, ${maximum}]` }
  const [, kind = 'number', unitOfKind, range, unit = '1'] = TOLD.exec(description) ?? []
  if (range === undefined) return undefined
  return { name, kind: range === INSTANTS ? 'Instant' : kind, unit: unitOfKind ?? unit, range }
}

/** All numbers of a schema, and the names of those that state no range. */
function numbersIn(schema: JsonSchema): { told: DocumentNumber[]; silent: string[] } {
  const found = { told: [] as DocumentNumber[], silent: [] as string[] }
  const visit = (part: JsonSchema, name: string) => {
    const told = numberTold(name, part)
    const numeric = [part, ...(part.anyOf ?? [])]
    if (told !== undefined) found.told.push(told)
    else if (part.const === undefined && numeric.some(({ type, const: is }) => type === 'number' && is === undefined))
      found.silent.push(name)
    else
      for (const inner of [...(part.anyOf ?? []), ...(part.oneOf ?? []), ...(part.items ? [part.items] : [])])
        visit(inner, name)
    for (const [key, inner] of Object.entries(part.properties ?? {})) visit(inner, key)
  }
  visit(schema, '')
  return found
}

const documents = (Object.keys(NAMES) as DocumentName[]).map((name) => ({
  name,
  ...numbersIn(documentJsonSchema(name) as JsonSchema),
}))

/** The ranges of arguments, by name, kind and unit: the part of an input where one stands does not count. */
function rangesOf(topic: string, fields: readonly CatalogueField[]): { key: string; range: string }[] {
  return fields.flatMap((field) => {
    const name = field.path.slice(field.path.lastIndexOf('.') + 1)
    const range = intervalOf(field)
    // The `value` of a unit constructor is another quantity in each.
    const ofUnit = topic === 'quantity' && name === 'value'
    if (field.shape === 'other' || range === undefined || ofUnit || field.range?.startsWith('any')) return []
    return [{ key: `${name}: ${kindOf(field)} in ${field.unit}`, range }]
  })
}

/** Every range that an argument of this name, kind and unit has somewhere, where there is more than one. */
function rangesThatDiffer(
  entries: readonly { topic: string; arguments: readonly CatalogueField[] }[],
  written: readonly DocumentNumber[] = [],
) {
  const found = new Map<string, Set<string>>()
  for (const { topic, arguments: fields } of entries)
    for (const { key, range } of rangesOf(topic, fields)) found.set(key, (found.get(key) ?? new Set()).add(range))
  const known = [...found.keys()]
  for (const { name, kind, unit, range } of written) {
    // A document has numbers without a kind where a type has one: they stand beside all arguments of that name and unit.
    const alike = known.filter((key) => key.startsWith(`${name}: `) && key.endsWith(` in ${unit}`))
    const keys = kind === 'number' && alike.length > 0 ? alike : [`${name}: ${kind} in ${unit}`]
    for (const key of keys) found.set(key, (found.get(key) ?? new Set()).add(range))
  }
  return Object.fromEntries(
    [...found].filter(([, ranges]) => ranges.size > 1).map(([key, set]) => [key, [...set].sort()]),
  )
}

/** Which functions have which range, where there is more than one: all but the range that most of them have. */
function heldBy(entries: readonly { name: string; topic: string; arguments: readonly CatalogueField[] }[]) {
  const found = new Map<string, Map<string, Set<string>>>()
  for (const { name: of, topic, arguments: fields } of entries)
    for (const { key, range } of rangesOf(topic, fields)) {
      const ranges = found.get(key) ?? new Map<string, Set<string>>()
      found.set(key, ranges.set(range, (ranges.get(range) ?? new Set()).add(of)))
    }
  const several = [...found].filter(([, ranges]) => ranges.size > 1)
  return Object.fromEntries(
    several.map(([key, ranges]) => {
      const [, ...rare] = [...ranges].sort(([a, x], [b, y]) => y.size - x.size || (a < b ? -1 : 1))
      return [key, Object.fromEntries(rare.map(([range, names]) => [range, [...names].sort().join(' ')]))]
    }),
  )
}

describe('arguments of one name and kind', () => {
  it('have one range, or a written reason', () => {
    const explained = Object.assign({}, ...Object.values(REASONS)) as Record<string, readonly string[]>
    const written = documents.flatMap(({ told }) => told)
    expect(rangesThatDiffer(catalogue, written)).toEqual(explained)
  })
  it('keep the range that each function has, of those that the reason allows', () => {
    expect(heldBy(catalogue)).toEqual(HELD)
    const moved = catalogue.map((entry) =>
      entry.name === 'findDryDowns'
        ? {
            ...entry,
            arguments: entry.arguments.map((field) =>
              field.path.endsWith('drainTime') ? { ...field, range: '(0, 86400]' } : field,
            ),
          }
        : entry,
    )
    expect(rangesThatDiffer(moved)).toEqual(rangesThatDiffer(catalogue))
    expect(heldBy(moved)).not.toEqual(HELD)
  })
  it('are told by every document for each of its numbers', () => {
    // The numbers of findings have any unit, a raw value that of its kind, and flags are checked one by one.
    const ANY = ['value', 'limit', 'min', 'max', 'samples', 'reached', 'wanted', 'quality']
    const silent = new Set(documents.flatMap((document) => document.silent))
    expect([...silent].sort()).toEqual([...ANY].sort())
    expect(Object.fromEntries(documents.map(({ name, told }) => [name, told.length]))).toMatchObject({
      zone: expect.toSatisfy((count: number) => count > 50),
      'plan-request': expect.toSatisfy((count: number) => count > 20),
      reading: 1,
    })
  })
  it('are found where a fault is put in', () => {
    const field = {
      path: 'input.minRest',
      type: 'Duration',
      text: '',
      unit: 's',
      optional: false,
      shape: 'number' as const,
    }
    const [a, b] = ['[0, 86400]', '[0, 3600]'].map((range) => ({ topic: 'x', arguments: [{ ...field, range }] }))
    expect(rangesThatDiffer([a!, b!])).toEqual({ 'minRest: Duration in s': ['[0, 3600]', '[0, 86400]'] })
    expect(rangesThatDiffer([a!, a!])).toEqual({})
    const told = numbersIn({
      properties: {
        minRest: { description: 'pause; Duration, a number of s or text with one of s, min, in [0, 60] s' },
      },
    })
    expect(rangesThatDiffer([a!], told.told)).toEqual({ 'minRest: Duration in s': ['[0, 60]', '[0, 86400]'] })
    expect(numbersIn({ properties: { minRest: { type: 'number' } } }).silent).toEqual(['minRest'])
  })
  it('of emitters have one row, which is found by its name', () => {
    const counts = catalogue.flatMap((entry) =>
      entry.arguments.filter((field) => /emitters(OnValve|PerContainer)?$|emitters\.count$/i.test(field.path)),
    )
    expect(new Set(counts.map(intervalOf).filter(Boolean))).toEqual(new Set(['(0, 100000]']))
  })
})
