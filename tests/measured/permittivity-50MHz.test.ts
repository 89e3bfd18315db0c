import { readFileSync } from 'node:fs'
import {
  applyCalibration,
  calibrateTwoPoint,
  evaluateWaterContents,
  explainProbeFinding,
  fitCalibration,
  permittivity,
  type WeightedSample,
  waterContent,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * What an own calibration is worth, on real readings at 50 MHz of five packed soils while they dried, 83 points. Data of Mendoza
 * Veirana and others (2023), Geoderma, doi:10.1016/j.geoderma.2023.116624, folder `06_permittivity_calibration_50MHz` of the measured
 * data. The numbers printed here stand in docs/guides/probe-to-water-content.md.
 */
const folder = process.env.POREWATER_DATA

function soils(): Map<string, WeightedSample[]> {
  const text = readFileSync(`${folder}/06_permittivity_calibration_50MHz/permittivity_vs_water_content.csv`, 'utf8')
  const bySoil = new Map<string, WeightedSample[]>()
  for (const line of text.trim().split('\n').slice(1)) {
    const [name = '', content, apparent] = line.split(',')
    const samples = bySoil.get(name) ?? []
    samples.push({ reading: permittivity(Number(apparent)), waterContent: waterContent(Number(content)) })
    bySoil.set(name, samples)
  }
  return bySoil
}

const round = (value: number) => Math.round(value * 1e4) / 1e4
const rms = (errors: readonly number[]) => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length)

describe.skipIf(!folder)('own calibrations on real readings at 50 MHz', () => {
  it('Topp 1980 misses by 0.10 m³/m³', () => {
    const all = [...soils().values()].flat()
    expect(all).toHaveLength(83)
    const topp = evaluateWaterContents({
      observed: all.map((sample) => sample.waterContent),
      predicted: all.map((sample) => waterContentTopp1980(sample.reading as never)),
    })
    console.log('Topp 1980, all soils', topp)
    expect(topp.rmse).toBeCloseTo(0.0994, 4)
    expect(topp.rSquared).toBeGreaterThan(0.5)
  })
  it.each(['line', 'square-root', 'quadratic', 'monotone-cubic'] as const)(
    'an own %s brings it down, leave-one-out',
    (form) => {
      const errors: Record<string, number> = {}
      let squares = 0
      let count = 0
      for (const [name, samples] of soils()) {
        try {
          const loo = fitCalibration({ samples, form }).statistics?.leaveOneOutRmse ?? Number.NaN
          errors[name] = round(loo)
          squares += samples.length * loo ** 2
          count += samples.length
        } catch (error) {
          console.log(form, name, (error as Error).message)
        }
      }
      const pooled = Math.sqrt(squares / count)
      console.log(form, errors, 'of', count, 'points:', round(pooled))
      expect(pooled).toBeLessThan(0.03)
    },
  )
  it('two points, the driest and the wettest, already bring it down', () => {
    for (const form of ['line', 'square-root'] as const) {
      const left: number[] = []
      for (const [name, samples] of soils()) {
        const sorted = [...samples].sort((a, b) => a.waterContent - b.waterContent)
        const [dry, saturated] = [sorted[0]!, sorted.at(-1) as WeightedSample]
        const calibration = calibrateTwoPoint({ dry, saturated, form })
        const errors = sorted
          .slice(1, -1)
          .map((s) => applyCalibration(calibration, s.reading).waterContent - s.waterContent)
        console.log('two points,', form, name, round(rms(errors)))
        left.push(...errors)
      }
      console.log('two points,', form, 'all', round(rms(left)))
      expect(rms(left)).toBeLessThan(0.05)
    }
  })
  it("another soil's calibration misses by more than its own error, and one line through all soils is warned of", () => {
    const all = [...soils()]
    const errors: number[] = []
    for (const [name, others] of all) {
      const calibration = fitCalibration({ samples: others, form: 'line' })
      const strange = all
        .filter(([own]) => own !== name)
        .flatMap(([, samples]) => samples)
        .map((s) => applyCalibration(calibration, s.reading).waterContent - s.waterContent)
      console.log(`line of ${name} on the other four soils`, round(rms(strange)))
      errors.push(...strange)
    }
    console.log('line of another soil', round(rms(errors)))
    expect(rms(errors)).toBeGreaterThan(0.05)
    const mixed = fitCalibration({ samples: all.flatMap(([, samples]) => samples), form: 'line' })
    console.log(
      'one line through all soils',
      mixed.statistics?.leaveOneOutRmse,
      mixed.findings.map((one) => explainProbeFinding(one).message),
    )
    expect(mixed.findings).toMatchObject([{ code: 'samples-out-of-order' }])
  })
})
