import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { callInExample } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { argumentIn, isMade, withReplaced } from '../../docs/tools/replaced-argument.js'

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
    else if ((typeof now === 'string' && field.type !== 'string') || (now === undefined && /^'/.test(field.type)))
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
