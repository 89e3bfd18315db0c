import { readFileSync } from 'node:fs'
import {
  chooseRetentionModel,
  fitRetention,
  formBrooksCorey1964,
  formCampbell1974,
  formFredlundXing1994,
  formKosugi1996,
  formLogLogistic,
  formVanGenuchten1980,
  formVanGenuchtenBurdine1980,
  kilopascalsOfSuction,
  perCentimetre,
  pF,
  type RetentionPoint,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

// Two open records: 23 soils, 1,955 points.
// 05: Cabral, A. R. (2023), Zenodo, doi:10.5281/zenodo.7948797, cover soil, evaporation method, 14 samples.
// 05b: Patel et al. (2025), ESS-DIVE, doi:10.15485/2583150, coastal soils with the authors' van Genuchten parameters, 9 soils.
const folder = process.env.POREWATER_DATA

function rows(file: string): Record<string, string>[] {
  const [head = '', ...lines] = readFileSync(`${folder}/${file}`, 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']))
  })
}

/** Points by soil. The record holds one water content below zero, which a weighed sample cannot have: it is left out. */
function soils(): Map<string, RetentionPoint[]> {
  const found = new Map<string, RetentionPoint[]>()
  const put = (name: string, point: RetentionPoint) => found.set(name, [...(found.get(name) ?? []), point])
  let below = 0
  for (const row of rows('05b_retention_soils_with_published_fit/retention_measured_points.csv')) {
    const content = Number(row.water_content_m3_m3)
    if (content < 0) below++
    else
      put(`${row.site} ${row.transect}`, { suction: pF(Number(row.suction_pF)), waterContent: waterContent(content) })
  }
  for (const row of rows('05_retention_evaporation_method/retention_layer_CM.csv')) {
    put(`CM ${row.sample}`, {
      suction: kilopascalsOfSuction(Number(row.suction_kPa)),
      waterContent: waterContent(Number(row.water_content_m3_m3)),
    })
  }
  expect(below).toBe(1)
  return found
}

const always = [
  formVanGenuchten1980,
  formVanGenuchtenBurdine1980,
  formBrooksCorey1964,
  formCampbell1974,
  formKosugi1996,
  formLogLogistic,
]

describe.skipIf(!folder)('retention curves of 23 soils', () => {
  it('reach the authors’ own misfit or a smaller one on every soil that they fitted', () => {
    const points = soils()
    const published = rows('05b_retention_soils_with_published_fit/published_van_genuchten_parameters.csv')
    expect(published.length).toBe(9)
    for (const row of published) {
      const measured = points.get(`${row.site} ${row.transect}`) ?? []
      const theirs = vanGenuchten1980({
        residual: waterContent(Number(row.theta_r_m3_m3)),
        saturated: waterContent(Number(row.theta_s_m3_m3)),
        alpha: perCentimetre(Number(row.van_genuchten_alpha_1_cm)),
        n: Number(row.van_genuchten_n),
      })
      const square = measured.reduce((sum, p) => sum + (theirs.waterContent(p.suction) - p.waterContent) ** 2, 0)
      const ours = fitRetention({ form: formVanGenuchten1980, points: measured })
      expect(ours.rmse, `${row.site} ${row.transect}`).toBeLessThanOrEqual(Math.sqrt(square / measured.length))
    }
  })
  it('converge from the automatic start for six models on every soil', () => {
    const points = soils()
    expect(points.size).toBe(23)
    for (const [name, measured] of points) {
      for (const form of always) {
        const fit = fitRetention({ form, points: measured })
        expect(fit.rmse, `${name}, ${form.kind}`).toBeLessThan(0.035)
      }
    }
  })
  it('are nearly the same curve from every second point', () => {
    // A search that stops early or in a side valley would not get there.
    for (const [name, measured] of soils()) {
      const whole = fitRetention({ form: formVanGenuchten1980, points: measured })
      const half = fitRetention({ form: formVanGenuchten1980, points: measured.filter((_, i) => i % 2 === 0) })
      const difference = Math.sqrt(
        measured.reduce(
          (sum, p) => sum + (whole.model.waterContent(p.suction) - half.model.waterContent(p.suction)) ** 2,
          0,
        ) / measured.length,
      )
      expect(difference, name).toBeLessThan(0.006)
    }
  })
  it('are described better by Fredlund and Xing or a lognormal curve than by van Genuchten from wet to oven-dry', () => {
    const points = soils()
    const forms = [formVanGenuchten1980, formKosugi1996, formLogLogistic, formFredlundXing1994]
    for (const name of ['CRC wetland', 'OWC transition', 'OWC wetland', 'PTR wetland']) {
      const { best } = chooseRetentionModel({ forms, points: points.get(name) ?? [] })
      expect(best.model.kind, name).not.toBe('van-genuchten-1980')
    }
  })
})
