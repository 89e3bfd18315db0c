import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { allRetentionForms } from 'porewater'
import { catalogue, citedWork, sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { citedInFull } from '../../docs/tools/written-out.js'
import { workKeys, workRow } from '../../src/catalogue/cited-work.js'
import { howKnown, keysIn } from '../../src/catalogue/source-in-full.js'

const src = fileURLToPath(new URL('../../src/', import.meta.url))

/** Every line of the sources that is no import, with its file; the table itself cites nothing. */
const lines = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.endsWith('works.table.ts'))
  .flatMap((name) =>
    readFileSync(src + name, 'utf8')
      .split('\n')
      .filter((line) => !/^import |^export .*from '|^\} from '/.test(line))
      .map((line) => ({ name, line })),
  )
const cited = lines.flatMap(({ name, line }) =>
  keysIn(line)
    // Outside a source, where findings and tables cite, a word like `i-1` is no key and one with a year is.
    .filter((key) => line.includes('@source') || workRow(key) || /-(?:(?:1[89]|20)\d\d[a-z]?|nd)$/.test(key))
    .map((key) => ({ name, key })),
)
/** A fault of a rehearsal, and curves that are called by authors and year: not works. */
const NO_WORK = ['clock-starts-in-1970', ...allRetentionForms.map(({ kind }) => kind)]
const unknownKeys = (among: readonly { name: string; key: string }[]) =>
  among
    .filter(({ key }) => workRow(key) === undefined && !NO_WORK.includes(key))
    .map(({ name, key }) => `${name}: ${key}`)

describe('the table of works', () => {
  it('has every key that is cited, in documentation, tables and findings', () => {
    expect(cited.length).toBeGreaterThan(700)
    expect(unknownKeys(cited)).toEqual([])
    expect(unknownKeys([{ name: 'x.ts', key: 'topp-1908' }])).toEqual(['x.ts: topp-1908'])
  })
  it('holds the journal, volume and pages of every work, which no other line of the sources repeats', () => {
    const PLACE = /[A-Z][a-z]+ \d+:\d+-\d/
    const isShown = (line: string) => /sourceInFull\(|^\/\*\* `/.test(line.trim().replace(/^\* /, ''))
    expect(
      lines.filter(({ line }) => PLACE.test(line) && !isShown(line)).map(({ name, line }) => `${name}: ${line}`),
    ).toEqual([])
    expect(PLACE.test('Alexander (1977), SIAM Journal on Numerical Analysis 14:1006-1021')).toBe(true)
  })
  it('has no work that nothing cites', () => {
    const used = new Set(cited.map(({ key }) => key))
    expect(workKeys().filter((key) => !used.has(key))).toEqual([])
  })
  it('stands in the order of its keys, each of which a reader can guess', () => {
    expect(workKeys()).toEqual([...workKeys()].sort())
    for (const key of workKeys()) {
      const { authors, year, number } = citedWork(key)
      expect(keysIn(key), key).toEqual([key])
      if (year !== '') expect(key).toMatch(new RegExp(`-${year}[a-z]?$`))
      const [first] = authors
      if (first !== undefined && first.institution === undefined)
        expect(key).toBe(`${plain(first.family)}-${year || 'nd'}${/[a-z]$/.test(key) && year ? key.slice(-1) : ''}`)
      if (number !== '') expect(key).toContain(/\d+/.exec(number)?.[0])
    }
  })
  it('holds no work twice', () => {
    const places = workKeys().map((key) => {
      const { authors, year, title, journal, volume, pages, number, publisher } = citedWork(key)
      if (journal && volume && pages) return [journal, volume, pages].join(' ')
      return number || [authors[0]?.family, title || publisher, year].join(' ')
    })
    expect(places.filter((place, i) => places.indexOf(place) !== i)).toEqual([])
    const titles = workKeys()
      .map((key) => citedWork(key).title)
      .filter(Boolean)
    expect(titles.filter((title, i) => titles.indexOf(title) !== i)).toEqual([])
  })
  it('says who wrote a work, or who published it', () => {
    for (const key of workKeys()) {
      const { authors, title, publisher, doi } = citedWork(key)
      expect(authors.length > 0 || title !== '' || publisher !== '', key).toBe(true)
      for (const { family, given } of authors) {
        expect(family, key).toMatch(/^\p{L}/u)
        if (given !== undefined) expect(given, key).toMatch(/^(?:\p{Lu}\p{Ll}?\.[ -]?)+$/u)
      }
      if (doi !== '') expect(doi).toMatch(/^10\.\d{4,}\//)
    }
  })
})

describe('sources', () => {
  it('cite by key, or say that they are a definition or common practice', () => {
    for (const { name, sources } of catalogue)
      for (const source of sources) {
        if (keysIn(source).length === 0)
          expect(source, name).toMatch(/^(?:definition|common practice, no source|invented)\b/)
        // A name with a year in brackets is a citation in prose.
        expect(source, name).not.toMatch(/\((?:1[6-9]|20)\d\d\)/)
      }
  })
  it('are written out in full, with how they are known', () => {
    expect(sourceInFull('topp-1980, Eq. 7, solved for the permittivity')).toBe(
      'Topp, G. C., Davis, J. L. and Annan, A. P. (1980), Electromagnetic determination of soil water content: Measurements in coaxial transmission lines, Water Resources Research 16:574-582, Eq. 7, solved for the permittivity [confirmed by public code or text, source not seen]',
    )
    expect(sourceInFull('definition; the line after herkelrath-1991')).toMatch(
      /^definition; the line after Herkelrath, W. N., /,
    )
    expect(sourceInFull('jcgm-100-2008, 7.2.6 [not confirmed, source not seen]')).toMatch(
      /^JCGM 100 \(2008\), Evaluation .*, 7\.2\.6 \[not confirmed, source not seen\]$/,
    )
    expect(sourceInFull('topp-1908')).toBe('topp-1908')
    for (const { sources } of catalogue)
      for (const source of sources) expect(unreadable(sourceInFull(source))).toEqual([])
  })
  it('are known no better than the least known of their works, unless they say so', () => {
    expect(howKnown('qartod-2016, Test 4')).toBe('read')
    expect(howKnown('qartod-2016, Test 1 [not confirmed, source not seen]')).toBe('not-confirmed')
    expect(howKnown('qartod-2016, Test 4; asabe-ep458')).toBe('not-confirmed')
    expect(howKnown('archie-1942; qartod-2016')).toBe('recomputed')
    expect(howKnown('qartod-2016 [confirmed by public code or text, source not seen]')).toBe('confirmed')
    expect(howKnown('common practice, no source')).toBe('own')
  })
  it('are written out in the types of the package', () => {
    expect(citedInFull(' * @source qartod-2016, Test 4\n/** @source definition */')).toMatch(
      /^ \* @source Integrated Ocean Observing System \(2016\), .*, Test 4\n\/\*\* @source definition \*\/$/,
    )
  })
})

describe('citedWork', () => {
  it('refuses a key that no work has, and names the nearest', () => {
    expect(() => citedWork('topp-1981')).toThrow(/topp-1980/)
    expect(() => citedWork('constructor')).toThrow(/no work has the key/)
    expect(() => citedWork(undefined as never)).toThrow(/no work has the key/)
  })
})

const unreadable = (text: string) => keysIn(text).filter((word) => workRow(word) !== undefined)

function plain(name: string): string {
  return name
    .normalize('NFD')
    .replace(/ø/g, 'o')
    .replace(/[^A-Za-z0-9 -]/g, '')
    .replace(/ /g, '-')
    .toLowerCase()
}
