import type { CatalogueEntry } from '../../catalogue/entry.js'
import { sourceInFull } from '../../catalogue/source-in-full.js'
import { plainText } from './plain-text.js'
import type { Found, Weighed } from './rank.js'

/** A page with what its words weigh. */
export interface Row {
  readonly page: Found
  readonly texts: Weighed
}

/** A function as a search sees it, with the questions that it answers and the headings under which it is used, where they are known. */
export function functionRow(entry: CatalogueEntry, question = '', headings = ''): Row {
  const fields = [...entry.arguments, ...entry.result.fields].map(({ path, text }) => `${path} ${text}`).join(' ')
  const rest = [entry.description, entry.procedure, entry.validity, entry.throws, ...entry.sources.map(sourceInFull)]
  // A conversion of units is rarely what a question is about.
  const share = entry.topic === 'quantity' ? 0.5 : 1
  return {
    page: {
      kind: 'function',
      title: entry.name,
      url: `functions/${entry.topic}.${entry.name}.html`,
      summary: plainText(entry.summary),
    },
    texts: [
      [9 * share, entry.name],
      [8, question],
      [6 * share, entry.summary],
      [3 * share, entry.result.text],
      [2 * share, fields],
      [1, rest.join(' ')],
      [2, entry.topic === 'quantity' ? '' : headings],
    ],
  }
}
