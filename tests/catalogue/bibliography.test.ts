import { bibliography, bibtex, catalogue, citedWork, cslJson } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { workKeys } from '../../src/catalogue/cited-work.js'

const all = bibliography()
const everyWork = workKeys().map(citedWork)

describe('the bibliography of the package', () => {
  it('loses no source: each function is found again under a work or a text', () => {
    for (const { name, sources } of catalogue) {
      for (const source of sources) {
        const listed =
          all.works.some((work) => work.texts.includes(source) && work.usedBy.includes(name)) ||
          all.rest.some((one) => one.text === source && one.usedBy.includes(name))
        expect(listed, `${name}: ${source}`).toBe(true)
      }
    }
  })
  it('names each work once, in the order of the keys', () => {
    const keys = all.works.map((work) => work.key)
    expect(keys).toEqual([...new Set(keys)].sort())
    expect(keys.length).toBeGreaterThan(160)
  })
  it('lists definitions and trade practice apart', () => {
    expect(all.rest.map((one) => one.text)).toContain('definition')
    for (const { text } of all.rest) expect(text).toMatch(/^(?:definition|common practice, no source|invented)\b/)
  })
  it('takes the functions it is given', () => {
    const [topp, ...others] = bibliography(catalogue.filter(({ name }) => name === 'waterContentTopp1980')).works
    expect(topp).toMatchObject({ key: 'topp-1980', usedBy: ['waterContentTopp1980'], texts: ['topp-1980, Eq. 7'] })
    expect(others).toEqual([])
  })
})

describe('bibtex', () => {
  const text = bibtex(everyWork)
  it('writes an entry with balanced braces for every work', () => {
    expect(text.match(/^@\w+\{/gm)).toHaveLength(everyWork.length)
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
    expect(bibtex([citedWork('topp-1980')])).toBe(`@article{topp-1980,
  author = {Topp, G. C. and Davis, J. L. and Annan, A. P.},
  title = {{Electromagnetic determination of soil water content: Measurements in coaxial transmission lines}},
  journal = {Water Resources Research},
  volume = {16},
  pages = {574--582},
  year = {1980}
}
`)
    expect(bibtex([citedWork('lassabatere-2023')])).toContain('author = {Lassabatere, L. and others}')
    expect(bibtex([citedWork('weast-1986')])).toContain('editor = {Weast, R. C.}')
    expect(bibtex([citedWork('asabe-ep458')])).toContain('note = {not confirmed')
  })
})

describe('cslJson', () => {
  it('writes an item for every work, with what is known and nothing else', () => {
    const items = cslJson(everyWork)
    expect(items.map((item) => item.id)).toEqual(everyWork.map((work) => work.key))
    for (const item of items) {
      expect(['article-journal', 'standard', 'document']).toContain(item.type)
      if (item.issued !== undefined) expect(item.issued['date-parts'][0]?.[0]).toMatch(/^\d{4}$/)
      expect(Object.values(item)).not.toContain('')
      if (item.type === 'article-journal') expect(item['container-title']).toBeTruthy()
    }
    expect(JSON.parse(JSON.stringify(items))).toEqual(items)
    expect(items.find((item) => item.id === 'boyer-2012')?.DOI).toBe('10.1155/2012/978528')
    expect(items.find((item) => item.id === 'asabe-ep405')?.issued).toBeUndefined()
  })
})
