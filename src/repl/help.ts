import { catalogue } from '../catalogue/catalogue.js'
import type { CatalogueEntry, CatalogueField } from '../catalogue/entry.js'
import { nearestNames } from '../catalogue/nearest-names.js'
import { sourceInFull } from '../catalogue/source-in-full.js'
import { maxOf } from '../quantity/extremes.js'
import { wordsOf } from '../text/text-kind.js'
import { heldFunctionOf } from './held/functions.js'
import type { FunctionType, SignatureType } from './held/signature-type.js'
import { kindsOf, unitOfKind } from './held/signatures.js'
import { readableTex } from './readable-tex.js'
import { asked } from './search/asked.js'
import { callForm } from './typed-arguments.js'

/** Help for a function, by its description, itself or its name. */
export function helpAbout(about: unknown): string {
  if (isEntry(about)) return helpText(about)
  const method = heldFunctionOf(about)
  if (method !== undefined) return methodText((about as { name: string }).name, method.type)
  const name = typeof about === 'function' ? about.name : String(about)
  const entry = catalogue.find((one) => one.name === name)
  if (entry !== undefined) return helpText(entry)
  const near = nearestNames(
    name,
    catalogue.map((one) => one.name),
  )
  return near.length > 0
    ? `There is no function "${name}". Close to it: ${near.join(', ')}`
    : `There is no function "${name}". Search by word: find('drain')`
}

function isEntry(about: unknown): about is CatalogueEntry {
  return typeof about === 'object' && about !== null && 'summary' in about
}

/** What a method of a model takes and gives; its model's own help says the rest. */
function methodText(name: string, { takes, gives }: FunctionType): string {
  const told = (type: SignatureType) => {
    const kinds = kindsOf(type)
    const [kind] = kinds
    if (kind !== undefined)
      return `${wordsOf(kind)}${unitText(unitOfKind(kind)) === '' ? '' : ` ${unitText(unitOfKind(kind))}`}`
    return type !== 0 && 'unit' in type ? `number ${unitText(type.unit)}` : 'value'
  }
  return `${name}(${takes.map(told).join(', ')})\n  Gives a ${told(gives)}.`
}

/** What a function computes, its equation in readable text, its arguments, domain, source and an example. */
function helpText(entry: CatalogueEntry): string {
  const lines = [callForm(entry), `  ${entry.summary}`, '']
  if (entry.description !== '') lines.push(...paragraphs(entry.description), '')
  if (entry.equation !== '') lines.push(...entry.equation.split('\n').map((line) => `  ${readableTex(line)}`), '')
  if (entry.procedure !== '') lines.push(`  ${entry.procedure}`, '')
  if (entry.arguments.length > 0) lines.push('  Takes', ...entry.arguments.map((field) => `    ${fieldText(field)}`))
  lines.push('  Gives', `    ${[entry.result.text, unitText(entry.result.unit)].filter(Boolean).join(' ')}`)
  for (const field of entry.result.fields) lines.push(`    ${fieldText(field)}`)
  if (entry.throws !== '') lines.push(`  Refuses: ${entry.throws.replace(/`/g, '')}`)
  if (entry.validity !== '') lines.push(`  Valid for: ${entry.validity}`)
  for (const source of entry.sources) lines.push(`  Source: ${sourceInFull(source)}`)
  lines.push('  Example', ...entry.example.split('\n').map((line) => `    ${line}`))
  return lines.join('\n')
}

/** The functions that fit some words, one a line. */
export function foundText(words: string, columns = 100): string {
  const found = asked(words)
  if (found.length === 0) return `No function has the words "${words}". Try one word, such as find('drain').`
  const shown = found.slice(0, 20)
  const wide = maxOf(shown.map((entry) => entry.name.length))
  const lines = shown.map(
    (entry) => `  ${entry.name.padEnd(wide)}  ${cut(entry.summary, Math.max(20, columns - wide - 5))}`,
  )
  const more = found.length > shown.length ? [`  ... and ${found.length - shown.length} more: add a word`] : []
  return [...lines, ...more].join('\n')
}

function cut(text: string, max: number): string {
  return text.length <= max ? text : `${text.slice(0, max - 3).replace(/\s+\S*$/, '')} ...`
}

function fieldText(field: CatalogueField): string {
  const range = field.range === undefined || field.range === 'any' ? '' : `, ${field.range}`
  return `${field.path}${field.optional ? '?' : ''}: ${field.text} ${unitText(field.unit, range)}`.trimEnd()
}

function unitText(unit: string | undefined, range = ''): string {
  return unit === undefined ? '' : `(${unit}${range})`
}

/** Prose with a line for each paragraph; the terminal breaks long ones. */
function paragraphs(text: string): string[] {
  return text.split('\n\n').map((paragraph) => `  ${paragraph.replace(/\s*\n\s*/g, ' ').replace(/`/g, '')}`)
}
