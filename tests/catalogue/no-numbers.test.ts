import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { MADE } from '../../docs/tools/replaced-argument.js'
import { isMadeType, partAt, partsOf, withPart } from '../../docs/tools/replaced-part.js'
import { revoked, throwing } from '../support/hostile.js'

/** What stands for no number and no object. */
const NONE: readonly (readonly [string, unknown])[] = [
  ['null', null],
  ["''", ''],
  ["'1'", '1'],
  ['true', true],
  ['5n', 5n],
  ['a symbol', Symbol('x')],
  ['a revoked proxy', revoked()],
  ['a proxy that throws', throwing()],
]

/** More of what the language takes for true or false, and is neither. */
const NEITHER: readonly (readonly [string, unknown])[] = [
  ["'false'", 'false'],
  ['0', 0],
  ['1', 1],
]

/** Sentences for what the library found, states that it kept, and pictures of what it gave; the guards of those have tests of their own. */
const OF_THE_LIBRARY = /^explain|^restore|^chart|^drawPanels$/
/** `sizeShot` takes null for left out, and reads at once: a look more cost a third of its speed. Examples that take seconds: each function that they call is looked at by itself. */
const SLOW =
  /^(sizeShot|rehearse|rehearseMany|diagnoseDay|reportZone|drainageTimes|sorptivityPhilip1957|fitWaterStoreToFlow|rehearsed\w+|fitMediumToRecord|carefulPerson|perfectPlanner|layeredFlowRichards1931)$/
const looked = catalogue.filter(
  ({ name, topic }) => topic !== 'catalogue' && !OF_THE_LIBRARY.test(name) && !SLOW.test(name),
)

/** What the library found in a series, drew from it or resolved is given back as it is. */
const FOUND =
  /^(record|flow) .*(shots|segments|dryDowns|profile)\.0|^flow .*(medium|container|flow)$|runReducer |^schema records\.0/

interface Part {
  readonly shown: string
  readonly path: readonly string[]
  readonly field: CatalogueField | undefined
}

/** The parts of a call that a caller writes down, those that its example leaves out among them. */
function partsOfCall(entry: CatalogueEntry, args: readonly unknown[]): Part[] {
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  const made = entry.arguments.filter(({ type, shape }) => shape === 'other' && isMadeType(type, MADE))
  const parts = new Map<string, readonly string[]>()
  args.forEach((arg, i) => {
    for (const path of partsOf(arg, [], 3)) parts.set([names[i], ...path].join('.'), [String(i), ...path])
  })
  for (const { path } of entry.arguments) {
    const [head = '', ...keys] = path.split('.')
    const whole = [String(names.indexOf(head)), ...keys]
    if (keys.length === 0 || isThere(partAt(args, whole.slice(0, -1)))) parts.set(path, whole)
  }
  return [...parts]
    .filter(([shown]) => !made.some(({ path }) => shown === path || shown.startsWith(`${path}.`)))
    .map(([shown, path]) => ({ shown, path, field: entry.arguments.find((one) => one.path === shown) }))
    .filter(({ shown }) => !FOUND.test(`${entry.topic} ${shown}`) && !FOUND.test(`${entry.name} ${shown}`))
}

const isThere = (value: unknown) => typeof value === 'object' && value !== null

/** How a call ends: answered, refused, or by an error that is none of the library's; what the caller's own object throws is the caller's. */
function endOf({ name }: CatalogueEntry, args: readonly unknown[]): string {
  try {
    ;(publicNames[name] as (...given: readonly unknown[]) => unknown)(...args)
    return 'answers'
  } catch (error) {
    const { code, message } = error as { code?: string; message: string }
    const isTyped = ['outside-domain', 'bad-input', 'no-convergence', 'bad-document'].includes(code ?? '')
    return isTyped || message === 'nothing can be read' ? 'refused' : String(error).slice(0, 90)
  }
}

/** Numbers that are only repeated, passed over or kept as text with a unit, and a check that answers by refusals of its own. */
const REPEATED =
  /^checkWatering |^trustedReadings |\.version$|^fitRetention request\.form|^replanDay .*given\.0\.(perEmitter|waterContent)$|^convert\w+ |^(recordsFromReadings|tidyCsvFromReadings|senmlFromReadings) .*value$|^resolveSenml options\.now|^writeDocument |^entriesOfRecord .*given/

function isNumberPart({ field, path }: Part, args: readonly unknown[]): boolean {
  const now = partAt(args, path)
  return typeof now === 'number' || (now === undefined && field?.shape === 'number')
}

/** True or false that is only repeated, or of which the documentation says that only true is true; a check that answers by refusals of its own. */
const ONLY_TRUE = /^checkWatering |^planRecovery .*clockChecked$|valveClosesByItself$|^alarmConditions .*full\.known$/

function isBooleanPart({ field, path }: Part, args: readonly unknown[]): boolean {
  return typeof partAt(args, path) === 'boolean' || field?.type === 'boolean'
}

async function faultsOf(entry: CatalogueEntry): Promise<string[]> {
  const args = await callOf(entry)
  if (args === undefined) return []
  return partsOfCall(entry, args).flatMap((part) => {
    const isNumber = isNumberPart(part, args) && !REPEATED.test(`${entry.name} ${part.shown}`)
    const isBoolean = isBooleanPart(part, args) && !ONLY_TRUE.test(`${entry.name} ${part.shown}`)
    const isGap = part.path.at(-1) === '0' || /null/.test(part.field?.type ?? '')
    return [...NONE, ...(isBoolean ? NEITHER : [])].flatMap(([what, value]) => {
      const end = endOf(entry, withPart(args, part.path, value) as unknown[])
      if (end === 'refused') return []
      // JSON makes null of a reading that is missing, and text of a document may carry its unit.
      const isAnswer = end === 'answers' && (!isNumber || (isGap && value === null)) && (!isBoolean || value === true)
      return isAnswer ? [] : [`${part.shown} = ${what}: ${end}`]
    })
  })
}

const callOf = rememberedCalls()

describe('null, text, true, a bigint, a symbol or a proxy that was revoked is no number, no object, and but for true neither true nor false', () => {
  it.each(looked.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))(
    'which is refused with a typed error by %s',
    async (_, entry) => expect(await faultsOf(entry)).toEqual([]),
  )
})
