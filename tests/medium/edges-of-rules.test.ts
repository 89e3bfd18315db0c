import {
  attempt,
  centimetres,
  centimetresOfSuction,
  cylinderContainer,
  fitRetention,
  formVanGenuchten1980,
  litres,
  perCentimetre,
  pluggedPotTest,
  roundedSquareContainer,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

describe('containers', () => {
  it('without a step in their section have no heights where it bends', () => {
    expect(cylinderContainer({ diameter: centimetres(20), height: centimetres(18) }).breakpoints).toEqual([])
    const sides = { bottomSide: centimetres(20), topSide: centimetres(24), height: centimetres(25) }
    expect(roundedSquareContainer({ ...sides, cornerRadius: centimetres(4) }).breakpoints).toEqual([])
  })
  it('whose corners do not fit say which side is too short', () => {
    const sides = { bottomSide: centimetres(24), topSide: centimetres(20), height: centimetres(25) }
    const refused = attempt(() => roundedSquareContainer({ ...sides, cornerRadius: centimetres(11) }))
    expect(refused).toMatchObject({ ok: false, error: { argument: 'cornerRadius' } })
    expect(String((refused as { error: unknown }).error)).toContain('do not fit a side of 20 cm')
  })
})

describe('a plugged pot', () => {
  it('says of its starting water content what it is', () => {
    const test = { substrateVolume: litres(1), volumeToSaturate: litres(0.5), drainedVolume: litres(0.1) }
    expect(attempt(() => pluggedPotTest({ ...test, startingWaterContent: 1.5 as never }))).toMatchObject({
      ok: false,
      error: { quantity: 'starting water content', argument: 'startingWaterContent', value: 1.5 },
    })
  })
})

describe('a curve with a saturation that the caller fixed', () => {
  const medium = vanGenuchten1980({
    residual: waterContent(0.1),
    saturated: waterContent(0.9),
    alpha: perCentimetre(0.1),
    n: 1.6,
  })
  const points = [0, 2, 5, 10, 20, 50, 100, 300].map((suction) => ({
    suction: centimetresOfSuction(suction),
    waterContent: medium.waterContent(centimetresOfSuction(suction)),
  }))
  it('tells it among its parameters, as fixed and without an error', () => {
    const { parameters } = fitRetention({ form: formVanGenuchten1980, points, saturated: waterContent(0.9) })
    const [saturated, residual] = ['saturated', 'residual'].map((name) => parameters.find((one) => one.name === name))
    expect(saturated).toEqual({ name: 'saturated', value: 0.9, unit: 'm³/m³', fixed: true })
    expect(residual).toMatchObject({ value: expect.closeTo(0.1, 6), fixed: false })
  })
  it('refuses one below the driest point, by its name', () => {
    const driest = points.at(-1)!.waterContent
    for (const saturated of [0.9 * driest, 0.5 * driest])
      expect(
        attempt(() => fitRetention({ form: formVanGenuchten1980, points, saturated: waterContent(saturated) })),
      ).toMatchObject({
        ok: false,
        error: { argument: 'saturated' },
      })
    expect(
      attempt(() => fitRetention({ form: formVanGenuchten1980, points, residual: waterContent(1.1 * driest) })),
    ).toMatchObject({
      ok: false,
      error: { argument: 'residual' },
    })
  })
})
