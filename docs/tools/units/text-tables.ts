import type { UnitRow } from '../../../src/quantity/unit-row.js'
import { codeOf, usualHint, wordsOf } from '../../../src/text/text-kind.js'
import { conversionOf, worked } from './conversion.js'
import { importLine } from './lines.js'
import { spellingsOf } from './spellings.js'
import { type Family, made, textUnits } from './table.js'

/** The types behind the names of kinds that text knows. */
export function kindTypesFile(families: readonly Family[]): string {
  const names = textKinds(families).map(({ name }) => name)
  return [
    importLine('import type', [...names].sort(byName), '../../quantity/generated/kinds.js'),
    '',
    '/** The type behind each name of a kind. */',
    'export interface KindTypes {',
    ...names.map((name) => `  readonly ${name}: ${name}`),
    '}',
    '',
    '/** Name of a kind, as in the typings: `Volume`, `DrainFraction`, `SuctionHead`. */',
    'export type KindName = keyof KindTypes',
    '',
  ].join('\n')
}

/** The kinds that text can stand for, each looked up when it is asked for. */
export function textKindsFile(families: readonly Family[]): string {
  return [
    "import { kindNamed } from '../kind-named.js'",
    "import type { TextKind } from '../text-kind.js'",
    "import type { KindName } from './kind-types.js'",
    '',
    '/** Every kind that can be read from text. */',
    'export const KINDS: Readonly<Record<KindName, TextKind>> = {',
    ...textKinds(families).flatMap(({ name }) => [`  get ${name}() {`, `    return kindNamed('${name}')`, '  },']),
    '}',
    '',
  ].join('\n')
}

/**
 * The kinds with their domains and units as lines of text, because every app that reads text carries them: names, what a number is where
 * the name does not say it, the unit in which it is kept if it is not the first one, range, hint without its usual start, marks (b for bare,
 * c for compound), units.
 */
export function textTableFile(families: readonly Family[]): string {
  const rows = new Map<string, string[]>()
  for (const { name, family, units, kept, marks } of textKinds(families)) {
    const { quantity, range, hint } = family.row
    const usual = usualHint(quantity, rangeCode(range))
    const words = new RegExp(`^${usual}(?=[;,]|$)`).test(hint) ? hint.slice(usual.length) : hint
    const code = [quantity, kept, rangeCode(range), words, marks, units.map(unitCode).join('~')].join('|')
    rows.set(code, [...(rows.get(code) ?? []), name])
  }
  const lines = [...rows].map(([code, names]) => {
    const [quantity = '', ...rest] = code.split('|')
    return [names.join(' '), wordsOf(names[0]!) === quantity ? '' : quantity, ...rest].join('|')
  })
  return [
    '/** Kinds that share their units, a line each: see `kindNamed`, which reads it. */',
    `export const TEXT_TABLE = ${block(lines)}`,
    '',
  ].join('\n')
}

/** Other spellings of units and of the parts of units, as lines of text, for the same reason. */
export function spellingsFile(families: readonly Family[]): string {
  const { letters, words } = spellingsOf(families)
  const lines = (spellings: Readonly<Record<string, string>>) => {
    const bySymbol = new Map<string, string[]>()
    for (const [key, symbol] of Object.entries(spellings)) bySymbol.set(symbol, [...(bySymbol.get(symbol) ?? []), key])
    return [...bySymbol].map(([symbol, keys]) => [symbol, ...keys].join('|'))
  }
  return [
    '/** Symbols with spellings that are taken letter for letter. */',
    `export const LETTERS = ${block(lines(letters))}`,
    '',
    '/** Symbols with spellings that are taken in any case, without the s of the plural. */',
    `export const WORDS = ${block(lines(words))}`,
    '',
  ].join('\n')
}

/** Lines as one literal. */
function block(lines: readonly string[]): string {
  const text = lines.join('\n')
  if (/[`\\$]/.test(text)) throw new Error('a symbol, spelling or hint has a sign that code would misread: ` \\ or $')
  return `\`${text}\``
}

interface TextKindRow {
  readonly name: string
  readonly family: Family
  readonly units: readonly UnitRow[]
  readonly kept: string
  readonly marks: string
}

function textKinds(families: readonly Family[]): TextKindRow[] {
  return families
    .filter((family) => family.row.noText === undefined)
    .flatMap((family) =>
      made(family).map(({ name }, i) => {
        const units = textUnits(family, made(family)[i]!)
        const { unit, bare, compound } = family.row
        const kept = units[0]?.symbol === unit ? '' : unit
        return { name, family, units, kept, marks: `${bare ? 'b' : ''}${compound ? 'c' : ''}` }
      }),
    )
}

/** A unit as `symbol`, `symbol:conversion` or `symbol:conversion:code`, the code only where it does not follow from the symbol. */
function unitCode(unit: UnitRow): string {
  const { minus, times, over } = conversionOf(unit.factor)
  const steps = [['-', minus] as const, ['*', times] as const, ['/', over] as const]
  const conversion = steps.map(([sign, digits]) => (digits === undefined ? '' : `${sign}${worked(digits)}`)).join('')
  const code = unit.ucum === codeOf(unit.symbol) ? '' : (unit.ucum as string)
  return [unit.symbol, conversion, code].join(':').replace(/:+$/, '')
}

/** `[0, ∞)` as `[0,)`: an end that is left out is infinite. */
function rangeCode(range: string): string {
  return range.replace(' ', '').replace(/-?∞/g, '')
}

/** The order in which the formatter sorts names: by letter, and of one letter the capital first. */
export function byName(a: string, b: string): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [x = '', y = ''] = [a[i], b[i]]
    if (x === y) continue
    const [small, other] = [x.toLowerCase(), y.toLowerCase()]
    return small === other ? (x < y ? -1 : 1) : small < other ? -1 : 1
  }
  return a.length - b.length
}
