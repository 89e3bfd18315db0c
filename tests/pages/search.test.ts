import fc from 'fast-check'
import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { GUIDES, guideNames } from '../../docs/documentation/guide-order.js'
import { searchIndex } from '../../docs/search/build.js'
import { find, indexOf, oneSlip } from '../../src/repl/search/rank.js'
import { stem, wordsOf } from '../../src/repl/search/words.js'

const index = searchIndex(catalogue)
const titles = (query: string, kind = 'function') =>
  find(index, query)
    .filter((page) => page.kind === kind)
    .map((page) => page.title)

describe('the search of the documentation', () => {
  // What people of the trade type, and a function or guide that answers it.
  it.each([
    ['evapotranspiration', 'dailyReferenceETFao56'],
    ['VPD', 'vapourPressureDeficit'],
    ['leak', 'findClimbs'],
    ['runoff', 'drainFraction'],
    ['leachate', 'drainFraction'],
    ['dry-back', 'overnightDryDowns'],
    ['VWC', 'waterContentTopp1980'],
    ['how much should drain', 'steadyDrainFraction'],
    ['how big is a shot', 'sizeShot'],
    ['refill point', 'irrigationLimits'],
    ['spot check', 'meanWithConfidence'],
    ['calibrate my probe', 'calibrateTwoPoint'],
    ['rockwool', 'rehearsalScenario'],
    ['Topp 1980', 'waterContentTopp1980'],
  ])('%s leads to %s among the first functions', (query, name) => {
    expect(titles(query)).toContain(name)
  })
  it.each([
    ['spot check', /^Care for probes/],
    ['runoff', /runoff|Drain and salts/],
    ['dry-back', /dry-back|Learn the dry-down/],
    ['leachate', /runoff|Drain and salts/],
    ['VWC', /By hand and by night|Care for probes|Probe to water content/],
    ['watering by hand', /^By hand and by night/],
    ['night', /By hand and by night/],
    ['young plants', /By hand and by night/],
    ['plugs on a slab', /By hand and by night/],
    ['hand meter', /Care for probes/],
    ['replace a probe', /Care for probes/],
    ['move a probe', /Care for probes/],
    ['wash probes between crops', /Care for probes/],
    ['acid', /^Cautions/],
    ['stuck valve', /^Safe automation|Rehearse|Cautions|What is wrong/],
  ])('%s leads to a guide', (query, guide) => {
    expect(titles(query, 'guide').slice(0, 3).join('; ')).toMatch(guide)
  })
  it('shows functions first, then guides, then kinds of quantities', () => {
    for (const query of ['drain', 'water content', 'probe']) {
      const kinds = find(index, query).map(({ kind }) => kind)
      expect([...new Set(kinds)]).toEqual(['function', 'guide', 'kind'].filter((kind) => kinds.includes(kind as never)))
      expect(kinds[0]).toBe('function')
    }
  })
  it('finds each function by its own name first', () => {
    for (const { name } of catalogue.filter((_, i) => i % 7 === 0)) expect(titles(name)[0]).toBe(name)
  })
  it('answers while a word is being typed, and forgives a slip', () => {
    expect(titles('evapotr')).toContain('dailyReferenceETFao56')
    expect(titles('drian')).toContain('drainFraction')
    expect(find(index, 'qqqxyzzy')).toEqual([])
    expect(find(index, 'how much should the')).toEqual([])
  })
  it('knows every guide at its place in the order of the job', () => {
    const listed = GUIDES.flatMap(({ names }) => names)
    expect(guideNames().filter((name) => !listed.includes(name))).toEqual([])
  })
  it('takes anything that can be typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (query) => {
        expect(find(index, query).length).toBeLessThanOrEqual(36)
      }),
      { numRuns: 200 },
    )
    for (const query of ['__proto__', 'constructor', 'toString valueOf']) expect(() => find(index, query)).not.toThrow()
  })
})

describe('words', () => {
  it('meet whatever their ending', () => {
    for (const row of [
      ['drain', 'drains', 'drained', 'draining', 'drainage'],
      ['leak', 'leaks', 'leaking', 'leakage'],
      ['irrigate', 'irrigation', 'irrigating'],
      ['capacity', 'capacities'],
    ])
      expect(new Set(row.map(stem)).size, row.join()).toBe(1)
    expect(wordsOf('waterContentTopp1980')).toEqual(['water', 'content', 'topp', '1980'])
    expect(wordsOf('referenceETFao56')).toEqual(['referenc', 'et', 'fao56'])
  })
  it('are one slip apart by one letter or two neighbours swapped', () => {
    expect(oneSlip('drain', 'drian')).toBe(true)
    expect(oneSlip('drain', 'drin')).toBe(true)
    expect(oneSlip('drain', 'drains')).toBe(true)
    expect(oneSlip('drain', 'grown')).toBe(false)
    expect(oneSlip('drain', 'nidra')).toBe(false)
  })
  it('weigh where they stand: a name more than a description', () => {
    const page = (title: string) => ({ kind: 'function' as const, title, url: title, summary: '' })
    const small = indexOf([
      { page: page('a'), texts: [[1, 'the drain of a pot']] },
      { page: page('b'), texts: [[9, 'drain']] },
    ])
    expect(find(small, 'drain').map(({ title }) => title)).toEqual(['b'])
    expect(find(small, 'drain pot').map(({ title }) => title)).toEqual(['a', 'b'])
  })
})
