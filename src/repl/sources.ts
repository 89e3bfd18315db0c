import { bibliography, type ListedWork } from '../catalogue/bibliography.js'
import { catalogue } from '../catalogue/catalogue.js'
import type { CatalogueEntry } from '../catalogue/entry.js'
import { findEntries } from '../catalogue/find-entries.js'
import { sourceInFull } from '../catalogue/source-in-full.js'

/** The published works behind a function, behind those whose source holds some words, or behind everything. */
export function sourcesText(about?: unknown): string {
  const entries = about === undefined ? catalogue : isEntry(about) ? [about] : findEntries({ source: String(about) })
  if (entries.length === 0)
    return `No source has the words "${String(about)}". Try an author or a year: sources('Topp')`
  const { works, rest } = bibliography(entries)
  const wanted = typeof about === 'string' ? works.filter((work) => holds(work, about)) : works
  const lines = (wanted.length > 0 ? wanted : works).map(workText)
  if (isEntry(about)) lines.push(...rest.map((one) => one.text))
  if (about === undefined) lines.push(`${works.length} works; bibtex(bibliography().works) writes them for a report.`)
  return lines.join('\n')
}

function isEntry(about: unknown): about is CatalogueEntry {
  return typeof about === 'object' && about !== null && 'summary' in about
}

function holds(work: ListedWork, words: string): boolean {
  const text = [...work.texts, workText(work)].join(' ').toLowerCase()
  return words
    .toLowerCase()
    .split(/[\s,]+/)
    .every((word) => text.includes(word))
}

function workText(work: ListedWork): string {
  const used = work.usedBy.length > 3 ? `${work.usedBy.length} functions` : work.usedBy.join(', ')
  return `${sourceInFull(work.key)}  <- ${used}`
}
