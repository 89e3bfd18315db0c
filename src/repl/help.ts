import type { CatalogueEntry, CatalogueField } from '../catalogue/entry.js'
import { readableTex } from './readable-tex.js'

/** Help for one function: what it computes, its equation in readable text, arguments, source and an example. */
export function helpText(entry: CatalogueEntry): string {
  const names = entry.arguments
    .filter((field) => !field.path.includes('.'))
    .map((field) => field.path + (field.optional ? '?' : ''))
  const lines = [`${entry.name}(${names.join(', ')})`, `  ${entry.summary}`, '']
  if (entry.equation !== '') lines.push(...entry.equation.split('\n').map((line) => `  ${readableTex(line)}`), '')
  if (entry.procedure !== '') lines.push(`  ${entry.procedure}`, '')
  if (entry.arguments.length > 0) lines.push('  Takes', ...entry.arguments.map((field) => `    ${fieldText(field)}`))
  lines.push('  Gives', `    ${[entry.result.text, unitText(entry.result.unit)].filter(Boolean).join(' ')}`)
  for (const field of entry.result.fields) lines.push(`    ${fieldText(field)}`)
  if (entry.throws !== '') lines.push(`  Refuses: ${entry.throws.replace(/`/g, '')}`)
  if (entry.validity !== '') lines.push(`  Valid for: ${entry.validity}`)
  for (const source of entry.sources) lines.push(`  Source: ${source}`)
  lines.push('  Example', ...entry.example.split('\n').map((line) => `    ${line}`))
  return lines.join('\n')
}

function fieldText(field: CatalogueField): string {
  const range = field.range === undefined || field.range === 'any' ? '' : `, ${field.range}`
  return `${field.path}${field.optional ? '?' : ''}: ${field.text} ${unitText(field.unit, range)}`.trimEnd()
}

function unitText(unit: string | undefined, range = ''): string {
  return unit === undefined ? '' : `(${unit}${range})`
}
