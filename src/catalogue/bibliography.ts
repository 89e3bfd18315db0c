import { catalogue } from './catalogue.js'
import type { CatalogueEntry } from './entry.js'
import { type CitedWork, readSource } from './read-source.js'

/** A work with the functions that rest on it. */
export interface ListedWork extends CitedWork {
  /** Names of the functions whose documentation cites it, in alphabetical order. */
  readonly usedBy: readonly string[]
  /** The sources as they stand in the documentation, with the places in the work. */
  readonly texts: readonly string[]
  /** Whether every source that names it says that it, or part of it, is not confirmed. */
  readonly notConfirmed: boolean
}

/** A text in which no work was recognised, with the functions that give it as a source. */
export interface ListedText {
  readonly text: string
  /** Whether it looks like a citation all the same, in a form that is not read: look it up with your own eyes. */
  readonly unread: boolean
  readonly usedBy: readonly string[]
}

/** All works that functions rest on, and the texts that name none. */
export interface Bibliography {
  readonly works: readonly ListedWork[]
  /** Definitions, trade practice, remarks, and citations in a form that is not read. */
  readonly rest: readonly ListedText[]
}

/**
 * The published works behind some functions, each once, with what rests on it.
 *
 * The documentation names journal, volume and pages; titles come from a list of those that are known without doubt. A work whose
 * title is not among them has none.
 *
 * @param entries - Entries of the catalogue; all of them by default.
 * @procedure Reads every source with `readSource`, joins those that name the same work (journal, volume and pages, number of a standard, or title, and the year), and gives keys a letter where two works share one.
 * @returns Works in the order of their keys, and texts in which no work was recognised.
 * @source definition
 * @example
 * ```ts
 * const topp = bibliography(findEntries({ source: 'Topp 1980' })).works.find((work) => work.key === 'topp1980')
 * topp.volume // => '16'
 * topp.title // => 'Electromagnetic determination of soil water content: Measurements in coaxial transmission lines'
 * topp.usedBy.includes('waterContentTopp1980') // => true
 * ```
 */
export function bibliography(entries: readonly CatalogueEntry[] = catalogue): Bibliography {
  const works = new Map<string, Gathered>()
  const rest = new Map<string, Set<string>>()
  for (const entry of entries) {
    for (const source of entry.sources.map(readSource)) {
      for (const work of source.works) gather(works, work, entry.name, source.text, source.notConfirmed)
      for (const text of source.rest) rest.set(text, (rest.get(text) ?? new Set<string>()).add(entry.name))
    }
  }
  return {
    works: lettered([...works.values()].map(listed)),
    rest: [...rest]
      .sort(([a], [b]) => order(a, b))
      .map(([text, names]) => ({ text, unread: CITATION.test(text), usedBy: [...names].sort(order) })),
  }
}

/** A year, a numbered document, or a body that publishes. */
const CITATION = /\b(?:1[89]|20)\d\d\b|\b(?:ISO|IEC|IEEE|IAPWS|ANSI|BIPM|Handbook|Memorandum)\b|\bread\)/

interface Gathered {
  work: CitedWork
  readonly names: Set<string>
  readonly texts: Set<string>
  notConfirmed: boolean
}

function gather(
  works: Map<string, Gathered>,
  work: CitedWork,
  name: string,
  text: string,
  notConfirmed: boolean,
): void {
  const identity = [work.journal || work.number || work.title, work.volume, work.pages, work.year]
    .join('|')
    .toLowerCase()
  const known = works.get(identity)
  if (known === undefined) {
    works.set(identity, { work, names: new Set([name]), texts: new Set([text]), notConfirmed })
    return
  }
  known.names.add(name)
  known.texts.add(text)
  known.notConfirmed &&= notConfirmed
  // The fullest reading wins: one source may name all the authors, another the title alone.
  if (fullness(work) > fullness(known.work)) known.work = work
}

function fullness(work: CitedWork): number {
  return work.authors.length + (work.title === '' ? 0 : 1)
}

function listed({ work, names, texts, notConfirmed }: Gathered): ListedWork {
  return { ...work, usedBy: [...names].sort(order), texts: [...texts].sort(order), notConfirmed }
}

function lettered(works: ListedWork[]): ListedWork[] {
  const sorted = works.sort((a, b) => order(a.key, b.key) || order(a.journal + a.title, b.journal + b.title))
  return sorted.map((work, i) => {
    const before = sorted.slice(0, i).filter((one) => one.key === work.key).length
    const shared = sorted.some((one, j) => j !== i && one.key === work.key)
    return shared ? { ...work, key: `${work.key}${String.fromCharCode(97 + before)}` } : work
  })
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
