import {
  fitRetention,
  formBrooksCorey1964,
  formDurner1994,
  formKosugi1996,
  formVanGenuchten1980,
  formVanGenuchtenBurdine1980,
  type RetentionForm,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** What a curve of a form is made of, and the least pore connection that is sought: just above where no conductivity is left. */
const FORMS: readonly (readonly [string, RetentionForm, readonly number[], number])[] = [
  ['van Genuchten', formVanGenuchten1980, [0.1, 1.6], -1.99],
  ['van Genuchten with Burdine', formVanGenuchtenBurdine1980, [0.1, 2.6], -0.99],
  ['Brooks and Corey', formBrooksCorey1964, [5, 0.6], -1.99],
  ['Kosugi', formKosugi1996, [20, 1.2], -1.99],
  ['Durner', formDurner1994, [0.6, 0.2, 2.4, 0.005, 1.8], -1.99],
]

/** A fit to points of the form's own curve with a pore connection; everything is given but that and the conductivity. */
function fittedTo(form: RetentionForm, shape: readonly number[], poreConnection: number) {
  const model = form.make(0.9 as never, 0.1 as never, shape, poreConnection)
  const points = [1, 3, 8, 12, 20, 40, 80, 160, 400, 900].map((suction) => ({
    suction,
    waterContent: model.waterContent(suction as never),
    conductivity: 7 * (model.relativeConductivity?.(suction as never) ?? Number.NaN),
  }))
  const found = fitRetention({ form, points, saturated: 0.9, residual: 0.1 } as never)
  return { found, connection: found.parameters.find(({ name }) => name === 'poreConnection') }
}

describe('the pore connection that a fit finds', () => {
  it.each(FORMS)('is the one that the conductivities were made with, below zero too: %s', (_, form, shape, lowest) => {
    for (const poreConnection of [0.5, lowest / 2]) {
      const { found, connection } = fittedTo(form, shape, poreConnection)
      expect(connection?.value).toBeCloseTo(poreConnection, 3)
      expect(found.saturatedConductivity).toBeCloseTo(7, 2)
    }
  })
  it.each(FORMS)('ends where no conductivity would be left: %s', (_, form, shape, lowest) => {
    const { found, connection } = fittedTo(form, shape, lowest - 0.008)
    expect(connection?.value).toBeCloseTo(lowest, 6)
    expect(found.findings).toContainEqual(expect.objectContaining({ code: 'at-limit', about: 'poreConnection' }))
  })
})
