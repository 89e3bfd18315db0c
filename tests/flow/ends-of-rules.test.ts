import { unit } from 'mathjs'
import {
  attempt,
  bestProbeHeight,
  boxContainer,
  brooksCorey1964,
  type CropET,
  capillaryFlux,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type Length,
  litres,
  millimetresPerDay,
  minutes,
  perCentimetre,
  sorptivityParlange1975,
  uptakeFeddes1978,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { sinkOf } from '../../src/flow/richards-roots.js'

const cm = centimetresOfSuction
const limits = {
  h1: cm(10),
  h2: cm(25),
  h3HighDemand: cm(200),
  h3LowDemand: cm(400),
  h4: cm(8000),
  highDemand: millimetresPerDay(5) as CropET,
  lowDemand: millimetresPerDay(1) as CropET,
}

describe('roots that take up water between suctions', () => {
  const factor = (suction: number, changed: object = {}) => {
    const given = { suction: cm(suction), demand: millimetresPerDay(5) as CropET, limits: { ...limits, ...changed } }
    const answer = attempt(() => uptakeFeddes1978(given))
    return answer.ok ? answer.value.factor : (answer.error as { argument?: string }).argument
  }
  it('may have limits that are one, but for the wilting point, and demands that differ', () => {
    expect(factor(10, { h2: cm(10) })).toBe(1)
    expect(factor(100, { h2: cm(200) })).toBeCloseTo(90 / 190, 12)
    expect(factor(300, { h3HighDemand: cm(400) })).toBe(1)
    expect(factor(400, { h3HighDemand: cm(400), h4: cm(400) })).toBe('limits')
    expect(factor(100, { lowDemand: millimetresPerDay(5) })).toBe('limits')
    expect(factor(100, { lowDemand: millimetresPerDay(4.999) })).toBe(1)
  })
  it('take nothing at the wettest limit and at the wilting point, and all from the second to the third', () => {
    expect([10, 17.5, 25, 200, 4100, 8000].map((s) => factor(s))).toEqual([0, 0.5, 1, 1, 0.5, 0])
  })
})

describe('roots in a column', () => {
  const grid = {
    surface: 400,
    heights: Float64Array.of(0, 4, 10),
    lengths: Float64Array.of(4, 6),
    lowerHalves: Float64Array.of(800, 1200),
    upperHalves: Float64Array.of(800, 1200),
  } as unknown as Parameters<typeof sinkOf>[0]
  it('fall short from the suction that belongs to their demand, in millimetres a day of the surface', () => {
    for (const demand of [1e-4, 8e-4, 0.0012, 0.0021, 0.0029]) {
      const perDay = millimetresPerDay<CropET>(unit(demand / grid.surface, 'cm/s').toNumber('mm/day'))
      const { h3 } = uptakeFeddes1978({ suction: cm(100), demand: perDay, limits })
      expect(sinkOf(grid, { limits })(demand)!.h3).toBeCloseTo(h3, 9)
    }
  })
  it('share the demand by the volume, or by how dense they are a quarter and three quarters up each element', () => {
    const even = sinkOf(grid, { limits })(4)!
    expect([...even.fromLower, ...even.fromUpper]).toEqual([0.8, 1.2, 0.8, 1.2])
    expect([...even.max]).toEqual([0.8, 2, 1.2])
    const seen: number[] = []
    const rising = (height: Length) => {
      seen.push(height)
      return height as number
    }
    const denser = sinkOf(grid, { limits, density: rising })(1)!
    expect(seen).toEqual([1, 5.5, 3, 8.5])
    const parts = [800, 6600, 2400, 10200].map((part) => expect.closeTo(part / 20000, 12))
    expect([...denser.fromLower, ...denser.fromUpper]).toEqual(parts)
  })
  it('want a demand that they are described for, and a density somewhere', () => {
    expect(sinkOf(grid, undefined)(0)).toBeUndefined()
    expect(sinkOf(grid, { limits })(0)).toBeUndefined()
    expect(attempt(() => sinkOf(grid, undefined)(0.1))).toMatchObject({ ok: false, error: { argument: 'demand' } })
    expect(attempt(() => sinkOf(grid, { limits, density: () => 0 }))).toMatchObject({
      ok: false,
      error: { argument: 'roots.density' },
    })
  })
})

describe('sorptivity', () => {
  it('is that of the pieces together, wherever the kink of the curve lies', () => {
    // S² is an integral over suctions, weighted by contents above the initial one: with K and θ of Brooks and Corey it has closed pieces.
    const [residual, saturated, entry, lambda] = [0.1, 0.5, 20, 1.5]
    const medium = brooksCorey1964({
      residual: waterContent(residual),
      saturated: waterContent(saturated),
      airEntry: cm(entry),
      lambda,
    })
    const conductivity = centimetresPerHour(10)
    const at = (from: number, to: number) =>
      sorptivityParlange1975({
        medium,
        saturatedConductivity: conductivity,
        surfaceSuction: cm(from),
        initialSuction: cm(to),
      })
    // From a full surface, down to the kink only, nothing is taken up; beyond it the head of the kink adds to the square.
    expect(at(0, entry)).toBe(0)
    const [whole, without] = [at(0, 100), at(entry, 100)]
    const initial = residual + (saturated - residual) * (entry / 100) ** lambda
    expect(whole ** 2 - without ** 2).toBeCloseTo(2 * (saturated - initial) * 10 * entry, 6)
  })
})

describe('water that rises from below', () => {
  it('stands still where the suction is the height, and sinks below', () => {
    const medium = vanGenuchten1980({
      residual: waterContent(0.1),
      saturated: waterContent(0.9),
      alpha: perCentimetre(0.1),
      n: 1.6,
    })
    const flux = (suction: number) =>
      capillaryFlux({
        medium,
        saturatedConductivity: centimetresPerHour(10),
        height: centimetres(20),
        suction: cm(suction),
      })
    expect([flux(19), flux(20)]).toEqual([0, 0])
    expect(flux(20.001)).toBeGreaterThan(0)
  })
})

describe('probes at several heights', () => {
  const flow = containerFlowRichards1931({
    container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
    medium: vanGenuchten1980({
      residual: waterContent(0.1),
      saturated: waterContent(0.9),
      alpha: perCentimetre(0.1),
      n: 1.6,
    }),
    saturatedConductivity: centimetresPerHour(60),
  } as never)
  const start = flow.startAt((height: Length) => cm((height as number) + 5))
  const step = (applied: number) => ({ duration: minutes(20), applied: litres(applied), demand: litres(0) })
  const seen = (...applied: number[]) =>
    bestProbeHeight({
      flow,
      start,
      steps: applied.map(step),
      heights: [centimetres(3), centimetres(7)],
      sensedHeight: centimetres(3),
    } as never).views

  it('tell of a day without shots the same before and after them as of all of it', () => {
    for (const view of seen(0, 0, 0)) {
      expect([view.biasBeforeShots, view.biasAfterShots]).toEqual([view.bias, view.bias])
      expect([view.spreadBeforeShots, view.spreadAfterShots]).toEqual([view.spread, view.spread])
    }
  })
  it('tell of a day that begins with its only shot nothing of before, and of after what that interval has', () => {
    for (const view of seen(0.2, 0, 0)) {
      expect(view.biasBeforeShots).toBe(view.bias)
      expect(view.biasAfterShots).not.toBe(view.bias)
    }
  })
})
