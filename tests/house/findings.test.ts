import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type PublicFindings, publicFindings } from '../../docs/tools/house/public-findings.js'
import { publicIndexes } from '../../docs/tools/house/public-types.js'
import { root } from '../../docs/tools/house/source-files.js'

/** Numbers of findings whose unit nobody says. */
function withoutUnit({ numbers }: PublicFindings): string[] {
  return numbers.filter(({ unit }) => unit === undefined).map(({ where }) => where)
}

describe('findings of the public types', () => {
  let found: PublicFindings
  let faulty: PublicFindings
  const folder = mkdtempSync(join(root, 'tests/house/findings-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  beforeAll(() => {
    found = publicFindings(publicIndexes())
    const path = join(folder, 'index.ts')
    writeFileSync(path, FAULTS)
    faulty = publicFindings([path])
  }, 180_000)

  it('name the unit of every number', () => {
    expect(found.numbers.length).toBeGreaterThan(100)
    expect(withoutUnit(found)).toEqual([])
  })
  it('would be refused with a number that has no unit, or the unit of a finding that may leave it out', () => {
    expect(withoutUnit(faulty).map((where) => where.split('.')[1])).toEqual(['bare', 'value', 'each'])
  })
})

const FAULTS = `
export interface Bare {
  readonly code: 'bare'
  readonly level: 'note'
  /** So much. */
  readonly bare: number
}
export interface Loose {
  readonly code: 'loose'
  readonly level: 'note'
  /** So much. Unit: that of \`unit\`. */
  readonly value: number
  readonly unit?: string
}
export interface Lists {
  readonly code: 'lists'
  readonly level: 'note'
  readonly each: readonly number[]
}
export interface Whole {
  readonly code: 'whole'
  readonly level: 'note'
  /** So long. Unit: s. */
  readonly time: number
}
`
