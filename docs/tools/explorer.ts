/**
 * Builds the explorer: one page that works from a file, without a server and without the network. `npm run build` comes first, because the
 * package's one-file build goes into the page: `npx tsx docs/tools/explorer.ts` writes docs/site/explorer/index.html.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import temml from 'temml'
import { type CatalogueEntry, type CatalogueField, catalogue, sourceInFull } from '../../src/catalogue/index.js'
import { FAMILIES } from '../../src/quantity/kinds.table.js'
import { UNITS } from '../../src/quantity/units.table.js'
import type { Validity } from '../../src/quantity/validity.js'
import { readableTex } from '../../src/repl/readable-tex.js'
import { withClasses } from '../documentation/html.js'
import type { Equation, Input } from '../explorer/equation.js'
import { callInExample } from './call-in-example.js'
import { oneFileBuild } from './one-file-build.js'
import { onePage } from './page.js'
import { publicNames } from './public-names.js'
import { parseRange } from './ranges.js'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))
const CORE = [
  'air',
  'control',
  'demand',
  'dielectric',
  'flow',
  'irrigation',
  'medium',
  'probe',
  'quantity',
  'record',
  'uncertainty',
  'water',
]

/** Functions of numbers that give a number: every leaf of what goes in is a number with a range. */
function isEquation(entry: CatalogueEntry): boolean {
  const leaves = entry.arguments.filter(({ shape }) => shape === 'number')
  return (
    CORE.includes(entry.topic) &&
    entry.result.shape === 'number' &&
    leaves.length > 0 &&
    leaves.every(({ range }) => range !== undefined && parseRange(range) !== undefined) &&
    entry.arguments.every(
      (field) =>
        field.shape === 'number' ||
        (field.shape === 'other' && entry.arguments.some(({ path }) => path.startsWith(`${field.path}.`))),
    )
  )
}

function leaf(args: Readonly<Record<string, unknown>>, path: string): unknown {
  return path.split('.').reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], args)
}

function onlyNumbers(value: unknown): boolean {
  if (typeof value === 'object' && value !== null) return Object.values(value).every(onlyNumbers)
  return typeof value === 'number' || value === undefined
}

export async function equationOf(entry: CatalogueEntry): Promise<Equation | undefined> {
  if (!isEquation(entry)) return undefined
  const args = await callInExample(entry)
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  if (args === undefined || !args.every(onlyNumbers)) return undefined
  const byName = Object.fromEntries(names.map((name, i) => [name, args[i]]))
  const [measuredBy, validity] = validityFor(entry.name)
  const inputs = entry.arguments
    .filter(({ shape }) => shape === 'number')
    .map((field) => inputOf(field, leaf(byName, field.path) as number | undefined, validity))
  return {
    name: entry.name,
    topic: entry.topic,
    summary: plain(entry.summary),
    description: entry.description.split('\n\n').filter(Boolean).map(html),
    formula: entry.equation === '' ? '' : entry.equation.split('\n').filter(Boolean).map(mathml).join(''),
    procedure: entry.procedure,
    inputs,
    arguments: names,
    result: plain(entry.result.text),
    unit: entry.result.unit ?? '',
    validity: entry.validity,
    measuredBy,
    sources: entry.sources.map(sourceInFull),
    example: entry.example,
  }
}

function inputOf(field: CatalogueField, value: number | undefined, validity: Validity | undefined): Input {
  const range = parseRange(field.range ?? 'any')
  const integers = range?.integers ?? false
  const low = range?.min ?? -Infinity
  const high = range?.max ?? Infinity
  let [from, to] = [low, high]
  const size = Math.abs(value ?? 0)
  // A range that is much wider than the example would hide what happens there.
  if (!Number.isFinite(to) || (size > 0 && to > 8 * size && to - from > 8 * size))
    to = Math.min(high, size > 0 ? round(2.5 * size) : Number.isFinite(low) ? low + 1 : 1)
  if (!Number.isFinite(from) || to - from > 12 * Math.max(size, to))
    from = Math.max(low, value !== undefined && value < 0 ? -round(2.5 * size) : 0)
  if (from >= to) from = Math.max(low, to - 1)
  // An end that is no value any more is where many curves run away: the first picture stays clear of it.
  const clear = (end: number, other: number) =>
    value === undefined ? end + 0.1 * (other - end) : nearer(end, other, value)
  if (range?.minOpen && from === low) from = integers ? from + 1 : Number(clear(from, to).toPrecision(3))
  if (range?.maxOpen && to === high) to = integers ? to - 1 : Number(clear(to, from).toPrecision(3))
  const span = Object.entries(validity?.inputs ?? {}).find(([name]) => name === field.path.split('.').pop())?.[1]
  return {
    path: field.path,
    label: words(field.path.split('.').pop() as string),
    text: field.text,
    unit: field.unit ?? '',
    range: field.range ?? '',
    optional: field.optional === true,
    integers,
    value,
    maker: makerOf(field),
    measured: span === undefined ? undefined : [span.min, span.max],
    from,
    to,
  }
}

/** A fifth of the axis away from an end that is no value, or nearer where the example is. */
function nearer(end: number, other: number, value: number): number {
  const away = end + 0.2 * (other - end)
  const inside = other > end ? value >= away : value <= away
  return inside ? away : end + (value - end) / 2
}

/** The constructor of a kind that takes a number in the unit in which the kind is kept. */
function makerOf({ type, unit }: CatalogueField): string {
  const kind = /^[A-Z]\w*/.exec(type)?.[0]
  const family = FAMILIES.find(({ name, kinds }) => name === kind || kinds?.some((one) => one.name === kind))
  const row = UNITS.find(
    ({ of, factor, symbol, make, kinds }) =>
      of === family?.name &&
      make !== undefined &&
      factor === '' &&
      (symbol === unit || unit === family?.unit) &&
      (kinds === undefined || (kinds as readonly string[]).includes(kind ?? '')),
  )
  return row?.make ?? ''
}

/** The record of where a function was measured, with its name. */
function validityFor(name: string): [string, Validity | undefined] {
  const found = Object.entries(publicNames).find(
    ([key, one]) => key.startsWith('validity') && (one as Validity).of === name,
  )
  return found === undefined ? ['', undefined] : [found[0], found[1] as Validity]
}

/** Up to the next number that people would choose for the end of an axis. */
function round(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value))
  return Number(([1, 2, 2.5, 3, 4, 5, 6, 8, 10].find((step) => step * power >= value * 0.999) ?? 10) * power)
}

/** `waterContent` as `water content`. */
function words(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/([a-z])(\d)/g, '$1 $2')
    .split(' ')
    .map((word) => (/^[A-Z]{2,}$/.test(word) ? word : word.toLowerCase()))
    .join(' ')
}

function mathml(tex: string): string {
  const alternative = readableTex(tex).replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;')
  const math = withClasses(temml.renderToString(tex, { displayMode: true, throwOnError: true, strict: false }))
  return math.replace('<math', `<math alttext="${alternative}"`)
}

function html(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/`([^`]+)`/g, '<code>$1</code>')
    .replace(/\s+/g, ' ')
}

function plain(text: string): string {
  return text.replace(/`/g, '')
}

/** The page, with everything in it. */
export async function explorerPage(packageBuild: string): Promise<{ page: string; equations: Equation[] }> {
  const equations = (await Promise.all(catalogue.map(equationOf))).filter((one) => one !== undefined)
  const page = await onePage({
    template: here('../explorer/page.html'),
    styles: [here('../explorer/page.css'), here('../documentation/formulas.css')],
    script: here('../explorer/page.mts'),
    packageBuild,
    data: equations,
  })
  return { page, equations }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const target = here('../site/explorer/index.html')
  const { page, equations } = await explorerPage(oneFileBuild())
  mkdirSync(dirname(target), { recursive: true })
  writeFileSync(target, page)
  process.stdout.write(`${equations.length} equations, ${Math.round(page.length / 1000)} kB: ${target}\n`)
}
