import fc from 'fast-check'
import {
  type CropET,
  centimetresOfSuction,
  dryLimitsTaylorAshcroft1972,
  type FeddesLimits,
  millimetresPerDay,
  type SuctionHead,
  tableRow,
  uptakeFeddes1978,
  uptakeLimitsFeddes,
} from 'porewater'
import { sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { feddesDryStart, feddesFactor } from '../../src/flow/feddes-factor.js'
import { checkPublished, publishedRows } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'uptake.feddes', (given) => {
  const { factor, h3 } = uptakeFeddes1978({
    suction: centimetresOfSuction(-given.h),
    demand: millimetresPerDay(10 * given.demand),
    limits: {
      h1: centimetresOfSuction(-given.h1),
      h2: centimetresOfSuction(-given.h2),
      h3HighDemand: centimetresOfSuction(-given.h3_high_demand),
      h3LowDemand: centimetresOfSuction(-given.h3_low_demand),
      h4: centimetresOfSuction(-given.h4),
      highDemand: millimetresPerDay(10 * given.demand_high),
      lowDemand: millimetresPerDay(10 * given.demand_low),
    },
  })
  return { factor, h3: -h3 }
})

const limits: FeddesLimits = {
  h1: centimetresOfSuction(10),
  h2: centimetresOfSuction(25),
  h3HighDemand: centimetresOfSuction(320),
  h3LowDemand: centimetresOfSuction(600),
  h4: centimetresOfSuction(16000),
  highDemand: millimetresPerDay(5),
  lowDemand: millimetresPerDay(1),
}
const suctions = fc.double({ min: 0, max: 20000, noNaN: true }).map(centimetresOfSuction)
const demands = fc.double({ min: 0, max: 10, noNaN: true }).map((value) => millimetresPerDay<CropET>(value))
const factor = (suction: SuctionHead, demand: CropET) => uptakeFeddes1978({ suction, demand, limits }).factor

describe('limits of crops', () => {
  it('are those of the rows, except the h3 of lettuce, which contradicts a table that was read; with their source', () => {
    for (const row of publishedRows('hydraulics', 'uptake.feddes')) {
      const { crop, h1, h2, h3_high_demand, h3_low_demand, h4 } = row.given as Record<string, [never, string]>
      const name: string = crop?.[0] ?? ''
      const mine = tableRow(uptakeLimitsFeddes, name)
      expect([mine.h1, mine.h2, mine.h4].map((h) => -h)).toEqual([h1, h2, h4].map((entry) => entry?.[0]))
      if (name === 'lettuce') continue
      expect([mine.h3HighDemand, mine.h3LowDemand].map((h) => -h)).toEqual(
        [h3_high_demand, h3_low_demand].map((entry) => entry?.[0]),
      )
    }
    for (const limits of Object.values(uptakeLimitsFeddes)) {
      expect(sourceInFull(limits.source)).toMatch(/\[not confirmed, source not seen\]|common practice, no source/)
      expect(uptakeFeddes1978({ suction: limits.h2, demand: millimetresPerDay(3), limits }).factor).toBe(1)
    }
  })
  it('of lettuce have the dry end of Taylor and Ashcroft (1972), and no other name on it', () => {
    const { h3HighDemand, h3LowDemand, source } = uptakeLimitsFeddes.lettuce
    expect({ h3HighDemand, h3LowDemand }).toEqual({ h3HighDemand: 400, h3LowDemand: 600 })
    expect(dryLimitsTaylorAshcroft1972.lettuce).toMatchObject({ h3HighDemand, h3LowDemand })
    expect(source).not.toContain('wesseling')
  })
  it('of Taylor and Ashcroft come sooner at high demand, and complete a set of limits', () => {
    for (const dry of Object.values(dryLimitsTaylorAshcroft1972)) {
      expect(dry.h3HighDemand).toBeLessThan(dry.h3LowDemand)
      expect(
        uptakeFeddes1978({ suction: dry.h3HighDemand, demand: limits.highDemand, limits: { ...limits, ...dry } })
          .factor,
      ).toBe(1)
    }
  })
})

describe('Feddes 1978', () => {
  it('stays a share, rises up to h2 and falls after h3, and never exceeds the demand', () => {
    fc.assert(
      fc.property(suctions, suctions, demands, (a, b, demand) => {
        fc.pre(a < b)
        const [fa, fb] = [factor(a, demand), factor(b, demand)]
        expect(fa).toBeGreaterThanOrEqual(0)
        expect(fa).toBeLessThanOrEqual(1)
        if (b <= 320) expect(fb).toBeGreaterThanOrEqual(fa)
        if (a >= 25) expect(fb).toBeLessThanOrEqual(fa)
        const { uptake, factor: share } = uptakeFeddes1978({ suction: b, demand, limits })
        expect(uptake).toBe(share * demand)
      }),
    )
  })
  it('falls sooner when more is asked for', () => {
    fc.assert(
      fc.property(suctions, demands, demands, (s, low, high) => {
        fc.pre(low < high)
        expect(factor(s, high)).toBeLessThanOrEqual(factor(s, low))
      }),
    )
  })
  it('has its corners where the limits are', () => {
    const demand = millimetresPerDay<CropET>(5)
    const corners = [10, 25, 320, 16000].map((s) => factor(centimetresOfSuction(s), demand))
    expect(corners).toEqual([0, 1, 1, 0])
    expect(factor(centimetresOfSuction(9.99), demand)).toBe(0)
    expect(feddesDryStart(limits, 0.2)).toBe(600)
    expect(feddesDryStart(limits, 7)).toBe(320)
    expect(feddesDryStart(limits, 3)).toBe(460)
  })
  it('has the slope of its own line', () => {
    fc.assert(
      fc.property(suctions, (s) => {
        const step = 1e-3
        fc.pre([10, 25, 460, 16000].every((corner) => Math.abs(corner - s) > 2 * step))
        const rise = feddesFactor(s + step, limits, 460)[0] - feddesFactor(s - step, limits, 460)[0]
        expect(feddesFactor(s, limits, 460)[1]).toBeCloseTo(rise / (2 * step), 9)
      }),
    )
  })
  it('takes limits that coincide: no need of air, one h3 for every demand', () => {
    const marsh = {
      ...limits,
      h1: centimetresOfSuction(0),
      h2: centimetresOfSuction(0),
      h3LowDemand: limits.h3HighDemand,
    }
    const at = (s: number) =>
      uptakeFeddes1978({ suction: centimetresOfSuction(s), demand: millimetresPerDay(0), limits: marsh })
    expect(at(0).factor).toBe(1)
    expect(at(0).h3).toBe(320)
  })
  it('refuses what has no meaning', () => {
    const call = (change: Partial<FeddesLimits>, suction = 50, demand = 3) =>
      uptakeFeddes1978({ suction: suction as never, demand: demand as never, limits: { ...limits, ...change } })
    expectDomainError(() => call({}, -50), { quantity: 'suction' })
    expectDomainError(() => call({}, 50, -1), { quantity: 'demand' })
    expectDomainError(() => call({}, 50, Number.NaN), { quantity: 'demand' })
    expectDomainError(() => call({ h3LowDemand: -600 as never }), { quantity: 'h3LowDemand' })
    expectDomainError(() => call({ h4: 0 as never }), { quantity: 'h4' })
    expectInputError(() => call({ h1: centimetresOfSuction(30) }), 'limits')
    expectInputError(() => call({ h3HighDemand: centimetresOfSuction(700) }), 'limits')
    expectInputError(() => call({ h4: centimetresOfSuction(500) }), 'limits')
    expectInputError(() => call({ lowDemand: millimetresPerDay(5) }), 'limits')
  })
})
