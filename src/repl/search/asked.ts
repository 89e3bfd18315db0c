import { catalogue } from '../../catalogue/catalogue.js'
import type { CatalogueEntry } from '../../catalogue/entry.js'
import { entryNamed } from '../../catalogue/entry-named.js'
import { functionRow } from './function-row.js'
import { find, type Index, indexOf } from './rank.js'

let index: Index | undefined

/** The functions that a question or some words ask for, the best first: the search of the documentation, without its guides. */
export function asked(question: string): readonly CatalogueEntry[] {
  // Made when somebody searches, because it takes longer than most answers.
  index ??= indexOf(catalogue.map((entry) => functionRow(entry)))
  return find(index, question, Number.POSITIVE_INFINITY).map(({ title }) => entryNamed(title))
}
