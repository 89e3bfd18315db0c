import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  decisiemensPerMetre,
  hours,
  litres,
  millimetresPerHour,
  minutes,
  type PoreWaterEC,
  perCentimetre,
  type SaltInContainer,
  type SoluteFront,
  type SolutionEC,
  seconds,
  soluteFrontOgataBanks1961,
  soluteFrontVanGenuchtenAlves1982,
  vanGenuchten1980,
  type WaterFlux,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { limits } from '../support/uptake-limits.js'

const NOTHING = litres(0)
const medium = vanGenuchten1980({
  residual: waterContent(0.05),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.08),
  n: 1.8,
})
const KS = 60
const SUCTION = centimetresOfSuction(12)
const content = medium.waterContent(SUCTION)
/** Flow under a suction that is the same everywhere: K(s), in cm/h. */
const flux = KS * medium.relativeConductivity(SUCTION)
const ec = (value: number) => decisiemensPerMetre<PoreWaterEC>(value)
const feedOf = (value: number) => decisiemensPerMetre<SolutionEC>(value)
const AREA = 100

/** A column of 40 cm with water passing evenly, salt of 5 dS/m in it and 2 dS/m coming. */
function column(nodes: number, salt: Partial<SaltInContainer> = {}) {
  const flow = containerFlowRichards1931({
    container: boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(40) }),
    medium,
    saturatedConductivity: centimetresPerHour(KS),
    base: SUCTION,
    nodes,
    tolerance: 1e-4,
    salt: { startEC: ec(5), dispersivity: centimetres(1.5), diffusion: 0, matEC: feedOf(0), ...salt },
  })
  const after = (time: number, steps: number) => {
    let state = flow.startAt(() => SUCTION)
    let drainEC = Number.NaN
    for (let k = 0; k < steps; k++) {
      const duration = seconds(time / steps)
      const applied = litres(((flux * AREA) / 1000) * (duration / 3600))
      const [next, outcome] = flow.step(state, { duration, applied, demand: NOTHING, feedEC: feedOf(2) })
      state = next
      if (outcome.salt?.drainEC.known) drainEC = outcome.salt.drainEC.ec
    }
    return { state, drainEC, profile: flow.profile(state) }
  }
  return { flow, after }
}
const front = (depth: number, time: number): SoluteFront => ({
  depth: centimetres(depth),
  time: seconds(time),
  downwardFlux: millimetresPerHour<WaterFlux>(flux * 10),
  waterContent: content,
  dispersivity: centimetres(1.5),
  ecBefore: ec(5),
  feedEC: feedOf(2),
})
/** Time in which water passes a depth. */
const timeTo = (depth: number) => ((depth * content) / flux) * 3600

describe('salt that moves with the water', () => {
  it('is where van Genuchten and Alves (1982) have it in the pores', () => {
    const time = timeTo(15)
    for (const { height, poreWaterEC } of column(161).after(time, 400).profile)
      if (height > 10)
        expect(
          Math.abs((poreWaterEC as number) - soluteFrontVanGenuchtenAlves1982(front(40 - height, time))),
        ).toBeLessThan(0.006)
  })
  it('drains as Ogata and Banks (1961) say of flowing water, up to what the open bottom changes', () => {
    for (const passed of [20, 40, 60]) {
      const { drainEC } = column(81).after(timeTo(passed), 400)
      // Mean of the last step, in its middle.
      const exact = soluteFrontOgataBanks1961(front(40, timeTo(passed) * (1 - 0.5 / 400)))
      expect(Math.abs(drainEC - exact)).toBeLessThan(0.07)
    }
  })
  it('comes closer with the square of the distance between nodes and of the step', () => {
    const time = timeTo(12)
    const off = (nodes: number, steps: number) => {
      let sum = 0
      const { profile } = column(nodes).after(time, steps)
      for (const { height, poreWaterEC } of profile)
        if (height > 12)
          sum += ((poreWaterEC as number) - soluteFrontVanGenuchtenAlves1982(front(40 - height, time))) ** 2 / nodes
      return Math.sqrt(sum)
    }
    const [coarse, fine] = [off(41, 30), off(81, 60)]
    expect(Math.log2(coarse / fine)).toBeGreaterThan(1.7)
  })
  it('is mixed by a dispersion without end, as in a well-mixed reservoir', () => {
    const time = timeTo(30)
    const { profile, drainEC } = column(41, { dispersivity: centimetres(1e6) }).after(time, 400)
    const exact = 2 + 3 * Math.exp(-30 / 40)
    for (const { poreWaterEC } of profile) expect(poreWaterEC).toBeCloseTo(exact, 3)
    expect(drainEC).toBeCloseTo(exact, 2)
  })
  const pot = {
    container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(12) }),
    medium,
    saturatedConductivity: centimetresPerHour(KS),
    roots: { limits },
  }
  const planted = (salt: Partial<SaltInContainer>) =>
    containerFlowRichards1931({ ...pot, salt: { startEC: ec(3), ...salt } })
  it('is not told where none is followed', () => {
    const flow = containerFlowRichards1931(pot)
    const state = flow.startFrom(waterContent(0.6))
    expectInputError(() => flow.meanEC(state), 'state')
    for (const layer of flow.profile(state)) expect(layer).not.toHaveProperty('poreWaterEC')
  })
  it('stays at one EC everywhere when water, feed and roots all have it', () => {
    const flow = planted({ uptakeShare: 1 })
    let state = flow.startAt((z) => centimetresOfSuction(z + 2))
    for (let k = 0; k < 5; k++) {
      const shot = { duration: minutes(5), applied: litres(0.3), demand: litres(0.02), feedEC: feedOf(3) }
      state = flow.step(state, shot)[0]
      state = flow.step(state, { duration: hours(1), applied: NOTHING, demand: litres(0.1) })[0]
    }
    for (const { poreWaterEC } of flow.profile(state)) expect(poreWaterEC).toBeCloseTo(3, 9)
  })
  it('stays behind when roots leave it, and rises as the water falls', () => {
    const flow = planted({})
    const start = flow.startAt((z) => centimetresOfSuction(z + 2))
    const [state, { salt }] = flow.step(start, { duration: hours(8), applied: NOTHING, demand: litres(0.8) })
    expect(salt).toMatchObject({ given: 0, taken: 0, drained: 0, drainEC: { known: false, reason: 'no-drain' } })
    expect(flow.meanEC(state) * flow.waterContent(state)).toBeCloseTo(3 * flow.waterContent(start), 9)
  })
  it('is neither lost nor made, with any uptake, dispersion and bypass', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 0.8, noNaN: true }),
        (uptakeShare, dispersivity, applied) => {
          const flow = planted({ uptakeShare, dispersivity: centimetres(dispersivity) })
          const start = flow.startAt((z) => centimetresOfSuction(z))
          const sum = (list: readonly number[] = []) => list.reduce((total, part) => total + part, 0)
          const during = { duration: hours(2), applied: litres(applied), demand: litres(0.1), feedEC: feedOf(2) }
          const [state, { salt }] = flow.step(start, during)
          const gain = (salt?.given ?? 0) - (salt?.drained ?? 0) - (salt?.taken ?? 0)
          expect(Math.abs(sum(state.salt) - sum(start.salt) - gain)).toBeLessThan(1e-10)
        },
      ),
      { numRuns: 30 },
    )
  })
  it('stays a number in a medium that holds nothing where it is driest', () => {
    const container = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(10) })
    const flow = containerFlowRichards1931({
      container,
      medium: vanGenuchten1980({
        residual: waterContent(0),
        saturated: waterContent(0.9),
        alpha: perCentimetre(0.2),
        n: 3.5,
      }),
      saturatedConductivity: centimetresPerHour(100),
      salt: { startEC: ec(2) },
    })
    const during = { duration: minutes(5), applied: litres(0.1), demand: NOTHING, feedEC: feedOf(1) }
    const [state, { salt }] = flow.step(
      flow.startAt(() => centimetresOfSuction(1e5)),
      during,
    )
    const held = state.salt?.reduce((sum, cell) => sum + cell, 0) ?? Number.NaN
    expect(salt?.given).toBeCloseTo(0.1, 12)
    expect(held).toBeGreaterThan(0.09)
    expect(held).toBeLessThan(0.11)
  })
  it('goes on bit for bit from a state that was written down', () => {
    const flow = planted({ uptakeShare: 0.5 })
    const shot = { duration: minutes(7), applied: litres(0.3), demand: litres(0.02), feedEC: feedOf(2) }
    const [state] = flow.step(flow.startFrom(waterContent(0.6)), shot)
    const restored = JSON.parse(JSON.stringify(state)) as typeof state
    expect(planted({ uptakeShare: 0.5 }).step(restored, shot)).toEqual(flow.step(state, shot))
  })
  it('refuses water without an EC, a mat without one, and a state without salt', () => {
    const flow = planted({})
    const start = flow.startFrom(waterContent(0.6))
    expectInputError(() => flow.step(start, { duration: minutes(5), applied: litres(0.1), demand: NOTHING }), 'feedEC')
    const { salt: _, ...bare } = start
    expectInputError(() => flow.waterContent(bare), 'state')
    expectDomainError(() => flow.waterContent({ ...start, salt: start.water.map(() => Number.NaN) }), {
      quantity: 'salt of the state',
    })
    expectDomainError(() => planted({ dispersivity: centimetres(1), uptakeShare: 11 }), { quantity: 'uptake share' })
    expectInputError(() => column(21, { matEC: undefined as never }), 'salt.matEC')
    expectDomainError(() => column(21, { matEC: -1 as never }), { quantity: 'EC of the mat' })
    expectDomainError(() => column(21, { startEC: -1 as never }), { quantity: 'EC at the start' })
    // A field so wide that no number holds its salt.
    const wide = boxContainer({ length: centimetres(1.1e153), width: centimetres(1.1e153), height: centimetres(1) })
    const { roots: _roots, ...bed } = { ...pot, container: wide }
    expectInputError(() => containerFlowRichards1931({ ...bed, salt: { startEC: ec(200) } }), 'startEC')
  })
})

describe('the closed forms of a salt front', () => {
  const share = (value: number) => (value - 5) / (2 - 5)
  // Rows from salt-front.py: the same formulas by the special functions of scipy.
  const rows = JSON.parse(readFileSync(new URL('./salt-front.json', import.meta.url), 'utf8')) as {
    depth: number
    time: number
    ogataBanks: number
    vanGenuchtenAlves: number
  }[]
  it('agree with the same formulas in scipy, far out and close by', () => {
    expect(rows).toHaveLength(20)
    for (const { depth, time, ogataBanks, vanGenuchtenAlves } of rows) {
      const downwardFlux = millimetresPerHour<WaterFlux>(72)
      const at = { ...front(depth, time), downwardFlux, waterContent: waterContent(0.4) }
      expect(share(soluteFrontOgataBanks1961(at))).toBeCloseTo(ogataBanks, 10)
      expect(share(soluteFrontVanGenuchtenAlves1982(at))).toBeCloseTo(vanGenuchtenAlves, 10)
    }
  })
  it('begin with the old water and end with the new, the flowing water ahead of that in the pores', () => {
    expect(soluteFrontOgataBanks1961(front(10, 0))).toBe(5)
    for (const part of [0.3, 1, 3]) {
      const at = front(10, part * timeTo(10))
      expect(soluteFrontOgataBanks1961(at)).toBeLessThan(soluteFrontVanGenuchtenAlves1982(at))
    }
    expect(soluteFrontVanGenuchtenAlves1982(front(10, 100 * timeTo(10)))).toBeCloseTo(2, 9)
  })
  it('give the old or the new water where so little or so much time overflows the arithmetic', () => {
    for (const form of [soluteFrontOgataBanks1961, soluteFrontVanGenuchtenAlves1982]) {
      expect(form(front(10, 1e-300))).toBeCloseTo(5, 9)
      expect(form({ ...front(0, 1e-300), dispersivity: 1e-80 as never })).toBe(2)
      expect(form({ ...front(10, 60), downwardFlux: 1e200 as never })).toBe(2)
    }
  })
  it('refuse a flow that stands still and a place above the surface', () => {
    expectDomainError(
      () => soluteFrontOgataBanks1961({ ...front(1, 1), downwardFlux: millimetresPerHour<WaterFlux>(0) }),
      {
        quantity: 'downward flux',
      },
    )
    expectDomainError(() => soluteFrontVanGenuchtenAlves1982({ ...front(1, 1), depth: -1 as never }), {
      quantity: 'depth',
    })
  })
})
