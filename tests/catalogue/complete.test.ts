import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { runExample } from '../../docs/tools/examples.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { parseRange } from '../../docs/tools/ranges.js'

/** What the documentation of a function still lacks. */
function gaps(entry: CatalogueEntry): string[] {
  const missing: string[] = []
  if (!/^[A-Z].{10,}[.:]$/s.test(entry.summary)) missing.push('a first sentence')
  if (entry.equation === '' && entry.procedure === '') missing.push('an equation in TeX, or @procedure')
  if (entry.sources.length === 0) missing.push('@source')
  if (!entry.example.includes('// =>')) missing.push('an example with a checked value')
  // What another function of the package made is documented where it is made.
  const made = entry.arguments.filter((field) => /made by `/.test(field.text)).map((field) => `${field.path}.`)
  for (const field of entry.arguments) {
    if (made.some((path) => field.path.startsWith(path))) continue
    if (field.text === '') missing.push(`a description of ${field.path}`)
    if (field.shape !== 'other') missing.push(...numberGaps(field))
  }
  for (const field of entry.result.fields) {
    if (field.shape !== 'other' && !field.unit) missing.push(`the unit of the result's ${field.path}`)
  }
  if (entry.result.shape !== 'other' && !entry.result.unit) missing.push('the unit of the result')
  if (entry.result.text === '' && entry.result.type !== 'void') missing.push('@returns')
  const refuses = entry.arguments.some((field) => field.shape !== 'other' && !/^any\b/.test(field.range ?? 'any'))
  if (refuses && entry.throws === '') missing.push('@throws')
  return missing
}

function numberGaps(field: CatalogueField): string[] {
  const missing: string[] = []
  if (!field.unit) missing.push(`the unit of ${field.path}`)
  if (!field.range) missing.push(`the range of ${field.path}`)
  else if (parseRange(field.range) === undefined)
    missing.push(`a range of ${field.path} that can be read (it says "${field.range}")`)
  return missing
}

describe('the catalogue', () => {
  it('holds every public function of the core', () => {
    const functions = Object.keys(publicNames).filter(
      (name) => typeof publicNames[name] === 'function' && !/^[A-Z]/.test(name),
    )
    const listed = new Set(catalogue.map((entry) => entry.name))
    expect(functions.filter((name) => !listed.has(name))).toEqual([])
  })
  it('has no two entries of one name', () => {
    const names = catalogue.map((entry) => entry.name)
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
  })
  it.each(catalogue.map((entry) => [entry.name, entry] as const))('%s is documented in full', (_, entry) => {
    expect(gaps(entry)).toEqual([])
  })
})

describe('examples give what they print', () => {
  it.each(catalogue.map((entry) => [entry.name, entry] as const))('%s', async (_, entry) => {
    const checked = await runExample(entry.example, publicNames)
    expect(checked.length, 'values that are checked').toBeGreaterThan(0)
    expect(checked.flatMap((check) => check.problem ?? [])).toEqual([])
  })
})
