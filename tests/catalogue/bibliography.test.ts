import { bibliography, bibtex, catalogue, cslJson, readSource } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { titledPlaces } from '../../src/catalogue/titles.js'

const all = bibliography()

/** Citations written for this test in the forms that the documentation uses; what must be read from them is plain to see. */
const READ = [
  [
    'Topp, G. C., Davis, J. L. and Annan, A. P. (1980), Water Resources Research 16:574-582, Eq. 7',
    {
      authors: ['Topp', 'Davis', 'Annan'],
      year: '1980',
      journal: 'Water Resources Research',
      volume: '16',
      pages: '574-582',
    },
  ],
  [
    'van Genuchten, M. Th. (1980), Soil Science Society of America Journal 44:892-898, section on Burdine’s theory',
    { authors: ['van Genuchten'], journal: 'Soil Science Society of America Journal', volume: '44', pages: '892-898' },
  ],
  [
    'Dobson, M. C. and El-Rayes, M. A. (1985), IEEE Transactions on Geoscience and Remote Sensing GE-23:35-46 (mixing) [not confirmed, source not seen]',
    { authors: ['Dobson', 'El-Rayes'], volume: 'GE-23', pages: '35-46' },
  ],
  [
    'McColl, K. A. et al. (2017), Geophysical Research Letters 44:3682-3690',
    { authors: ['McColl'], moreAuthors: true },
  ],
  [
    'ISO 7888:1985, Water quality, Determination of electrical conductivity, Table of f25',
    {
      type: 'standard',
      number: 'ISO 7888',
      year: '1985',
      title: 'Water quality, Determination of electrical conductivity',
    },
  ],
  [
    'IAPWS R1-76(2014), Revised Release on Surface Tension of Ordinary Water Substance, Eq. 1',
    { type: 'standard', number: 'IAPWS R1-76', year: '2014' },
  ],
  [
    'NIST Special Publication 811 (2008), Appendix B.8',
    { type: 'publication', title: 'NIST Special Publication 811', year: '2008', authors: [] },
  ],
  ['UNESCO (1981), Practical Salinity Scale 1978', { authors: ['UNESCO'], title: 'Practical Salinity Scale 1978' }],
] as const

describe('readSource', () => {
  it.each(READ)('%s', (text, expected) => {
    const source = readSource(text)
    expect(source.works).toHaveLength(1)
    const [work] = source.works
    expect({ ...work, authors: work?.authors.map((person) => person.family) }).toMatchObject(expected)
  })
  it('keeps what it cannot read, word for word', () => {
    for (const text of [
      'definition',
      'common practice, no source',
      'Lee and Kim, the same study, solved for the pore water',
    ])
      expect(readSource(text)).toMatchObject({ works: [], rest: [text] })
  })
  it('tells what is not confirmed', () => {
    expect(readSource('Archie, G. E. (1942), Transactions of the AIME 146:54-62').notConfirmed).toBe(false)
    expect(readSource('ISO 6709 [not confirmed, source not seen]').notConfirmed).toBe(true)
    const thesis = readSource('Doe, J. (1987), On water, PhD thesis, Wageningen [form not confirmed, source not seen]')
    expect(thesis.notConfirmed).toBe(true)
    expect(thesis.works[0]?.title).toBe('On water, PhD thesis, Wageningen')
    expect(
      readSource('Doe, J. (1987), On water [confirmed by public code or text, source not seen]').notConfirmed,
    ).toBe(false)
  })
})

describe('the bibliography of the package', () => {
  it('loses no source: each function is found again under a work or a text', () => {
    const used = new Set([...all.works, ...all.rest].flatMap((one) => one.usedBy))
    expect(catalogue.filter((entry) => entry.sources.length > 0 && !used.has(entry.name))).toEqual([])
    for (const { name, sources } of catalogue) {
      for (const source of sources) {
        const listed =
          all.works.some((work) => work.texts.includes(source) && work.usedBy.includes(name)) ||
          all.rest.some((one) => source.includes(one.text.slice(0, 40)) && one.usedBy.includes(name))
        expect(listed, `${name}: ${source}`).toBe(true)
      }
    }
  })
  it('names each work once, under a key of its own', () => {
    const keys = all.works.map((work) => work.key)
    expect(new Set(keys).size).toBe(keys.length)
    for (const key of keys) expect(key).toMatch(/^[a-z][a-z0-9-]*$/)
    expect(
      all.works.filter((work) => work.journal === 'Water Resources Research' && work.pages === '574-582'),
    ).toHaveLength(1)
  })
  it('knows a title for most works, and no title of a work that nothing cites', () => {
    const places = all.works.map((work) =>
      work.type === 'article' ? `${work.journal} ${work.volume}:${work.pages}` : `${work.number}:${work.year}`,
    )
    expect(titledPlaces().filter((place) => !places.includes(place))).toEqual([])
    expect(new Set(titledPlaces()).size).toBe(titledPlaces().length)
    // Never made up: some are not known.
    const untitled = all.works.filter((work) => work.title === '')
    expect(untitled.length).toBeLessThan(0.1 * all.works.length)
    expect(untitled.map((work) => work.key)).toContain('sakaki2008')
    expect(new Set(all.works.map((work) => work.title).filter(Boolean)).size).toBe(all.works.length - untitled.length)
  })
  it('marks what looks like a citation but was not read', () => {
    const unread = all.rest.filter((one) => one.unread).map((one) => one.text)
    expect(unread.some((text) => text.startsWith('U.S. Geological Survey'))).toBe(true)
    expect(all.rest.find((one) => one.text === 'definition')?.unread).toBe(false)
    // Every year in brackets after a name is either a work or listed as not read.
    const years = all.rest.filter((one) => /\((?:1[89]|20)\d\d\)/.test(one.text))
    expect(years.filter((one) => !one.unread)).toEqual([])
  })
  it('reads most articles: every volume and pages of the sources', () => {
    const articles = catalogue
      .flatMap((entry) => entry.sources)
      .filter((source) => /\(\d{4}\), [^;]+ \S*\d+:\d+-\d+/.test(source))
    for (const source of articles)
      expect(
        readSource(source).works.some((work) => work.type === 'article'),
        source,
      ).toBe(true)
  })
})

describe('bibtex', () => {
  const text = bibtex(all.works)
  it('writes an entry with balanced braces for every work', () => {
    expect(text.match(/^@\w+\{/gm)).toHaveLength(all.works.length)
    let depth = 0
    for (const sign of text.replace(/\\[{}]/g, '')) {
      if (sign === '{') depth++
      if (sign === '}') depth--
      expect(depth).toBeGreaterThanOrEqual(0)
    }
    expect(depth).toBe(0)
  })
  it('escapes what TeX reserves and leaves no field empty', () => {
    expect(text).not.toMatch(/(?<!\\)[&%#$]/)
    expect(text).not.toMatch(/= \{\}/)
  })
  it('writes authors and pages as BibTeX wants them', () => {
    const [topp] = all.works.filter((work) => work.key === 'topp1980')
    expect(bibtex(topp ? [topp] : [])).toBe(`@article{topp1980,
  author = {Topp, G. C. and Davis, J. L. and Annan, A. P.},
  title = {{Electromagnetic determination of soil water content: Measurements in coaxial transmission lines}},
  journal = {Water Resources Research},
  volume = {16},
  pages = {574--582},
  year = {1980}
}
`)
  })
})

describe('cslJson', () => {
  it('writes an item for every work, with what is known and nothing else', () => {
    const items = cslJson(all.works)
    expect(items.map((item) => item.id)).toEqual(all.works.map((work) => work.key))
    for (const item of items) {
      expect(['article-journal', 'standard', 'document']).toContain(item.type)
      expect(item.issued['date-parts'][0]?.[0]).toMatch(/^\d{4}$/)
      expect(Object.values(item)).not.toContain('')
      if (item.type === 'article-journal') expect(item['container-title'] && item.volume && item.page).toBeTruthy()
    }
    expect(JSON.parse(JSON.stringify(items))).toEqual(items)
  })
})
