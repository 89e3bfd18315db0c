import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { runExample } from '../../docs/tools/examples.js'
import { publicNames } from '../../docs/tools/public-names.js'

/** Arrays of the caller into which a function is asked to write its results. */
const WRITTEN: Readonly<Record<string, RegExp>> = {
  applyCalibrationToSeries: /^0\.output\./,
  convertInto: /^0\.output\./,
  hourlySeriesAsce2005: /^0\.(?:short|tall)\./,
}

/** A copy of all that is data; functions and what was made by classes stay themselves. */
function copied(value: unknown): unknown {
  if (ArrayBuffer.isView(value)) return (value as Float64Array).slice()
  if (Array.isArray(value)) return value.map(copied)
  if (value instanceof Map) return new Map([...value].map(([key, item]) => [key, copied(item)]))
  if (typeof value !== 'object' || value === null || Object.getPrototypeOf(value) !== Object.prototype) return value
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, copied(item)]))
}

/** Where two values differ. */
function changed(before: unknown, after: unknown, path: string): string[] {
  if (Object.is(before, after)) return []
  if (typeof before !== 'object' || before === null || typeof after !== 'object' || after === null) return [path]
  const keys = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...keys].flatMap((key) =>
    changed(
      (before as Record<string, unknown>)[key],
      (after as Record<string, unknown>)[key],
      `${path}${path && '.'}${key}`,
    ),
  )
}

const entries = catalogue.filter(({ example }) => example !== undefined)

describe('a function leaves what it is given as it was', () => {
  it.each(entries.map((entry) => [entry.name, entry] as const))('%s', async (_, entry: CatalogueEntry) => {
    const original = publicNames[entry.name] as (...args: unknown[]) => unknown
    const found: string[] = []
    const spy = (...args: unknown[]) => {
      const before = copied(args)
      const result = original(...args)
      found.push(...changed(before, args, ''))
      return result
    }
    await runExample(entry.example, { ...publicNames, [entry.name]: spy })
    const meant = WRITTEN[entry.name]
    expect(found.filter((path) => !meant?.test(path)).slice(0, 5)).toEqual([])
    // Of what writes, the example shows that a change is seen here.
    if (meant !== undefined) expect(found.length).toBeGreaterThan(0)
  })
})
