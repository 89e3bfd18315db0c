/**
 * Builds the explorer: one page that works from a file, without a server and without the network. `npx tsup` comes first, because the
 * package's one-file build goes into the page: `npx tsx docs/tools/explorer.ts` writes docs/site/explorer/index.html.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import temml from 'temml'
import { type CatalogueEntry, type CatalogueField, catalogue, sourceInFull } from '../../src/catalogue/index.js'
import { readableTex } from '../../src/repl/readable-tex.js'
import type { Equation, Input } from '../explorer/equation.js'
import { callInExample } from './call-in-example.js'
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
  const inputs = entry.arguments
    .filter(({ shape }) => shape === 'number')
    .map((field) => inputOf(field, leaf(byName, field.path) as number | undefined))
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
    sources: entry.sources.map(sourceInFull),
    example: entry.example,
  }
}

function inputOf(field: CatalogueField, value: number | undefined): Input {
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
  const least = (to - from) / 1000
  if (range?.minOpen && from === low) from = integers ? from + 1 : Number((from + least).toPrecision(6))
  if (range?.maxOpen && to === high) to = integers ? to - 1 : Number((to - least).toPrecision(6))
  return {
    path: field.path,
    label: words(field.path.split('.').pop() as string),
    text: field.text,
    unit: field.unit ?? '',
    range: field.range ?? '',
    optional: field.optional,
    integers,
    value,
    from,
    to,
  }
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
  const math = temml.renderToString(tex, { displayMode: true, throwOnError: true, strict: false })
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
  const bundled = await build({
    entryPoints: [here('../explorer/page.mts')],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
    write: false,
  })
  const script = (text: string) => text.replace(/<\/(script)/gi, '<\\/$1').replace(/<!--/g, '<\\!--')
  const parts: Readonly<Record<string, string>> = {
    STYLE: readFileSync(here('../explorer/page.css'), 'utf8'),
    DATA: JSON.stringify(equations).replace(/</g, '\\u003c'),
    PACKAGE: script(packageBuild),
    PAGE: script(bundled.outputFiles[0]?.text ?? ''),
  }
  const template = readFileSync(here('../explorer/page.html'), 'utf8')
  return { page: template.replace(/\/\*([A-Z]+)\*\//g, (_, name: string) => parts[name] as string), equations }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const target = here('../site/explorer/index.html')
  const { page, equations } = await explorerPage(readFileSync(here('../../dist/porewater.iife.js'), 'utf8'))
  mkdirSync(dirname(target), { recursive: true })
  writeFileSync(target, page)
  process.stdout.write(`${equations.length} equations, ${Math.round(page.length / 1000)} kB: ${target}\n`)
}
