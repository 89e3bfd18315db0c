import { catalogue, entryNamed, findEntries, sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'

describe('findEntries', () => {
  it('finds by word in any case and order, the best name first', () => {
    expect(findEntries({ words: 'VOLUME shot' })[0]?.name).toBe('shotVolume')
    expect(findEntries({ words: 'drain' }).map((entry) => entry.name)).toContain('drainageAfterShot')
    for (const entry of findEntries({ words: 'permittivity peat' }))
      expect(JSON.stringify(entry).toLowerCase()).toMatch(/permittivity[\s\S]*peat|peat[\s\S]*permittivity/)
  })
  it('finds beginnings of words, not what stands inside of them', () => {
    const peat = findEntries({ words: 'peat' })
    expect(peat.map((entry) => entry.name)).toContain('waterContentKellnerLundin2001')
    for (const entry of peat) expect(JSON.stringify(entry).replaceAll('\\n', ' ')).toMatch(/\bpeat/i)
    expect(peat.map((entry) => entry.name)).not.toContain('flatLineTest')
  })
  it('finds every function by its own name, first', () => {
    for (const { name } of catalogue.filter((_, i) => i % 5 === 0))
      expect(findEntries({ words: name })[0]?.name, name).toBe(name)
  })
  it('finds by unit of what is given and taken, however the unit is typed', () => {
    const found = findEntries({ gives: 'm3/m3', takes: '1', topic: 'dielectric' })
    expect(found.map((entry) => entry.name)).toContain('waterContentTopp1980')
    expect(findEntries({ gives: 'm³/m³' })).toEqual(findEntries({ gives: 'm3/m3' }))
    expect(findEntries({ gives: 'umol/m2/s' })).toEqual(findEntries({ gives: 'µmol/m²/s' }))
    // An object with a volume in it gives litres, too.
    expect(findEntries({ gives: 'L' }).map((entry) => entry.name)).toContain('planDay')
  })
  it('finds by source', () => {
    const found = findEntries({ source: 'FAO 56 Eq. 6' })
    expect(found.map((entry) => entry.name)).toContain('referenceETFao56')
    for (const entry of found) expect(entry.sources.map(sourceInFull).join(' ')).toMatch(/FAO/)
  })
  it('gives all for an empty query and none for nonsense', () => {
    expect(findEntries({})).toHaveLength(catalogue.length)
    expect(findEntries({ words: 'xyzzy' })).toEqual([])
    expect(findEntries({ words: 'shot', topic: 'water' })).toEqual([])
  })
  it('refuses what is no query, by code', () => {
    for (const bad of [null, 'drain', { word: 'drain' }, { words: 3 }])
      expect(() => findEntries(bad as never)).toThrow(expect.objectContaining({ code: 'bad-input' }))
  })
})

describe('entryNamed', () => {
  it('proposes names for a slip of the pen', () => {
    expect(() => entryNamed('shotVolum')).toThrow(/close to it: shotVolume/)
    expect(() => entryNamed('watrContentTopp1980')).toThrow(/waterContentTopp1980/)
    expect(() => entryNamed('qqqqqqqqqq')).toThrow(/findEntries/)
    expect(() => entryNamed('x'.repeat(1e6))).toThrow(expect.objectContaining({ code: 'bad-input' }))
  })
})
