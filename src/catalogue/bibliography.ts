import { requireRows } from '../quantity/guard.js'
import { catalogue } from './catalogue.js'
import type { CatalogueEntry } from './entry.js'
import { worksIn } from './source-in-full.js'
import type { CitedWork } from './work.js'

/** A work with the functions that rest on it. */
export interface ListedWork extends CitedWork {
  /** Names of the functions whose documentation cites it, in alphabetical order. */
  readonly usedBy: readonly string[]
  /** The sources as they stand in the documentation, with the places in the work. */
  readonly texts: readonly string[]
}

/** A text that cites no work, with the functions that give it as a source. */
export interface ListedText {
  readonly text: string
  readonly usedBy: readonly string[]
}

/** All works that functions rest on, and the texts that name none. */
export interface Bibliography {
  readonly works: readonly ListedWork[]
  /** Definitions and trade practice. */
  readonly rest: readonly ListedText[]
}

/**
 * The published works behind some functions, each once, with what rests on it.
 *
 * A work of which the title is not known has none. Works behind the tables of media and crops and behind findings are cited there:
 * `sourceInFull` writes them out.
 *
 * @param entries - Entries of the catalogue; all of them by default.
 * @procedure Finds the keys in every source, joins the sources of each, and lists apart the sources that cite no work.
 * @returns Works in the order of their keys, and texts that cite none.
 * @source definition
 * @example
 * const topp = bibliography(findEntries({ source: 'Topp 1980' })).works.find((work) => work.key === 'topp-1980')
 * topp.volume // => '16'
 * topp.title // => 'Electromagnetic determination of soil water content: Measurements in coaxial transmission lines'
 * topp.usedBy.includes('waterContentTopp1980') // => true
 */
export function bibliography(entries: readonly CatalogueEntry[] = catalogue): Bibliography {
  requireRows(entries, 'entries')
  const works = new Map<string, Gathered>()
  const rest = new Map<string, Set<string>>()
  for (const { name, sources } of entries) {
    for (const source of sources) {
      const cited = worksIn(source)
      for (const work of cited) {
        const gathered = works.get(work.key) ?? { work, names: new Set(), texts: new Set() }
        gathered.names.add(name)
        gathered.texts.add(source)
        works.set(work.key, gathered)
      }
      if (cited.length === 0) rest.set(source, (rest.get(source) ?? new Set<string>()).add(name))
    }
  }
  return {
    works: [...works.values()].map(listed).sort((a, b) => order(a.key, b.key)),
    rest: [...rest].sort(([a], [b]) => order(a, b)).map(([text, names]) => ({ text, usedBy: [...names].sort(order) })),
  }
}

interface Gathered {
  readonly work: CitedWork
  readonly names: Set<string>
  readonly texts: Set<string>
}

function listed({ work, names, texts }: Gathered): ListedWork {
  return { ...work, usedBy: [...names].sort(order), texts: [...texts].sort(order) }
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
