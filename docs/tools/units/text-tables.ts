import type { UnitRow } from '../../../src/quantity/unit-row.js'
import { conversionOf, worked } from './conversion.js'
import { spellingsOf } from './spellings.js'
import { type Family, made, quoted, textUnits } from './table.js'

const WIDTH = 120

/** The types behind the names of kinds that text knows. */
export function kindTypesFile(families: readonly Family[], fileOf: (kind: string) => string): string {
  const names = textKinds(families).map(({ name }) => name)
  const files = new Map<string, string[]>()
  for (const name of names) files.set(fileOf(name), [...(files.get(fileOf(name)) ?? []), name])
  const imports = [...files.keys()]
    .sort(byName)
    .map((file) => importLine('import type', (files.get(file) as string[]).slice().sort(byName), file))
  return [
    ...imports,
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

/** The kinds that text can stand for, with the constructor that checks them and their units. */
export function kindsFile(families: readonly Family[], fileOf: (kind: string) => string): string {
  const kinds = textKinds(families)
  const makers = new Map<string, Set<string>>()
  for (const { name, make } of kinds) makers.set(fileOf(name), (makers.get(fileOf(name)) ?? new Set()).add(make))
  const imports = [...makers.keys()]
    .sort(byName)
    .map((file) => importLine('import', [...(makers.get(file) as Set<string>)].sort(byName), file))
  const lists = new Map<string, string>()
  const entries = kinds.map(({ name, make, units, kept, bare, compound }) => {
    const code = `[\n${units.map(unitCode).join('\n')}\n]`
    const list = lists.get(code) ?? listName(name)
    lists.set(code, list)
    const more = [
      ...(kept === undefined ? [] : [`, kept: ${quoted(kept)}`]),
      ...(bare ? [', bare: true'] : []),
      ...(compound ? [', compound: true'] : []),
    ]
    return `  ${name}: { make: ${make}, units: ${list}${more.join('')} },`
  })
  return [
    ...imports,
    "import type { TextKind, UnitList } from '../text-kind.js'",
    "import type { KindName } from './kind-types.js'",
    '',
    ...[...lists].map(([code, list]) => listLine(`const ${list}: UnitList = `, code)),
    '',
    '/** Every kind that can be read from text. */',
    'export const KINDS: Readonly<Record<KindName, TextKind>> = {',
    ...entries,
    '}',
    '',
  ].join('\n')
}

/** Other spellings of units and of the parts of units. */
export function spellingsFile(families: readonly Family[]): string {
  const { letters, words } = spellingsOf(families)
  const record = (spellings: Readonly<Record<string, string>>) =>
    Object.entries(spellings)
      .map(([key, symbol]) => `    ${/^[A-Za-z_]\w*$/.test(key) ? key : quoted(key)}: ${quoted(symbol)},`)
      .join('\n')
  return [
    "import type { Spellings } from '../unit-form.js'",
    '',
    '/** Other spellings of units: letter for letter, and in capitals and small letters alike. */',
    'export const SPELLINGS: Spellings = {',
    `  letters: {\n${record(letters)}\n  },`,
    `  words: {\n${record(words)}\n  },`,
    '}',
    '',
  ].join('\n')
}

interface TextKindRow {
  readonly name: string
  readonly make: string
  readonly units: readonly UnitRow[]
  readonly kept?: string
  readonly bare: boolean
  readonly compound: boolean
}

function textKinds(families: readonly Family[]): TextKindRow[] {
  return families
    .filter((family) => family.row.noText === undefined)
    .flatMap((family) =>
      made(family).map((kind) => {
        const units = textUnits(family, kind)
        const named = units[0]?.symbol === family.row.unit
        return {
          name: kind.name,
          make: family.units[0].make as string,
          units,
          ...(named ? {} : { kept: family.row.unit }),
          bare: family.row.bare ?? false,
          compound: family.row.compound ?? false,
        }
      }),
    )
}

function unitCode(unit: UnitRow): string {
  const { minus, times, over } = conversionOf(unit.factor)
  const parts = [
    `shown: ${quoted(unit.symbol)}`,
    `ucum: ${quoted(unit.ucum as string)}`,
    ...(minus === undefined ? [] : [`minus: ${worked(minus)}`]),
    ...(times === undefined ? [] : [`times: ${worked(times)}`]),
    ...(over === undefined ? [] : [`over: ${worked(over)}`]),
  ]
  return `  { ${parts.join(', ')} },`
}

/** A list of one unit stands on its line where it fits. */
function listLine(start: string, code: string): string {
  const line = `${start}${code.replace('[\n  ', '[').replace(',\n]', ']')}`
  return line.includes('\n') || line.length > WIDTH ? start + code : line
}

function listName(kind: string): string {
  return `UNITS_OF_${kind.replace(/([a-z])(?=[A-Z])/g, '$1_').toUpperCase()}`
}

function importLine(start: string, names: readonly string[], file: string): string {
  const line = `${start} { ${names.join(', ')} } from '../../quantity/generated/${file}.js'`
  if (line.length <= WIDTH) return line
  return `${start} {\n${names.map((name) => `  ${name},`).join('\n')}\n} from '../../quantity/generated/${file}.js'`
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
