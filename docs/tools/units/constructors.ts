import type { UnitRow } from '../../../src/quantity/unit-row.js'
import { kept, keptCode, keptTex, readCode, readTex } from './conversion.js'
import { importLine, WIDTH } from './lines.js'
import { type Family, made, quoted, readerOf } from './table.js'

/** The constructors and readers of some families, with their domains. `kindNames` are those that their types can be made of. */
export function constructorFile(families: readonly Family[], kindNames: readonly string[]): string {
  const body = families.flatMap((family) => [
    ...domains(family),
    ...family.units.flatMap((unit) => [constructorOf(family, unit), readerCode(family, unit)]),
  ])
  const code = body.filter((part) => part !== '').join('\n\n')
  const guards = ['convertedIn', 'numberIn', 'numberOf', 'plain'].filter((name) => code.includes(`${name}(`))
  const bare = code.replace(/\/\*\*.*?\*\//gs, '')
  const used = kindNames.filter((name) => new RegExp(`\\b${name}\\b`).test(bare))
  const imports = [
    "import type { Domain } from '../domain.js'",
    `import { ${guards.join(', ')} } from '../guard.js'`,
    ...(code.includes('Made<') ? ["import type { Made } from '../kind.js'"] : []),
    importLine('import type', used, './kinds.js'),
  ]
  return `${imports.join('\n')}\n\n${code}\n`
}

function domains(family: Family): string[] {
  const { row } = family
  return [
    domain(domainName(row.name), row.quantity, row.unit, row.range, row.hint),
    ...family.units
      .filter((unit) => unit.range !== undefined)
      .map((unit) =>
        domain(
          domainName(unit.make as string),
          row.quantity,
          unit.called ?? unit.symbol,
          unit.range as string,
          unit.hint ?? row.hint,
        ),
      ),
  ]
}

function domain(name: string, quantity: string, unit: string, range: string, hint: string): string {
  const match = /^([[(])(-?[\d.∞]+), (-?[\d.∞]+)([\])])$/.exec(range)
  if (match === null) throw new Error(`"${range}" is no interval`)
  const [, open, min = '', max = '', close] = match
  const end = (text: string) => text.replace('∞', 'Infinity')
  return [
    `const ${name}: Domain = {`,
    `  quantity: ${quoted(quantity)},`,
    `  unit: ${quoted(unit)},`,
    `  min: ${end(min)},`,
    `  max: ${end(max)},`,
    `  ends: '${open}${close}',`,
    `  hint: ${quoted(hint)},`,
    '}',
  ].join('\n')
}

function domainName(name: string): string {
  return name
    .replace(/^Any/, '')
    .replace(/([a-z])(?=[A-Z])/g, '$1_')
    .toUpperCase()
}

/** What a family makes, in the words of its documentation: the whole of it, and as far as a comma. */
function words(family: Family): { long: string; short: string } {
  const { noun } = family.row
  const long = noun ?? (family.kinds[0]?.about ?? '').split(/[;:]|\.$| \(/)[0] ?? ''
  return { long, short: long.split(',')[0]! }
}

/** Type of what is made, and of what is read. */
function types(family: Family): { generic: string; given: string; read: string; several: boolean } {
  const { row, kinds } = family
  const several = row.kinds !== undefined && made(family).length > 1
  const { unnamed } = row
  const fallback = typeof unnamed === 'object' ? unnamed.name : (unnamed ?? '')
  const bound = typeof unnamed === 'object' ? `${row.name} | ${unnamed.name}` : row.name
  const given = `Made<Q, ${row.name}, ${fallback}>`
  if (!several)
    return { generic: '', given: String(kinds[0]?.name), read: kinds.map((kind) => kind.name).join(' | '), several }
  return { generic: `<Q = ${fallback}>`, given, read: bound, several }
}

function constructorOf(family: Family, unit: UnitRow): string {
  const { make } = unit
  if (make === undefined) return ''
  const { row } = family
  const { generic, given, several } = types(family)
  const { long, short } = words(family)
  const name = unit.called ?? unit.symbol
  const from = name === '1' ? 'a plain number' : `a number in ${name}`
  const sentence = several
    ? `${long} from ${from}; its kind is that of the place where it is used.`
    : `${long}, from ${from}.`
  const example = unit.example ?? 2
  return `${comment([
    sentence,
    '',
    `@equation \`${row.tex} = ${keptTex(unit.factor, 'v')}\``,
    `@param value - ${name === '1' ? short : `Number in ${name}`}. Unit: ${name}. Range: ${unit.range ?? row.range}.`,
    `@returns ${short}. Unit: ${row.unit}.`,
    `@source ${unit.source}`,
    '@example',
    `${make}(${example}) // => ${printed(kept(unit.factor, example))}`,
  ])}\n${signature(make, generic, 'value: number', given)} {\n${cast(guarded(family, unit), given)}\n}`
}

/** A cast as the formatter breaks it. */
function cast(code: string, type: string): string {
  const line = `  return ${code} as ${type}`
  if (line.length <= WIDTH) return line
  const [, name = type, inner = ''] = /^(\w+)<(.*)>$/.exec(type) ?? []
  return `  return ${code} as ${name}<\n${inner.replace(/^|, /g, (gap) => `${gap && ',\n'}    `)}\n  >`
}

function guarded(family: Family, unit: UnitRow): string {
  const kept = keptCode(unit.factor, unit.factor === '' ? 'value' : 'plain(value)')
  const name = unit.called ?? unit.symbol
  const around = domainName(family.row.name)
  if (unit.range !== undefined) {
    const code = keptCode(unit.factor, `numberIn(value, ${domainName(unit.make as string)})`)
    return unit.factor === '' ? code : `(${code})`
  }
  if (kept === 'value') return `numberIn(value, ${around})`
  return `convertedIn(value, ${kept}, ${quoted(name)}, ${around})`
}

function readerCode(family: Family, unit: UnitRow): string {
  const { make, noReader } = unit
  if (make === undefined || noReader !== undefined) return ''
  const { row } = family
  const name = unit.called ?? unit.symbol
  const reader = readerOf(make)
  const example = unit.example ?? 2
  return `${comment([
    `The number of ${name === '1' ? 'ones' : name} in a quantity that ${make}() makes.`,
    '',
    `@equation \`v = ${readTex(unit.factor, row.tex)}\``,
    `@param quantity - ${words(family).short}. Unit: ${row.unit}. Range: any.`,
    `@returns Plain number. Unit: ${name}.`,
    `@source ${unit.source}`,
    '@example',
    `${reader}(${make}(${example})) // => ${example}`,
  ])}\n${signature(reader, '', `quantity: ${types(family).read}`, 'number')} {\n  return ${readCode(unit.factor, 'numberOf(quantity)')}\n}`
}

function signature(name: string, generic: string, argument: string, result: string): string {
  const line = `export function ${name}${generic}(${argument}): ${result}`
  return `${line} {`.length <= WIDTH ? line : `export function ${name}${generic}(\n  ${argument},\n): ${result}`
}

function comment(lines: readonly string[]): string {
  return ['/**', ...lines.map((line) => (line === '' ? ' *' : ` * ${line}`)), ' */'].join('\n')
}

/** A number as the examples print it: twelve digits, without an exponent where that stays readable. */
function printed(number: number): string {
  const text = String(Number(number.toPrecision(12)))
  return /e-[67]$/.test(text) ? number.toFixed(12).replace(/0+$/, '') : text
}
