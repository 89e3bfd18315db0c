import { requireList } from '../quantity/guard.js'
import type { CitedWork, Person } from './work.js'

/**
 * Works as a BibTeX file in UTF-8, for typesetting a report.
 *
 * A few works have no `title` because it is not known here: add it where your style prints one. A work that is not confirmed
 * says so in its note.
 *
 * @param works - Works, from `bibliography` or `citedWork`.
 * @procedure Writes `@article`, `@techreport` for a standard and `@misc` for the rest, one entry a work, with characters that TeX reserves escaped.
 * @returns Text of the file.
 * @source patashnik-1988
 * @example
 * bibtex(bibliography([entryNamed('waterContentTopp1980')]).works).startsWith('@article{topp-1980,') // => true
 */
export function bibtex(works: readonly CitedWork[]): string {
  requireList(works, 'works')
  return works.map(oneEntry).join('\n')
}

function oneEntry(work: CitedWork): string {
  const type = { article: 'article', standard: 'techreport', publication: 'misc' }[work.type]
  const people = work.authors
    .map(bibtexName)
    .concat(work.moreAuthors ? ['others'] : [])
    .join(' and ')
  const fields: Record<string, string> = {
    [work.edited ? 'editor' : 'author']: people,
    // Doubled braces keep the capitals that a style would take away.
    title: work.title === '' ? '' : `{${escaped(work.title)}}`,
    journal: escaped(work.journal),
    volume: escaped(work.volume),
    pages: escaped(work.pages.replace('-', '--')),
    number: escaped(work.number),
    institution: work.type === 'standard' ? escaped(work.authors[0]?.family ?? '') : '',
    publisher: escaped(work.publisher),
    doi: escaped(work.doi),
    year: work.year,
    note: work.known === 'not-confirmed' ? 'not confirmed: cited without seeing the source' : '',
  }
  const lines = Object.entries(fields)
    .filter(([, value]) => value !== '')
    .map(([name, value]) => `  ${name} = {${value}}`)
  return `@${type}{${work.key},\n${lines.join(',\n')}\n}\n`
}

function bibtexName(person: Person): string {
  const family = escaped(person.family)
  if (person.institution) return `{${family}}`
  return person.given === undefined ? family : `${family}, ${escaped(person.given)}`
}

function escaped(text: string): string {
  return text
    .replace(/[\\{}]/g, '')
    .replace(/([&%#_$])/g, '\\$1')
    .replace(/~/g, '\\textasciitilde{}')
    .replace(/\^/g, '\\textasciicircum{}')
}
