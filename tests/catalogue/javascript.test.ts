import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { argumentIn, isMade, MADE, withReplaced } from '../../docs/tools/replaced-argument.js'
import { isMadeType, partAt, partsOf, withPart } from '../../docs/tools/replaced-part.js'

const callInExample = rememberedCalls()

/** The library as JavaScript sees it: nothing stops a caller from passing text, null or nothing at all. */
type Arguments = unknown[]

/** What is thrown, or `undefined`. */
function thrown(entry: CatalogueEntry, args: Arguments): unknown {
  try {
    ;(publicNames[entry.name] as (...args: Arguments) => unknown)(...args)
    return undefined
  } catch (error) {
    return error
  }
}

const isTyped = (error: unknown) =>
  ['outside-domain', 'bad-input', 'no-convergence', 'bad-document'].includes((error as { code?: string })?.code ?? '')
const said = (error: unknown) => (error === undefined ? 'answers' : `throws ${String(error).slice(0, 80)}`)

/** What passes where it should be refused with a typed error. */
async function faultsOf(entry: CatalogueEntry): Promise<string[]> {
  const args = await callInExample(entry)
  if (args === undefined) return []
  const faults: string[] = []
  for (const field of entry.arguments) {
    const now = argumentIn(entry, args, field)
    const feed = (value: unknown) => {
      const call = withReplaced(entry, args, field, value)
      if (call === undefined) return
      const error = thrown(entry, call)
      if (!isTyped(error)) faults.push(`${field.path} = ${JSON.stringify(value) ?? 'nothing'}: ${said(error)}`)
    }
    const missing = field.optional ? [] : [undefined, null]
    if (
      field.range === 'any' ||
      field.type === 'unknown' ||
      isMade(entry, field) ||
      (entry.name.startsWith('explain') && field.path.includes('.'))
    )
      continue
    // The word by which an object says which of several kinds it is.
    if (typeof (now as { by?: unknown } | null | undefined)?.by === 'string') feed({ ...(now as object), by: 'lihgt' })
    if (typeof now === 'number') for (const value of ['12', true, {}, ...missing]) feed(value)
    else if ((typeof now === 'string' && field.type !== 'string') || (now === undefined && /^['"]/.test(field.type)))
      feed('lihgt')
    else if (isSeries(now)) for (const value of ['0.5', 12, ...missing]) feed(value)
    else if (typeof now === 'object' && now !== null && !field.path.includes('.') && !ANSWERS.includes(entry.name))
      missing.forEach(feed)
  }
  return faults
}

/** Whether an example gives a list of numbers there. */
const isSeries = (now: unknown) => ArrayBuffer.isView(now) || (Array.isArray(now) && typeof now[0] === 'number')

/** A question about any value, a mixture in which every share has a default, and a check that says no instead of throwing. */
const ANSWERS = ['hasConductivity', 'photonYieldOfGlobalRadiation', 'checkWatering']

describe('from JavaScript every function refuses with a typed error', () => {
  it.each(catalogue.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))('%s', async (_, entry) => {
    expect(await faultsOf(entry)).toEqual([])
  })
})

/** What may stand in a part that is no number by mistake, or after a trip through JSON. */
const ODD: readonly unknown[] = [0, 'lihgt', true, {}, [], [null], null, undefined]
/** Text of a caller's own: names, words for people, symbols of a table that is read. */
const OWN_TEXT =
  /(^|\.)(name|title|label|source|probe|zone|text|about|unit|n|u|key|date|known|method|yTitle|alternative)$|probes\.0$|alarmsFor|cannotTell|regime|given\.0\.reason|diagnosis\.full\.reason$/
/** Works and entries of the catalogue, and sentences for what the library found. */
const OF_THE_LIBRARY = /^explain|^restore|^bib|^cslJson|^findEntries/

/** The parts of a call that a caller writes down: those of its example, and those that the documentation names beside them. */
function writtenParts(entry: CatalogueEntry, args: Arguments): Map<string, readonly string[]> {
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  const made = entry.arguments.filter(({ type }) => isMadeType(type, MADE)).map(({ path }) => path)
  const parts = new Map<string, readonly string[]>()
  const add = (path: readonly string[]) => {
    const shown = [names[Number(path[0])], ...path.slice(1)].join('.')
    if (!made.some((whole) => shown === whole || shown.startsWith(`${whole}.`))) parts.set(shown, path)
  }
  args.forEach((arg, i) => {
    for (const path of partsOf(arg, [], 4)) add([String(i), ...path])
  })
  for (const { path } of entry.arguments) {
    const [head = '', ...keys] = path.split('.')
    const whole = [String(names.indexOf(head)), ...keys]
    if (keys.length === 0 || typeof partAt(args, whole.slice(0, -1)) === 'object') add(whole)
  }
  return parts
}

/** Documents and tables name the place in them; the form of a retention model is made by the library; limits of tests that no example shows. */
const NAMED_OTHERWISE = /^schema |form\.shape|\.(flatLine|grossRange|spike)$/

/** What may stand where a number belongs. */
const ODD_NUMBERS: readonly unknown[] = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  -1e300,
  1e300,
  -1,
  0.5,
  '12',
  true,
  {},
  null,
  undefined,
]

/** Every name that a caller has before him: of the documented arguments, and of what the example gives. */
function namesBefore(entry: CatalogueEntry, args: Arguments): Set<string> {
  const names = new Set(entry.arguments.flatMap(({ path }) => path.split('.')))
  const add = (node: unknown, depth: number) => {
    if (typeof node !== 'object' || node === null || ArrayBuffer.isView(node) || depth === 0) return
    const inside = Array.isArray(node) ? node.slice(0, 3) : Object.values(node)
    if (!Array.isArray(node)) for (const key of Object.keys(node)) names.add(key)
    for (const one of inside) add(one, depth - 1)
  }
  add(args, 7)
  return names
}

/** Whether a refusal names what the caller gave; for text in the place of a number that very number, or what holds it. */
function isNamed(error: unknown, shown: string, known: ReadonlySet<string>, isNoNumber: boolean): boolean {
  const { argument, code } = error as { readonly argument?: string; readonly code: string }
  if (code === 'bad-document' || code === 'no-convergence') return true
  // A function of one plain argument says only what is wrong.
  if (argument === undefined) return !shown.includes('.')
  const steps = argument
    .split(', ')
    .flatMap((one) => one.replace(/\[\d*\]/g, '').split('.'))
    .filter((step) => !/^\d*$/.test(step))
  return (
    steps.every((step) => known.has(step)) && (!isNoNumber || shown.split('.').some((step) => steps.includes(step)))
  )
}

/** What a call that is wrong inside throws that is no refusal, or one that names nothing the caller knows. */
async function untypedOf(entry: CatalogueEntry): Promise<string[]> {
  const args = await callInExample(entry)
  if (args === undefined || entry.topic === 'catalogue' || OF_THE_LIBRARY.test(entry.name)) return []
  const faults: string[] = []
  const known = namesBefore(entry, args)
  for (const [shown, path] of writtenParts(entry, args)) {
    const now = partAt(args, path)
    const isNumber = typeof now === 'number'
    for (const value of isNumber ? ODD_NUMBERS : ODD) {
      const error = thrown(entry, withPart(args, path, value) as Arguments)
      if (error === undefined) continue
      const isNoNumber = isNumber && typeof value !== 'number'
      const isFault =
        !isTyped(error) ||
        (!NAMED_OTHERWISE.test(`${entry.topic} ${shown}`) && !isNamed(error, shown, known, isNoNumber))
      if (isFault) faults.push(`${shown} = ${JSON.stringify(value) ?? 'nothing'}: ${said(error)}`)
    }
    const isWord = typeof now === 'string' && !OWN_TEXT.test(shown) && entry.arguments.every(isOtherText(shown))
    if (isWord && thrown(entry, withPart(args, path, 'lihgt') as Arguments) === undefined)
      faults.push(`${shown} = "lihgt": is no word, and answers`)
  }
  return faults
}

const isOtherText =
  (shown: string) =>
  ({ path, type }: CatalogueEntry['arguments'][number]) =>
    path !== shown || type !== 'string'

describe('what stands inside an argument, wrong in shape or an unknown word, is refused with a typed error', () => {
  it.each(catalogue.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))('%s', async (_, entry) => {
    expect(await untypedOf(entry)).toEqual([])
  })
})

/** What a caller may give by mistake in the place of everything. */
const WHOLES: readonly Arguments[] = [[], [undefined], [null], [[]], [{}], ['lihgt'], [5], [{}, null], [{}, 'lihgt']]

describe('a call without its arguments, or with something else in their place, is refused with a typed error or answered', () => {
  it.each(catalogue.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))('%s', (_, entry) => {
    const untyped = WHOLES.map((args) => [JSON.stringify(args), thrown(entry, args)] as const).filter(
      ([, error]) => error !== undefined && !isTyped(error),
    )
    expect(untyped.map(([args, error]) => `${args}: ${said(error)}`)).toEqual([])
  })
})

/** Objects with functions, or with lists inside, that a function of the library made and that JSON does not keep whole. */
const WITH_FUNCTIONS = /Model$|^Container$|^RichardsFlow$|^ProbeCalibration$|^WaterClasses$/
const takingThem = catalogue.filter(
  ({ name, topic, arguments: fields }) =>
    topic !== 'chart' && name !== 'hasConductivity' && fields.some(({ type }) => WITH_FUNCTIONS.test(type)),
)

describe('a medium, container or calibration that lost its functions and lists is refused with a typed error', () => {
  it.each(takingThem.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))('%s', async (_, entry) => {
    const args = (await callInExample(entry)) ?? []
    const faults = entry.arguments.flatMap((field) => {
      if (!WITH_FUNCTIONS.test(field.type) || typeof argumentIn(entry, args, field) !== 'object') return []
      return [{}, [], 'lihgt', 5, null].flatMap((value) => {
        const call = withReplaced(entry, args, field, value)
        const error = call && thrown(entry, call)
        return isTyped(error) ? [] : [`${field.path} = ${JSON.stringify(value)}: ${said(error)}`]
      })
    })
    expect(faults).toEqual([])
  })
})
