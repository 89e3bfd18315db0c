import { InputError } from '../quantity/errors.js'
import { citedWork, workRow } from './cited-work.js'
import type { CitedWork, HowWorkIsKnown } from './work.js'

/** Worst first: a source is known no better than the least of what it rests on. */
const WORST: readonly HowWorkIsKnown[] = ['not-confirmed', 'recomputed', 'confirmed', 'read']

/** What stands behind a citation in full; nothing behind what was read. */
const MARKS: Readonly<Record<HowWorkIsKnown, string>> = {
  'not-confirmed': ' [not confirmed, source not seen]',
  recomputed: ' [recomputed from the equation, source not seen]',
  confirmed: ' [confirmed by public code or text, source not seen]',
  read: '',
}
const MARK = /\[[^\]]*?\b(not confirmed|confirmed|recomputed)\b[^\]]*\]/

/** Words in the form of a key: lower case with hyphens, a digit or `nd` in the last part. */
const KEY = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*-(?:[a-z]*\d[a-z0-9]*|nd)$/

/** The words of a source that have the form of a key. */
export function keysIn(source: string): string[] {
  return (source.match(/[\w-]+/g) ?? []).filter((word) => KEY.test(word))
}

/**
 * A source with every key written out as the citation that it stands for, and how it is known.
 *
 * Findings, tables and the documentation of functions cite works by keys. This is what a reader should see of them.
 *
 * @param source - Text of a source: `topp-1980, Eq. 7`. Words that are not keys stay as they are.
 * @procedure Replaces each key by authors, year, title and place of publication, and adds in square brackets how the work is known, unless it was read or the source says it of this place.
 * @returns The citation in full.
 * @source definition
 * @example
 * sourceInFull('kool-1987') // => 'Kool, J. B. and Parker, J. C. (1987), Development and evaluation of closed-form expressions for hysteretic soil hydraulic properties, Water Resources Research 23:105-114 [confirmed by public code or text, source not seen]'
 * sourceInFull('definition') // => 'definition'
 */
export function sourceInFull(source: string): string {
  if (typeof source !== 'string') throw new InputError('source', 'is no text', 'give the source that an entry names')
  return partsOf(source)
    .map((part) => {
      const text = part.replace(/[\w-]+/g, (word) => (workRow(word) === undefined ? word : citationOf(citedWork(word))))
      const known = worst(worksIn(part).map((work) => work.known))
      return known === undefined || MARK.test(part) ? text : text + MARKS[known]
    })
    .join('; ')
}

/** The works that a source cites, in its order. */
export function worksIn(source: string): CitedWork[] {
  return keysIn(source)
    .filter((key) => workRow(key) !== undefined)
    .map(citedWork)
}

/** How a source is known: what it says of itself, else the least known of its works; `own` where it needs no work. */
export function howKnown(source: string): HowWorkIsKnown | 'own' {
  const known = partsOf(source).flatMap((part): HowWorkIsKnown[] => {
    const mark = MARK.exec(part)
    return mark === null ? worksIn(part).map((work) => work.known) : [mark[1]!.replace(' ', '-') as HowWorkIsKnown]
  })
  return worst(known) ?? 'own'
}

function worst(known: readonly HowWorkIsKnown[]): HowWorkIsKnown | undefined {
  return WORST.find((one) => known.includes(one))
}

/** The text split at its semicolons, but not at those in brackets. */
function partsOf(text: string): string[] {
  return text.split(/; (?![^()]*\))/)
}

/** `Topp, G. C. and Davis, J. L. (1980), Title, Journal 16:574-582`. */
function citationOf(work: CitedWork): string {
  const names = work.authors.map(({ family, given }) => (given === undefined ? family : `${family}, ${given}`))
  const last = work.moreAuthors ? 'others' : names.length > 1 ? names.pop() : undefined
  const people = last === undefined ? names.join('') : `${names.join(', ')} and ${last}`
  // The number of a standard begins with the body that made it.
  const who = work.number || `${people}${work.edited ? ' (ed.)' : ''}`
  const dated = [who, who && `(${work.year || 'no date'})`].filter(Boolean).join(' ')
  const place = [`${work.journal} ${work.volume}`.trim(), work.pages].filter(Boolean).join(':')
  const doi = work.doi && `doi:${work.doi}`
  return [dated, work.title, place, work.publisher, doi].filter(Boolean).join(', ')
}
