import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { publicIndexes } from '../../docs/tools/house/public-types.js'
import { type PublicWord, publicWords } from '../../docs/tools/house/public-words.js'
import { root } from '../../docs/tools/house/source-files.js'
import { UNITS } from '../../src/quantity/units.table.js'

const CODE = /^[a-z0-9]+(-[a-z0-9]+)*$/
const NAME = /^[a-zA-Z][a-zA-Z0-9]*$|^[A-Z][A-Z0-9_]*$/

/** Words that stand as someone else writes them. */
const EXCEPTIONS: Readonly<Record<string, (one: PublicWord) => boolean>> = {
  'symbols of units, as the SI and UCUM write them': ({ word, where }) =>
    /\.(unit|pressureUnit)$/.test(where) || UNITS.some(({ symbol }) => symbol === word),
  'organisms, by the names of the nomenclature': ({ word, where }) =>
    /\.organism$/.test(where) && /^[A-Z][a-z]+( [a-z]+)?$/.test(word),
  'chemical formulae, and the letters by which a standard names its solutions': ({ word, where }) =>
    /^dielectric .*(cation|anion|salt|solution)$/.test(where) && /^[A-Z][A-Za-z0-9()]*$|^\(/.test(word),
  'ends of an interval in the notation of mathematics': ({ where }) => /\.ends$/.test(where),
  'marks between the fields and digits of a table': ({ where }) => /\.(separator|decimalMark)$/.test(where),
  'sources: the key of a work and the place in it': ({ where }) => /\.source$/.test(where),
}

/** What a result says is its `findings`, what it had to assume its `assumedInputs`: one name each in all topics. */
const OTHER_NAMES = ['warning', 'warnings', 'assumed', 'doubts', 'remarks']

/** What is neither a code nor the name of something that the package exports or takes. */
function prose(words: readonly PublicWord[]): string[] {
  // The row of a table is a word that a caller chooses, and no name of an argument.
  const isName = ({ isProperty, isRow, word }: PublicWord) => isProperty && isRow === undefined && NAME.test(word)
  const names = new Set(words.filter(isName).map(({ word }) => word))
  return words
    .filter(({ word, isProperty }) => !CODE.test(word) && !(isProperty ? NAME.test(word) : names.has(word)))
    .filter((one) => !Object.values(EXCEPTIONS).some((excepted) => excepted(one)))
    .map(({ word, where }) => `"${word}" in ${where}`)
}

describe('words of the public face', () => {
  const folder = mkdtempSync(join(root, 'tests/house/words-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  let words: PublicWord[] = []
  beforeAll(() => {
    words = publicWords(publicIndexes())
  }, 180_000)

  it('are codes in kebab case, or names', () => {
    expect(words.filter(({ word }) => CODE.test(word)).length).toBeGreaterThan(500)
    expect(prose(words)).toEqual([])
  })
  it('name what a result says in one way', () => {
    expect(words.filter(({ isProperty, word }) => isProperty && word === 'findings')).toHaveLength(1)
    expect(words.filter(({ isProperty, word }) => isProperty && OTHER_NAMES.includes(word))).toEqual([])
  })
  it.each([...Object.entries(EXCEPTIONS)])('need the exception for %s', (_name, excepted) => {
    expect(words.some((one) => !CODE.test(one.word) && excepted(one))).toBe(true)
  })
  it('would be refused as prose, in capitals, with another mark, as the row of a table, or as a name of one', () => {
    const faults = {
      "export type Shape = 'box' | 'tapered pot'": 'tapered pot',
      "export function rise(by: 'drain' | 'Seepage'): void {}": 'Seepage',
      "export interface Finding { readonly code: 'too_few' }": 'too_few',
      "export const table = { 'loamy sand': 1 }": 'loamy sand',
      'const lamps = { metalHalide: 1 }; export { lamps }; export type Lamp = keyof typeof lamps': 'metalHalide',
    }
    const path = join(folder, 'index.ts')
    writeFileSync(path, Object.keys(faults).join('\n'))
    const said = prose(publicWords([path])).map((one) => one.split('"')[1])
    expect(said.sort()).toEqual(Object.values(faults).sort())
  }, 180_000)
})
