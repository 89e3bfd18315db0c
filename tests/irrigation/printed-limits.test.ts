import {
  airSpaceBand,
  celsius,
  decisiemensPerMetre,
  emitterGrade,
  fraction,
  mediaSaltBand,
  type RootZoneOrganism,
  rootTemperatureBand,
  type SolutionEC,
  uniformityGrade,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** The names of the classes on either side of each limit, and on it. */
const around = (limits: readonly number[], nameAt: (value: number) => string, beside: number) =>
  limits.map((limit) => [limit - beside, limit, limit + beside].map(nameAt))

// Second transcriptions of the limits between classes, made from the sources and not from the code.
describe('limits between classes', () => {
  it('of new emitters by their variation: ASABE EP405, point sources; from memory', () => {
    expect(around([0.05, 0.07, 0.11, 0.15], emitterGrade, 0.001)).toEqual([
      ['excellent', 'excellent', 'average'],
      ['average', 'average', 'marginal'],
      ['marginal', 'marginal', 'poor'],
      ['poor', 'poor', 'unacceptable'],
    ])
  })
  it('of a field by its statistical uniformity: ASABE EP458; from memory', () => {
    expect(around([0.6, 0.7, 0.8, 0.9], (share) => uniformityGrade(fraction(share)), 0.001)).toEqual([
      ['unacceptable', 'poor', 'poor'],
      ['poor', 'fair', 'fair'],
      ['fair', 'good', 'good'],
      ['good', 'excellent', 'excellent'],
    ])
  })
  // University of Massachusetts Extension, table of soluble salts in media tests; read in a copy.
  it.each([
    ['pour-through', [1, 2.6, 4.6, 6.5, 7.8]],
    ['saturated-media-extract', [0.75, 2, 3.5, 5, 6]],
    ['one-to-two', [0.25, 0.75, 1.25, 1.75, 2.25]],
  ] as const)('of salts by the method %s', (method, limits) => {
    const names = ['very-low', 'low', 'normal', 'high', 'very-high', 'extreme']
    const nameAt = (ec: number) => mediaSaltBand({ method, ec: decisiemensPerMetre<SolutionEC>(ec) }).band
    expect(around(limits, nameAt, 0.001)).toEqual(limits.map((_, i) => [names[i], names[i], names[i + 1]]))
  })
  it('of air after drainage: guideline of the Queensland nursery industry, 13 to 30 %', () => {
    expect(around([0.13, 0.3], (share) => airSpaceBand(fraction(share)).band, 0.001)).toEqual([
      ['low', 'accepted', 'accepted'],
      ['accepted', 'accepted', 'high'],
    ])
  })
  const organisms: readonly [RootZoneOrganism, string, readonly number[], readonly (readonly string[])[]][] = [
    [
      'fruiting-vegetables',
      'common practice, from memory; 24 °C from Gosselin and Trudel 1983',
      [15, 18, 24, 27],
      [
        ['cold', 'cold', 'cool'],
        ['cool', 'cool', 'target'],
        ['target', 'target', 'warm'],
        ['warm', 'warm', 'hot'],
      ],
    ],
    [
      'Pythium',
      'Gold and Stanghellini 1985: compared from 17 to 27 °C, 23 °C decides',
      [17, 23],
      [
        ['not-studied', 'pythium-dissotocum', 'pythium-dissotocum'],
        ['pythium-dissotocum', 'either', 'pythium-aphanidermatum'],
      ],
    ],
    ['Pythium myriotylum', 'Fortnum 2000: least at 15 °C', [15], [['least', 'least', 'favoured']]],
    [
      'Phytophthora cryptogea',
      'Kennedy and Pegg 1990: plants died at 15 °C, growth best at 20 to 25, no zoospores at 30',
      [15, 20, 25, 30],
      [
        ['zoospores', 'zoospores', 'between'],
        ['between', 'growth', 'growth'],
        ['growth', 'growth', 'declining'],
        ['declining', 'no-zoospores', 'no-zoospores'],
      ],
    ],
    [
      'Phytophthora nicotianae',
      'INRAE: best at 24 to 30 °C, nearly stopped below 10 and above 36',
      [10, 24, 30, 36],
      [
        ['nearly-stopped', 'slow', 'slow'],
        ['slow', 'best', 'best'],
        ['best', 'best', 'declining'],
        ['declining', 'declining', 'nearly-stopped'],
      ],
    ],
  ]
  it.each(organisms)('of the temperature of roots for %s: %s', (organism, _, limits, names) => {
    const nameAt = (degrees: number) => rootTemperatureBand({ temperature: celsius(degrees), organism }).band
    expect(around(limits, nameAt, 0.01)).toEqual(names)
  })
})
