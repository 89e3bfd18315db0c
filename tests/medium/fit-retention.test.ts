import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import {
  allRetentionForms,
  brooksCorey1964,
  campbell1974,
  centimetresOfSuction,
  centimetresPerHour,
  chooseRetentionModel,
  durner1994,
  fitRetention,
  formCampbell1974,
  formDurner1994,
  formLogLogistic,
  formVanGenuchten1980,
  fraction,
  fredlundXing1994,
  kosugi1996,
  logLogisticRetention,
  milksFontenoLarson1989,
  perCentimetre,
  type RetentionModel,
  type RetentionPoint,
  vanGenuchten1980,
  vanGenuchtenBurdine1980,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const suctions = Array.from({ length: 30 }, (_, i) => centimetresOfSuction(i === 0 ? 0 : 10 ** (-0.5 + i / 7)))
const limits = { residual: waterContent(0.1), saturated: waterContent(0.9) }
const peat = vanGenuchten1980({ ...limits, alpha: perCentimetre(0.1), n: 1.6 })

// Invented media, one for each model, drawn by the model itself: a fit must give its numbers back.
const media: RetentionModel[] = [
  peat,
  vanGenuchtenBurdine1980({ ...limits, alpha: perCentimetre(0.1), n: 2.6 }),
  brooksCorey1964({ ...limits, airEntry: centimetresOfSuction(8), lambda: 0.6 }),
  campbell1974({ saturated: waterContent(0.5), airEntry: centimetresOfSuction(12), b: 4 }),
  kosugi1996({ ...limits, medianSuction: centimetresOfSuction(25), sigma: 1.2 }),
  logLogisticRetention({ ...limits, halfSuction: centimetresOfSuction(20), slope: 1.4 }),
  milksFontenoLarson1989({ ...limits, alpha: perCentimetre(0.08), n: 1.8, m: 0.7 }),
  fredlundXing1994({
    saturated: waterContent(0.9),
    scaleSuction: centimetresOfSuction(15),
    n: 1.8,
    m: 0.7,
    residualSuction: centimetresOfSuction(1500 / 0.0980665),
  }),
  durner1994({
    ...limits,
    coarseShare: fraction(0.6),
    coarse: { alpha: perCentimetre(0.3), n: 3 },
    fine: { alpha: perCentimetre(0.005), n: 2 },
  }),
]

const drawn = (model: RetentionModel, wobble = 0): RetentionPoint[] =>
  suctions.map((suction, i) => ({
    suction,
    waterContent: waterContent(Math.max(0, model.waterContent(suction) + wobble * Math.sin(7 * i * i))),
  }))

describe('fitRetention', () => {
  it.each(media.map((model, i) => [model.kind, model, allRetentionForms[i]] as const))(
    'gives the numbers of %s back from its own points',
    (kind, model, form) => {
      expect(form?.kind).toBe(kind)
      const fit = fitRetention({ form: form as never, points: drawn(model) })
      expect(fit.model.kind).toBe(kind)
      expect(fit.rmse).toBeLessThan(1e-7)
      for (const { name, value } of fit.parameters) {
        expect(value / model.parameters[name]!, name).toBeCloseTo(1, 3)
      }
    },
  )
  it('finds at least as good a curve as ml-levenberg-marquardt from our own answer', () => {
    const points = drawn(peat, 0.01)
    const fit = fitRetention({ form: formVanGenuchten1980, points })
    const curve =
      ([r = 0, s = 0, a = 0, n = 0]: readonly number[]) =>
      (h: number) =>
        r + (s - r) * (1 + (a * h) ** n) ** (1 / n - 1)
    const other = levenbergMarquardt(
      { x: points.map((p) => p.suction), y: points.map((p) => p.waterContent) },
      curve as never,
      { initialValues: [0.08, 0.92, 0.11, 1.5], maxIterations: 500, damping: 1e-4, gradientDifference: 1e-6 },
    )
    const misfit = (p: readonly number[]) =>
      points.reduce((sum, point) => sum + (curve(p)(point.suction) - point.waterContent) ** 2, 0)
    expect(30 * fit.rmse ** 2).toBeLessThanOrEqual(misfit(other.parameterValues) + 1e-12)
    const { residual, saturated, alpha, n } = fit.model.parameters
    expect(other.parameterValues[0]).toBeCloseTo(residual as number, 3)
    expect(other.parameterValues[1]).toBeCloseTo(saturated as number, 3)
    expect(other.parameterValues[2]).toBeCloseTo(alpha as number, 3)
    expect(other.parameterValues[3]).toBeCloseTo(n as number, 2)
  })
  it('recovers random van Genuchten curves', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        fc.double({ min: 1.25, max: 4, noNaN: true }),
        (alpha, n) => {
          const model = vanGenuchten1980({ ...limits, alpha: perCentimetre(alpha), n })
          const fit = fitRetention({ form: formVanGenuchten1980, points: drawn(model) })
          expect(fit.rmse).toBeLessThan(1e-7)
          expect((fit.model.parameters.n as number) / n).toBeCloseTo(1, 4)
        },
      ),
      { numRuns: 40 },
    )
  })
  it('has standard errors that tell how far repeated measurements scatter', () => {
    // A fixed sequence of pseudo-random noise (Lehmer, multiplier 16807); Irwin-Hall of 12 is close to normal.
    let seed = 12345
    const uniform = () => {
      seed = (seed * 16807) % 2147483647
      return seed / 2147483647
    }
    const normal = () => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b) - 6
    const fits = Array.from({ length: 150 }, () =>
      fitRetention({
        form: formVanGenuchten1980,
        points: drawn(peat).map((p) => ({ ...p, waterContent: waterContent(p.waterContent + 0.004 * normal()) })),
      }),
    )
    for (const name of ['saturated', 'alpha', 'n']) {
      const of = fits.map((fit) => fit.parameters.find((p) => p.name === name))
      const values = of.map((p) => p?.value as number)
      const mean = values.reduce((a, b) => a + b) / values.length
      const scatter = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1))
      const claimed = of.reduce((a, p) => a + (p?.standardError as number), 0) / of.length
      expect(claimed / scatter, name).toBeGreaterThan(0.8)
      expect(claimed / scatter, name).toBeLessThan(1.25)
    }
  })
  it('gives correlations between -1 and 1 with a diagonal of 1', () => {
    const { correlation, parameters } = fitRetention({ form: formVanGenuchten1980, points: drawn(peat, 0.01) })
    expect(correlation.length).toBe(parameters.filter((p) => p.standardError !== undefined).length)
    correlation.forEach((row, i) => {
      expect(row[i]).toBe(1)
      for (const r of row) expect(Math.abs(r)).toBeLessThanOrEqual(1)
    })
  })
  it('keeps what the caller knows', () => {
    const fit = fitRetention({
      form: formVanGenuchten1980,
      points: drawn(peat, 0.01),
      saturated: waterContent(0.93),
      residual: waterContent(0),
    })
    expect(fit.model.parameters).toMatchObject({ saturated: 0.93, residual: 0 })
    expect(fit.parameters.find((p) => p.name === 'residual')).toEqual({
      name: 'residual',
      value: 0,
      unit: 'm³/m³',
      fixed: true,
    })
  })
  it('fits conductivities with the contents', () => {
    const model = vanGenuchten1980({ ...limits, alpha: perCentimetre(0.1), n: 1.6, poreConnection: -0.7 })
    const points = drawn(model).map((p, i) =>
      i % 3 === 0 ? { ...p, conductivity: centimetresPerHour(24 * model.relativeConductivity(p.suction)) } : p,
    )
    const fit = fitRetention({ form: formVanGenuchten1980, points })
    expect(fit.saturatedConductivity).toBeCloseTo(24, 3)
    expect(fit.model.parameters.poreConnection).toBeCloseTo(-0.7, 4)
    expect(fit.rmseLogConductivity).toBeLessThan(1e-6)
    const campbell = media[3]!
    const second = fitRetention({
      form: formCampbell1974,
      points: drawn(campbell).map((p) => ({
        ...p,
        conductivity: centimetresPerHour(5 * (campbell.relativeConductivity?.(p.suction) ?? 0)),
      })),
    })
    expect(second.saturatedConductivity).toBeCloseTo(5, 4)
  })
  it('says when an end of the curve is extrapolated or a limit reached', () => {
    const near = drawn(peat, 0.002).filter((p) => p.suction > 1 && p.suction < 60)
    const { findings } = fitRetention({ form: formVanGenuchten1980, points: near, residual: waterContent(0) })
    expect(findings).toMatchObject([{ code: 'residual-extrapolated', level: 'caution' }])
    const dry = vanGenuchten1980({
      residual: waterContent(0),
      saturated: waterContent(0.9),
      alpha: perCentimetre(0.1),
      n: 1.3,
    })
    const held = fitRetention({ form: formVanGenuchten1980, points: drawn(dry, 0.003) })
    expect(held.findings.filter((w) => w.code === 'at-limit').map((w) => w.about)).toEqual(
      held.model.residual === 0 ? ['residual'] : [],
    )
  })
})

describe('fitRetention refuses, with the reason,', () => {
  it('fewer suctions than parameters', () => {
    expectInputError(() => fitRetention({ form: formVanGenuchten1980, points: drawn(peat).slice(0, 4) }), 'points')
  })
  it('a second family of pores where there is one', () => {
    expect(() => fitRetention({ form: formDurner1994, points: drawn(peat) })).toThrow(/cannot tell \w+/)
  })
  it('an air entry above which nothing was measured', () => {
    const power = campbell1974({ saturated: waterContent(0.5), airEntry: centimetresOfSuction(2), b: 4 })
    const points = drawn(power).filter((p) => p.suction > 20)
    expect(() => fitRetention({ form: formCampbell1974, points })).toThrow(/cannot tell (saturated|airEntry)/)
  })
  it('points of one water content, and none at all', () => {
    const flat = drawn(peat).map((p) => ({ ...p, waterContent: waterContent(0.4) }))
    expectInputError(() => fitRetention({ form: formVanGenuchten1980, points: flat }), 'points')
    expectInputError(() => fitRetention({ form: formVanGenuchten1980, points: [] }), 'points')
  })
  it('conductivities for a model that has none, and too few of them', () => {
    const points = drawn(peat).map((p) => ({ ...p, conductivity: centimetresPerHour(1) }))
    expectInputError(() => fitRetention({ form: formLogLogistic, points }), 'form')
    const one = drawn(peat).map((p, i) => (i === 0 ? { ...p, conductivity: centimetresPerHour(1) } : p))
    expectInputError(() => fitRetention({ form: formVanGenuchten1980, points: one }), 'points')
  })
  it('a residual that the equation does not have or that the points fall below', () => {
    const points = drawn(peat)
    expectInputError(() => fitRetention({ form: formCampbell1974, points, residual: waterContent(0.05) }), 'residual')
    expectInputError(
      () => fitRetention({ form: formVanGenuchten1980, points, residual: waterContent(0.5) }),
      'residual',
    )
  })
  it('impossible numbers', () => {
    const points = drawn(peat).map((p, i) => (i === 2 ? { ...p, waterContent: Number.NaN as never } : p))
    expectDomainError(() => fitRetention({ form: formVanGenuchten1980, points }), { quantity: 'water content' })
    expectDomainError(
      () =>
        fitRetention({
          form: formVanGenuchten1980,
          points: drawn(peat),
          waterContentUncertainty: waterContentChange(0.5),
        }),
      { quantity: 'uncertainty of water content' },
    )
  })
})

describe('chooseRetentionModel', () => {
  it.each(media.slice(0, 6).map((model) => [model.kind, model] as const))(
    'prefers %s for its own points',
    (kind, model) => {
      const forms = allRetentionForms.slice(0, 6)
      const choice = chooseRetentionModel({ forms, points: drawn(model, 0.001) })
      expect(choice.best.model.kind).toBe(kind)
      expect(choice.fits.length + choice.refused.length).toBe(6)
      choice.fits.slice(1).forEach((fit, i) => {
        expect(fit.aicc).toBeGreaterThanOrEqual(choice.fits[i]?.aicc as number)
      })
    },
  )
  it('gives reasons when no model is left', () => {
    expectInputError(
      () => chooseRetentionModel({ forms: allRetentionForms, points: drawn(peat).slice(0, 3) }),
      'points',
    )
    expectInputError(() => chooseRetentionModel({ forms: [], points: drawn(peat) }), 'points')
  })
})
