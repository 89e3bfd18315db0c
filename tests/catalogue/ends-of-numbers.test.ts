import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { parseRange } from '../../docs/tools/ranges.js'
import { withReplaced } from '../../docs/tools/replaced-argument.js'

const callOf = rememberedCalls()

/** The ends of what a number can be, as far as a documented range lets them in: next to an open zero, and at the end of all numbers. */
function extremesIn(range: string): number[] {
  const known = parseRange(range)
  if (known?.kind !== 'interval' || known.integers) return []
  const { min, max, minOpen, maxOpen } = known
  const ends = []
  if (min === 0 && minOpen) ends.push(Number.MIN_VALUE)
  if (max === 0 && maxOpen) ends.push(-Number.MIN_VALUE)
  if (max === Infinity) ends.push(Number.MAX_VALUE)
  if (min === -Infinity) ends.push(-Number.MAX_VALUE)
  return ends
}

/** The first place in a result that is no finite number. */
function endlessIn(value: unknown, path: string, depth = 6): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} is ${value}`
  if (typeof value !== 'object' || value === null || depth === 0) return undefined
  const entries = ArrayBuffer.isView(value)
    ? Array.from(value as Float64Array, (one, i) => [i, one] as const)
    : Object.entries(value)
  for (const [key, inside] of entries) {
    const found = endlessIn(inside, `${path}.${key}`, depth - 1)
    if (found !== undefined) return found
  }
  return undefined
}

function outcome(entry: CatalogueEntry, args: unknown[]): string | undefined {
  try {
    return endlessIn((publicNames[entry.name] as (...args: unknown[]) => unknown)(...args), 'result')
  } catch (error) {
    return (error as { code?: string }).code === undefined ? `throws ${String(error).slice(0, 60)}` : undefined
  }
}

const asked = (field: CatalogueField) => field.shape === 'number' && extremesIn(field.range ?? '').length > 0
const probed = catalogue.filter((entry) => entry.arguments.some(asked))

async function faultsOf(entry: CatalogueEntry): Promise<string[]> {
  const args = await callOf(entry)
  if (args === undefined) return ['the example does not call it']
  const faults: string[] = []
  // What the example itself gives may hold NaN for what is missing.
  const usual = outcome(entry, args)
  for (const field of entry.arguments.filter(asked))
    for (const value of extremesIn(field.range as string)) {
      const call = withReplaced(entry, args, field, value)
      const found = call && outcome(entry, call)
      if (found !== undefined && found !== usual) faults.push(`${field.path} = ${value}: ${found}`)
    }
  return faults
}

describe('all functions whose arguments reach an end of the numbers', () => {
  it('are asked', () => {
    expect(probed.length).toBeGreaterThan(200)
  })
})

describe('a number at the ends of what numbers can be is refused, or answered with finite numbers', () => {
  it.each(probed.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))('%s', async (_, entry) => {
    expect(await faultsOf(entry)).toEqual([])
  })
})
