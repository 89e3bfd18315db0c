import { requireList } from '../quantity/guard.js'
import type { CitedWork, Person } from './work.js'

/** A name of CSL-JSON: a person, or an institution as a literal. */
export type CslName = { readonly family: string; readonly given?: string } | { readonly literal: string }

/** An item of CSL-JSON, which reference managers read. */
export interface CslItem {
  readonly id: string
  readonly type: 'article-journal' | 'standard' | 'document'
  readonly author?: readonly CslName[]
  readonly editor?: readonly CslName[]
  readonly issued?: { readonly 'date-parts': readonly (readonly [string])[] }
  readonly title?: string
  readonly 'container-title'?: string
  readonly volume?: string
  readonly page?: string
  readonly number?: string
  readonly publisher?: string
  readonly DOI?: string
  readonly note?: string
}

/**
 * Works as items of CSL-JSON, ready for `JSON.stringify`.
 *
 * @param works - Works, from `bibliography` or `citedWork`.
 * @procedure Writes one item a work; what is not known (a few titles) is left out, never made up.
 * @returns Items in the order of the works.
 * @source csl-1-0-2
 * @example
 * const [topp] = cslJson(bibliography([entryNamed('waterContentTopp1980')]).works)
 * topp.issued // => { 'date-parts': [['1980']] }
 * topp.author[0] // => { family: 'Topp', given: 'G. C.' }
 */
export function cslJson(works: readonly CitedWork[]): readonly CslItem[] {
  requireList(works, 'works')
  return works.map((work) => {
    const names = work.authors.map(cslName)
    const notes = [
      work.moreAuthors ? 'more authors than are named' : '',
      work.known === 'not-confirmed' ? 'not confirmed: cited without seeing the source' : '',
    ]
    const note = notes.filter(Boolean).join('; ')
    return {
      id: work.key,
      type: ({ article: 'article-journal', standard: 'standard', publication: 'document' } as const)[work.type],
      ...(names.length === 0 ? {} : work.edited ? { editor: names } : { author: names }),
      ...(work.year && { issued: { 'date-parts': [[work.year] as const] } }),
      ...(work.title && { title: work.title }),
      ...(work.journal && { 'container-title': work.journal }),
      ...(work.volume && { volume: work.volume }),
      ...(work.pages && { page: work.pages }),
      ...(work.number && { number: work.number }),
      ...(work.publisher && { publisher: work.publisher }),
      ...(work.doi && { DOI: work.doi }),
      ...(note && { note }),
    }
  })
}

function cslName(person: Person): CslName {
  if (person.institution) return { literal: person.family }
  return person.given === undefined ? { family: person.family } : { family: person.family, given: person.given }
}
