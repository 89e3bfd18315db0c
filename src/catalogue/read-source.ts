import { type Person, peopleOf } from './people.js'
import { titleAt } from './titles.js'

/** A published work, as far as the text of a source tells. */
export interface CitedWork {
  /** Short key, unique in a bibliography: `topp1980`. */
  readonly key: string
  /** `article` in a journal; `standard` of a standards body; `publication` for books, reports, papers of a series and the rest. */
  readonly type: 'article' | 'standard' | 'publication'
  readonly authors: readonly Person[]
  /** Whether more authors are meant than are named. */
  readonly moreAuthors: boolean
  /** Whether those named are the editors. */
  readonly edited: boolean
  /** Year of publication, as it is written. */
  readonly year: string
  /** Title; for articles and many standards from a list of titles by their place. Empty where it is not known. */
  readonly title: string
  /** Journal of an article. */
  readonly journal: string
  readonly volume: string
  readonly pages: string
  /** Number of a standard: `ISO 11461`. */
  readonly number: string
}

/** One source of a function, read. */
export interface ReadSource {
  /** The text as it stands in the documentation. */
  readonly text: string
  /** The works that were recognised in it. */
  readonly works: readonly CitedWork[]
  /** Parts of the text in which no work was recognised: definitions, trade practice, and citations in a form that is not read. */
  readonly rest: readonly string[]
  /** Whether the text says that it, or part of it, is not confirmed: nobody here has seen the source, or public text that agrees. */
  readonly notConfirmed: boolean
}

const NOT_CONFIRMED = /\[(?:[^\]]* )?not confirmed\b[^\]]*\]/
/** How the source is known: in square brackets, and no part of the work. */
const REMARK = /\s*\[[^\]]*\]/g
/** Where in a work: all that follows the name of the work itself. */
const PLACE =
  /(?:[,:]| (?=\())\s*\(?(?:Eqs?\. |Tables? |Annex|chapters? |sections? |[Tt]ests? |clauses? |Box |paper |pp?\. |part |entry |definitions?\b|defining |derivative|solved |with |form\b|procedure|abstract|as restated|as |at |on |for |checked|coefficients|after |concept|aggregation|the |in )/

/**
 * The published works that the text of a source names.
 *
 * Read are `Author, A. B. and Other, C. (1980), Journal 16:574-582`, institutions and titles with a year in brackets, and numbers
 * of standards with a year. Places inside a work (equations, tables, chapters) are left out of the work.
 *
 * @param text - Text of a source, as in the catalogue.
 * @procedure Splits the text at semicolons and reads each part; a part in which no work is recognised is kept in `rest`, word for word.
 * @returns Works, what is left, and whether the text says that it is not confirmed.
 * @source definition
 * @example
 * ```ts
 * const topp = readSource('Topp, G. C., Davis, J. L. and Annan, A. P. (1980), Water Resources Research 16:574-582, Eq. 7')
 * topp.works[0].journal // => 'Water Resources Research'
 * topp.works[0].pages // => '574-582'
 * readSource('common practice, no source').rest // => ['common practice, no source']
 * ```
 */
export function readSource(text: string): ReadSource {
  const works: CitedWork[] = []
  const rest: string[] = []
  for (const part of partsOf(text.replace(REMARK, ''))) {
    const work = workOf(part.trim())
    if (work === undefined) rest.push(part.trim())
    else works.push(work)
  }
  return { text, works, rest, notConfirmed: NOT_CONFIRMED.test(text) }
}

/** The text split at its semicolons, but not at those in brackets. */
function partsOf(text: string): string[] {
  return text.split(/; (?![^()]*\))/)
}

function workOf(part: string): CitedWork | undefined {
  const standard = standardOf(part)
  if (standard !== undefined) return standard
  const match = /^(.*?) \(((?:1[6-9]|20)\d\d)\)(?:, (.*))?$/.exec(part)
  if (match === null) return undefined
  const [, before = '', year = '', after = ''] = match
  const named = authorsIn(before)
  return named === undefined ? untitled(before, year, after) : publication(named, year, after)
}

type Named = Pick<CitedWork, 'authors' | 'moreAuthors' | 'edited'>
const NOBODY: Named = { authors: [], moreAuthors: false, edited: false }

/** Names of people; words in front of them (`AICc: Hurvich, C. M.`, `as in McColl, K. A.`) are not part of the name. */
function authorsIn(before: string): Named | undefined {
  for (const names of [before, before.replace(/^.*?(?:: |\bas in |\bafter |\balso )/, '')]) {
    const found = peopleOf(names)
    if (found) return { authors: found.people, moreAuthors: found.more, edited: found.editors }
  }
  return undefined
}

function publication(named: Named, year: string, after: string): CitedWork | undefined {
  const article =
    /^([\p{L}][^:;()]*?),? ((?:[A-Z]+-)?\d+)(?:\([^)]*\))?:([A-Z]?\d[\dA-Z]*(?:-[A-Z]?\d+)?)(?![\d])/u.exec(after)
  const key = `${letters(named.authors[0]?.family ?? '')}${year}`
  if (article) {
    const [, journal = '', volume = '', pages = ''] = article
    if (journal === 'the same') return undefined
    const title = titleAt(`${journal} ${volume}:${pages}`)
    return { ...named, key, type: 'article', year, title, journal, volume, pages, number: '' }
  }
  const title = titleIn(after)
  // Who and when without what is not enough to find a work again.
  return title === '' ? undefined : { ...BARE, ...named, key, year, title }
}

const BARE = { type: 'publication', journal: '', volume: '', pages: '', number: '' } as const

/** A work without authors: `NIST Special Publication 811 (2008)`, or an institution and a title. */
function untitled(before: string, year: string, after: string): CitedWork | undefined {
  if (!/^\p{Lu}/u.test(before) || before.includes(': ')) return undefined
  const title = titleIn(after)
  const [, institution, own] = /^([^\d,]+), (\p{Lu}.*\d.*)$/u.exec(before) ?? []
  const key = `${letters(institution ?? before).slice(0, 24)}${year}`
  if (institution !== undefined && own !== undefined)
    return { ...NOBODY, ...BARE, authors: [{ family: institution, institution: true }], key, year, title: own }
  // A number in front of the year belongs to a title (`Handbook 60`), and what follows is then a place in it.
  if (/\d/.test(before) || title === '') return { ...NOBODY, ...BARE, key, year, title: before }
  return { ...NOBODY, ...BARE, authors: [{ family: before, institution: true }], key, year, title }
}

const BODIES = 'ISO|IEC|IEEE|EN|JCGM|IAPWS|OIML|ANSI/ASABE'

function standardOf(part: string): CitedWork | undefined {
  const match = new RegExp(
    `^((?:${BODIES})(?: Std)? ?[A-Z]{0,2}[\\d.-]+\\d)(?:-\\d\\d(?=\\())?(?::|\\s?\\()(\\d{4})\\)?(?: \\([A-Z]+\\))?(.*)$`,
  ).exec(part)
  if (match === null) return undefined
  const [, number = '', year = '', after = ''] = match
  const title = titleIn(after.replace(/^[,:]?\s*/, ''))
  const body = number.split(' ')[0]!
  // What follows the number is a title only where it reads like one; mostly it is a place in the standard.
  const named = /^\p{Lu}/u.test(title) && title.includes(' ') ? title : titleAt(`${number}:${year}`)
  const authors: readonly Person[] = [{ family: body, institution: true }]
  return {
    ...BARE,
    type: 'standard',
    authors,
    moreAuthors: false,
    edited: false,
    key: `${letters(number)}-${year}`,
    year,
    title: named,
    number,
  }
}

/** The part of a text before the first place in the work. */
function titleIn(text: string): string {
  const place = PLACE.exec(`, ${text}`)
  const title = place === null ? text : `, ${text}`.slice(2, Math.max(2, place.index))
  // A remark in brackets at the end (`factor 640`) is no part of a title.
  return title
    .replace(/ \([a-z0-9][^()]*\)$/, '')
    .replace(/[,;:\s]+$/, '')
    .trim()
}

function letters(text: string): string {
  return text
    .normalize('NFD')
    .replace(/ß/g, 'ss')
    .replace(/ø/g, 'o')
    .replace(/[^A-Za-z0-9]/g, '')
    .toLowerCase()
}
