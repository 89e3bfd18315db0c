/**
 * Adds a row to the table of units in a copy of the tree, runs `units` there, and looks for all that a unit is: constructor and reader,
 * text, UCUM, SenML, help, public face and rows of tests, each used by a program that did not know of it. Then it takes the row away, runs
 * the same command, and the copy must be what it was, byte for byte. `npm run units:trial`, a step of the checks before a change lands.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { inTreeCopy, type TreeCopy } from './house/tree-copy.js'
import { differencesOf, digestsOf } from './units/digests.js'

/** The hectolitre, which the tables lack; the registry of SenML lacks it too, so that its symbol is one of this trial. */
const ROW =
  "  { of: 'Volume', make: 'hectolitres', symbol: 'hL', factor: '* 100', source: SI_PREFIXES, ucum: 'hL', senml: 'hl', words: ['hectolitre', 'hectolitres'] },\n"

/** Uses the unit in every way, and prints what came of it. */
const PROGRAM = `
import * as porewater from '../src/index.js'
import { parseQuantity, formatQuantity, toUcum, fromUcum } from '../src/text/index.js'
import { readingsFromSenml, resolveSenml } from '../src/schema/index.js'
const { hectolitres, inHectolitres } = porewater as never as Record<string, (value: number) => number>
const refusal = (() => { try { return hectolitres!(-1) } catch (error) { return (error as Error).message } })()
const records = resolveSenml('[{"bn":"tank:","bt":1.7e9,"n":"water","u":"hl","v":2}]')
console.log(JSON.stringify([
  hectolitres!(2), inHectolitres!(200), refusal, parseQuantity('2 hectolitres', 'Volume'), parseQuantity('2 hL', 'Volume'),
  formatQuantity(200 as never, 'Volume', { unit: 'hL' }), fromUcum(toUcum(200 as never, 'Volume', 'hL'), 'Volume'),
  readingsFromSenml(records, { water: 'Volume' }).readings[0]?.value,
]))`
const EXPECTED = [200, 2, /volume is -1 hL/, 200, 200, '2 hL', 200, 200]

function expectAll({ inCopy, run, test }: TreeCopy): void {
  mkdirSync(inCopy('trial'))
  writeFileSync(inCopy('trial/use.ts'), PROGRAM)
  const seen = JSON.parse(run('trial/use.ts')) as unknown[]
  rmSync(inCopy('trial'), { recursive: true })
  EXPECTED.forEach((expected, i) => {
    const fits = expected instanceof RegExp ? expected.test(String(seen[i])) : expected === seen[i]
    if (!fits) throw new Error(`use ${i + 1} gave ${seen[i]} instead of ${expected}`)
  })
  for (const [path, part] of [
    ['src/catalogue/entries.json', '"name":"hectolitres"'],
    ['src/catalogue/entries.json', '"name":"inHectolitres"'],
    ['docs/public-api.txt', 'hectolitres'],
    ['docs/public-api.txt', 'inHectolitres'],
    ['tests/quantity/generated/rows.ts', "make: 'hectolitres', reader: 'inHectolitres'"],
  ] as const)
    if (!readFileSync(inCopy(path), 'utf8').includes(part)) throw new Error(`${path} does not have ${part}`)
  // Text, UCUM and factor against mathjs, by tests that run over the generated rows.
  const own = test('tests/text/oracle.test.ts').filter(({ name }) => /\bhL\b/.test(name))
  if (own.length < 2 || own.some(({ passed }) => !passed)) throw new Error(`${own.length} tests looked at the unit`)
}

inTreeCopy((copy) => {
  const { folder, inCopy, run } = copy
  const before = digestsOf(folder)
  const table = readFileSync(inCopy('src/quantity/units.table.ts'), 'utf8')
  writeFileSync(inCopy('src/quantity/units.table.ts'), table.replace(/\]\n$/, `${ROW}]\n`))
  run('docs/tools/units.ts')
  expectAll(copy)
  writeFileSync(inCopy('src/quantity/units.table.ts'), table)
  run('docs/tools/units.ts')
  // The catalogue is not kept with the sources: where there was none, there is one now.
  const made = (path: string) => /entries\.json$|signatures\.json$|catalogue\.sha256$/.test(path) && !before.has(path)
  const traces = differencesOf(before, digestsOf(folder)).filter(
    (path) => !made(path) || readFileSync(inCopy(path), 'utf8').includes('ectolitres'),
  )
  if (traces.length > 0) throw new Error(`the row left traces: ${traces.join(', ')}`)
  console.log('a row of the table of units gave all that a unit is, and left no trace')
})
