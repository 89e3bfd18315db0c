import {
  type AmountConcentration,
  type BulkEC,
  bulkConductivityArchie1942,
  bulkConductivityHilhorst2000,
  bulkConductivityMualemFriedman1991,
  bulkConductivityRhoades1976,
  type CellConstant,
  type Conductance,
  cationsOfConductivitySonneveld1999,
  cellConstant,
  conductanceOfCell,
  conductivityFromReflection,
  conductivityOfCationsSonneveld1999,
  conductivityOfDissolvedSolids,
  conductivityOfSalt,
  conductivityOfSample,
  conductivityOnsager1927,
  DISSOLVED_SOLIDS_SCALES,
  demalPotassiumChloride,
  dissolvedSolids,
  dissolvedSolidsOnScale,
  fitOffsetHilhorst2000,
  type MassFraction,
  type MeasuredEC,
  molalPotassiumChloride,
  type Permittivity,
  type PoreWaterEC,
  poreWaterConductivityArchie1942,
  poreWaterConductivityHilhorst2000,
  poreWaterConductivityMualemFriedman1991,
  poreWaterConductivityRhoades1976,
  poreWaterOfCoirExtract,
  type Resistance,
  reflectionFromConductivity,
  type SolutionEC,
  saturatedExtractOfCoir,
  type Temperature,
  validityOf,
  validityOnsager1927,
  validitySonneveld1999,
  type WaterContent,
  waterPermittivityHilhorst2000,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

checkPublished('dielectric', 'ec.rhoades.bulk', ({ theta, sigma_w, sigma_s, a, b }) => {
  const { bulk, transmission } = bulkConductivityRhoades1976({
    poreWater: sigma_w,
    waterContent: theta,
    slope: a,
    intercept: b,
    surface: sigma_s,
  })
  return { sigma_b: bulk, transmission }
})
checkPublished('dielectric', 'ec.rhoades.pore', ({ theta, sigma_b, sigma_s, a, b }) => ({
  sigma_w: poreWaterConductivityRhoades1976({
    bulk: sigma_b,
    waterContent: theta,
    slope: a,
    intercept: b,
    surface: sigma_s,
  }),
}))
checkPublished('dielectric', 'ec.hilhorst.eps_pore', ({ temperature }) => ({
  eps_p: waterPermittivityHilhorst2000(temperature),
}))
checkPublished('dielectric', 'ec.hilhorst.pore', ({ eps_b, sigma_b, eps_0, eps_p }) => ({
  sigma_p: poreWaterConductivityHilhorst2000({ bulk: sigma_b, apparent: eps_b, offset: eps_0, water: eps_p }),
}))
checkPublished('dielectric', 'ec.hilhorst.offset', ({ eps_b, sigma_b, eps_p }) => {
  const { offset, poreWater } = fitOffsetHilhorst2000({ apparent: eps_b, bulk: sigma_b, water: eps_p })
  return { eps_0: offset, sigma_p: poreWater }
})
checkPublished('dielectric', 'ec.coir.extract', ({ sigma_p }) => ({ sigma_e: saturatedExtractOfCoir(sigma_p) }))
checkPublished('dielectric', 'ec.archie.bulk', ({ sigma_w, porosity, saturation, m, n, a }) => ({
  sigma_b: bulkConductivityArchie1942({
    poreWater: sigma_w,
    porosity,
    saturation,
    cementation: m,
    saturationExponent: n,
    tortuosity: a,
  }),
}))
checkPublished('dielectric', 'ec.archie.pore', ({ sigma_b, porosity, saturation, m, n, a }) => ({
  sigma_w: poreWaterConductivityArchie1942({
    bulk: sigma_b,
    porosity,
    saturation,
    cementation: m,
    saturationExponent: n,
    tortuosity: a,
  }),
}))
checkPublished('dielectric', 'ec.mualem_friedman', ({ sigma_w, theta, theta_s }) => ({
  sigma_b: bulkConductivityMualemFriedman1991({ poreWater: sigma_w, waterContent: theta, saturated: theta_s }),
}))
// The rows give S/m.
checkPublished('dielectric', 'ec.tdr', ({ cell_constant, impedance, reflection }) => ({
  sigma_b: conductivityFromReflection({ cellConstant: cell_constant, impedance, reflection }) / 10,
}))
checkPublished('dielectric', 'ec.tds', ({ ec, factor }) => ({ tds: dissolvedSolids({ conductivity: ec, factor }) }))
checkPublished('dielectric', 'ec.from_tds', ({ tds, factor }) => ({
  ec: conductivityOfDissolvedSolids({ solids: tds, factor }),
}))
checkPublished('dielectric', 'ec.tds.rescale', ({ tds, factor_from, factor_to }) => ({
  tds: dissolvedSolidsOnScale({ solids: tds, from: factor_from, to: factor_to }),
}))
checkPublished('dielectric', 'ec.kcl.standard', (given) => ({
  ec: molalPotassiumChloride(given as unknown as Parameters<typeof molalPotassiumChloride>[0]),
}))
checkPublished('dielectric', 'ec.kcl.with_water', (given) => ({
  ec: molalPotassiumChloride({
    ...(given as unknown as Parameters<typeof molalPotassiumChloride>[0]),
    withWater: true,
  }),
}))
checkPublished('dielectric', 'ec.kcl.oiml_r56', (given) => ({
  ec: demalPotassiumChloride(given as unknown as Parameters<typeof demalPotassiumChloride>[0]),
}))
// The rows give the cell constant in dS/m per siemens, which is a tenth of 1/m.
checkPublished('dielectric', 'ec.cell_constant', ({ ec_standard, conductance, conductance_sample }) => {
  const cell = cellConstant({ standard: ec_standard, conductance })
  return {
    cell_constant: cell * 10,
    ec: conductance_sample && conductivityOfSample({ cellConstant: cell, conductance: conductance_sample }),
  }
})
checkPublished('dielectric', 'ec.salt.crc20', ({ salt, mass_pct }) => ({
  ec: conductivityOfSalt({ salt, massFraction: (mass_pct / 100) as MassFraction }),
}))
checkPublished('dielectric', 'ec.onsager_1_1', ({ cation, anion, concentration }) => {
  const { conductivity, molar, limiting } = conductivityOnsager1927({
    cation,
    anion,
    concentration: (concentration * 1000) as AmountConcentration,
  })
  return { lambda0: limiting, molar_conductivity: molar, ec: conductivity }
})
checkPublished('dielectric', 'ec.sum_cations', ({ cations }) => ({ ec: conductivityOfCationsSonneveld1999(cations) }))

describe('round trips', () => {
  itIsUndone(
    'Rhoades 1976',
    { ec: [0, 20], waterContent: [0.2, 1], surface: [0, 1] },
    'ec',
    (x) => {
      const medium = {
        waterContent: x.waterContent as WaterContent,
        slope: 1.382,
        intercept: -0.093,
        surface: x.surface as BulkEC,
      }
      const { bulk } = bulkConductivityRhoades1976({ ...medium, poreWater: x.ec as PoreWaterEC })
      return poreWaterConductivityRhoades1976({ ...medium, bulk })
    },
    1,
  )
  itIsUndone('Hilhorst 2000', { ec: [0, 20], e: [8, 90], offset: [0, 6] }, 'ec', (x) => {
    const medium = { apparent: x.e as Permittivity, offset: x.offset, water: 80 as Permittivity }
    const bulk = bulkConductivityHilhorst2000({ ...medium, poreWater: x.ec as PoreWaterEC })
    return poreWaterConductivityHilhorst2000({ ...medium, bulk })
  })
  itIsUndone(
    'the line of a coir extract',
    { ec: [0, 20] },
    'ec',
    ({ ec }) => poreWaterOfCoirExtract(saturatedExtractOfCoir(ec as PoreWaterEC)),
    1,
  )
  itIsUndone('Archie 1942', { ec: [0, 20], porosity: [0.1, 1], saturation: [0.1, 1] }, 'ec', (x) => {
    const medium = { ...x, cementation: 1.3, saturationExponent: 2, tortuosity: 1 } as never as Omit<
      Parameters<typeof bulkConductivityArchie1942>[0],
      'poreWater'
    >
    const bulk = bulkConductivityArchie1942({ ...medium, poreWater: x.ec as PoreWaterEC })
    return poreWaterConductivityArchie1942({ ...medium, bulk })
  })
  itIsUndone('Mualem and Friedman 1991', { ec: [0, 20], waterContent: [0.05, 0.5] }, 'ec', (x) => {
    const medium = { waterContent: x.waterContent as WaterContent, saturated: 0.5 as WaterContent }
    const bulk = bulkConductivityMualemFriedman1991({ ...medium, poreWater: x.ec as PoreWaterEC })
    return poreWaterConductivityMualemFriedman1991({ ...medium, bulk })
  })
  itIsUndone(
    'the long-time reflection',
    { ec: [0, 20] },
    'ec',
    ({ ec }) => {
      const probe = { cellConstant: 8 as CellConstant, impedance: 50 as Resistance }
      return conductivityFromReflection({
        ...probe,
        reflection: reflectionFromConductivity({ ...probe, conductivity: ec as MeasuredEC }),
      })
    },
    1,
  )
  itIsUndone('a scale of dissolved solids', { ec: [0, 20], factor: [300, 1200] }, 'ec', ({ ec, factor }) =>
    conductivityOfDissolvedSolids({ factor, solids: dissolvedSolids({ conductivity: ec as SolutionEC, factor }) }),
  )
  itIsUndone('the sum of cations', { ec: [0.19, 19] }, 'ec', ({ ec }) =>
    conductivityOfCationsSonneveld1999(cationsOfConductivitySonneveld1999(ec as SolutionEC)),
  )
  itIsUndone('a cell', { ec: [0.01, 20], cell: [10, 1000] }, 'ec', ({ ec, cell }) => {
    const constant = cell as CellConstant
    const conductance = conductanceOfCell({ cellConstant: constant, conductivity: ec as MeasuredEC })
    return conductivityOfSample({ cellConstant: constant, conductance })
  })
})

describe('monotone', () => {
  const hilhorst = { apparent: 30 as Permittivity, offset: 4.1, water: 80 as Permittivity }
  itRises('the pore water of Hilhorst 2000 with bulk conductivity', 0, 5, (bulk) =>
    poreWaterConductivityHilhorst2000({ ...hilhorst, bulk: bulk as BulkEC }),
  )
  itRises('the pore water of Hilhorst 2000 in a drier medium of the same bulk conductivity', -90, -8, (e) =>
    poreWaterConductivityHilhorst2000({ ...hilhorst, bulk: 1 as BulkEC, apparent: -e as Permittivity }),
  )
  itRises('the conductivity of a salt with its mass', 0.005, 0.05, (massFraction) =>
    conductivityOfSalt({ salt: 'MgSO4', massFraction: massFraction as MassFraction }),
  )
})

describe('Hilhorst 2000', () => {
  const at = (apparent: number, offset: number) =>
    poreWaterConductivityHilhorst2000({
      bulk: 0.4 as BulkEC,
      apparent: apparent as Permittivity,
      offset,
      water: 80 as Permittivity,
    })
  it('refuses near its singularity and says so', () => {
    for (const apparent of [1, 4, 4.1, 5.05]) expectInputError(() => at(apparent, 4.1), 'apparent, offset')
    expect(at(5.2, 4.1)).toBeGreaterThan(20)
  })
  it('depends on the offset in a dry medium and hardly in a wet one', () => {
    expect(at(8, 4.1) / at(8, 1.64)).toBeCloseTo(1.63, 2)
    expect(at(45, 4.1) / at(45, 1.64)).toBeCloseTo(1.06, 2)
  })
  it('finds the offset of readings that lie on its line exactly (independent oracle)', () => {
    // ε = 3 + 40 σ: pore water 80/40 = 2 dS/m
    const bulk = [0.25, 0.5, 0.75, 1] as BulkEC[]
    const apparent = [13, 23, 33, 43] as Permittivity[]
    const fit = fitOffsetHilhorst2000({ apparent, bulk, water: 80 as Permittivity })
    expect(fit.offset).toBeCloseTo(3, 12)
    expect(fit.poreWater).toBeCloseTo(2, 12)
    expect(fit.standardError).toBeLessThan(1e-6)
    expect(fit.rSquared).toBeCloseTo(1, 12)
  })
  // JCGM 100:2008, H.3, Table H.6 [from memory]: corrections of a thermometer over t - 20 °C; y1 -0.1712 °C with s 0.0029 °C, y2 0.00218.
  it('gives intercept, slope and standard error of the printed example of the GUM', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    const fit = fitOffsetHilhorst2000({
      apparent: b.map((correction) => 10 + correction) as Permittivity[],
      bulk: t.map((at) => at - 20) as BulkEC[],
      water: 80 as Permittivity,
    })
    expect(fit.offset - 10).toBeCloseTo(-0.1712, 4)
    expect(fit.standardError).toBeCloseTo(0.0029, 4)
    expect(80 / fit.poreWater).toBeCloseTo(0.00218, 5)
  })
  it('gives the textbook standard error of an intercept (worked by hand)', () => {
    // x 0, 1, 2; y 10, 21, 30: slope 10, intercept 31/3, residuals -1/3, 2/3, -1/3, s² 2/3, SE = sqrt(2/3 (1/3 + 1/2))
    const fit = fitOffsetHilhorst2000({
      apparent: [10, 21, 30] as Permittivity[],
      bulk: [0, 1, 2] as BulkEC[],
      water: 80 as Permittivity,
    })
    expect(fit.offset).toBeCloseTo(31 / 3, 12)
    expect(fit.standardError).toBeCloseTo(Math.sqrt((2 / 3) * (1 / 3 + 1 / 2)), 12)
  })
  it('refuses readings that fix no line', () => {
    const water = 80 as Permittivity
    const line = (apparent: number[], bulk: number[]) => () =>
      fitOffsetHilhorst2000({ apparent: apparent as Permittivity[], bulk: bulk as BulkEC[], water })
    expectInputError(line([20], [0.5]), 'apparent, bulk')
    expectInputError(line([20, 30], [0.5]), 'apparent, bulk')
    expectInputError(line([20, 30], [0.5, 0.5]), 'bulk')
    expectInputError(line([30, 20], [0.4, 0.5]), 'apparent, bulk')
  })
})

describe('Rhoades 1976', () => {
  it('equals an independent open restatement at its worked example (0.121 S/m)', () => {
    const { bulk } = bulkConductivityRhoades1976({
      poreWater: 5 as PoreWaterEC,
      waterContent: 0.3 as WaterContent,
      slope: 1,
      intercept: 0.5,
      surface: 0.01 as BulkEC,
    })
    expect(bulk).toBeCloseTo(1.21, 12)
  })
})

describe('refusals', () => {
  const rhoades = { waterContent: 0.3 as WaterContent, slope: 1.382, intercept: -0.093, surface: 0.18 as BulkEC }
  it('Rhoades 1976 where its water films are broken, or less conducts than the surfaces', () => {
    expectInputError(
      () => poreWaterConductivityRhoades1976({ ...rhoades, waterContent: 0.05 as WaterContent, bulk: 0.5 as BulkEC }),
      'slope, intercept, waterContent',
    )
    expectInputError(() => poreWaterConductivityRhoades1976({ ...rhoades, bulk: 0.1 as BulkEC }), 'bulk, surface')
  })
  it('Mualem and Friedman 1991 above saturation', () => {
    const medium = { poreWater: 2 as PoreWaterEC, waterContent: 0.5 as WaterContent, saturated: 0.4 as WaterContent }
    expectInputError(() => bulkConductivityMualemFriedman1991(medium), 'waterContent, saturated')
  })
  it('standards, salts and ions that the tables do not have', () => {
    const temperature = 25 as Temperature
    expectInputError(() => molalPotassiumChloride({ molality: 0.02 as never, temperature }), 'molality')
    expectInputError(() => molalPotassiumChloride({ molality: 1, temperature: 18 as Temperature }), 'molality')
    expectInputError(() => molalPotassiumChloride({ molality: 1, temperature: 21 as Temperature }), 'temperature')
    expectInputError(() => demalPotassiumChloride({ solution: 'D' as never, temperature }), 'solution')
    expectInputError(() => demalPotassiumChloride({ solution: 'A', temperature: 30 as Temperature }), 'temperature')
    expectInputError(() => conductivityOfSalt({ salt: 'KNO3' as never, massFraction: 0.01 as MassFraction }), 'salt')
    expectDomainError(() => conductivityOfSalt({ salt: 'HNO3', massFraction: 0.05 as MassFraction }), { max: 0.02 })
    expectInputError(
      () => conductivityOnsager1927({ cation: 'Ca' as never, anion: 'Cl', concentration: 1 as AmountConcentration }),
      'cation, anion',
    )
  })
})

describe('tables and limits', () => {
  it('the temperature coefficient of 0.01 mol/kg is 0.01966 from 25 to 30 °C (CRC table)', () => {
    const at = (t: number) => molalPotassiumChloride({ molality: 0.01, temperature: t as Temperature })
    expect((at(30) - at(25)) / (5 * at(25))).toBeCloseTo(0.01966, 5)
  })
  it('the rows of both standards rise smoothly: second differences are small', () => {
    const at = (t: number) => molalPotassiumChloride({ molality: 0.1, temperature: t as Temperature })
    for (let t = 5; t <= 45; t += 5) expect(Math.abs(at(t + 5) - 2 * at(t) + at(t - 5))).toBeLessThan(0.06)
  })
  it('the limiting law is 0.66 % low for 0.01 mol/kg potassium chloride', () => {
    // 0.01 mol/kg is 9.963 mmol/L at 25 °C
    const salt = { cation: 'K', anion: 'Cl', concentration: 9.963 as AmountConcentration } as const
    const law = conductivityOnsager1927(salt).conductivity
    expect(1 - law / molalPotassiumChloride({ molality: 0.01, temperature: 25 as Temperature })).toBeCloseTo(0.007, 3)
  })
  it('a line runs between two printed percents of a salt', () => {
    const at = (share: number) => conductivityOfSalt({ salt: 'CaCl2', massFraction: share as MassFraction })
    expect(at(0.0075)).toBeCloseTo((8.1 + 15.7) / 2, 12)
    expect(at(0.4)).toBe(106)
  })
  it('scales are named by their factors', () => {
    for (const [name, factor] of Object.entries(DISSOLVED_SOLIDS_SCALES)) expect(name).toBe(`scale${factor}`)
  })
  it('a cell in its own standard shows its own reading', () => {
    const constant = cellConstant({ standard: 1.41 as MeasuredEC, conductance: 0.00141 as Conductance })
    expect(constant).toBeCloseTo(100, 12)
  })
  it('says where a rule leaves the span it was made for', () => {
    expect(validityOf(validityOnsager1927, { concentration: 50 })).toHaveLength(1)
    expect(validityOf(validitySonneveld1999, { cations: 80 })).toHaveLength(1)
  })
})
