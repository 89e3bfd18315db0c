import {
  type Frequency,
  type Temperature,
  validityDebyeKaatze1989,
  validityDebyeKleinSwift1977,
  validityDebyeLiebe1991,
  validityOf,
  waterDebyeKaatze1989,
  waterDebyeKleinSwift1977,
  waterDebyeLiebe1991,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

type Given = { temperature: Temperature; frequency: Frequency }

checkPublished('dielectric', 'water.debye.kaatze', (given) => {
  const water = waterDebyeKaatze1989(given as unknown as Given)
  return {
    eps_static: water.staticPermittivity,
    eps_inf: water.highFrequency,
    tau: water.relaxationTime,
    eps_real: water.real,
    eps_imag: water.loss,
  }
})
checkPublished('dielectric', 'water.debye.klein_swift', (given) => {
  const water = waterDebyeKleinSwift1977(given as unknown as Given)
  return {
    eps_static: water.staticPermittivity,
    tau: water.relaxationTime,
    eps_real: water.real,
    eps_imag: water.loss,
  }
})
checkPublished('dielectric', 'water.debye.liebe', (given) => {
  const water = waterDebyeLiebe1991(given as unknown as Given)
  return {
    eps_static: water.staticPermittivity,
    f_relax: water.relaxationFrequency,
    eps_real: water.real,
    eps_imag: water.loss,
  }
})

describe('water in a field', () => {
  const at = (t: number, f: number) => ({ temperature: t as Temperature, frequency: f as Frequency })
  it('has its static permittivity and no loss at low frequency', () => {
    const kaatze = waterDebyeKaatze1989(at(20, 1))
    expect(kaatze.real).toBeCloseTo(kaatze.staticPermittivity, 10)
    expect(kaatze.loss).toBeLessThan(1e-8)
    const liebe = waterDebyeLiebe1991(at(20, 1))
    expect(liebe.real).toBeCloseTo(liebe.staticPermittivity, 10)
  })
  it('loses most at the relaxation: half the step (property of one relaxation of Debye)', () => {
    const { relaxationTime, staticPermittivity, highFrequency } = waterDebyeKaatze1989(at(25, 1))
    const peak = waterDebyeKaatze1989(at(25, 1 / (2 * Math.PI * relaxationTime)))
    expect(peak.loss).toBeCloseTo((staticPermittivity - highFrequency) / 2, 10)
    expect(peak.real).toBeCloseTo((staticPermittivity + highFrequency) / 2, 10)
  })
  it('is much the same in the three models at 1 GHz', () => {
    for (const t of [0, 10, 20, 30]) {
      const [a, b, c] = [waterDebyeKaatze1989, waterDebyeKleinSwift1977, waterDebyeLiebe1991].map((f) => f(at(t, 1e9)))
      expect(Math.abs((a?.real ?? 0) - (b?.real ?? 9))).toBeLessThan(0.3)
      expect(Math.abs((a?.real ?? 0) - (c?.real ?? 9))).toBeLessThan(0.3)
    }
  })
  it('says when it leaves the span that was measured', () => {
    expect(validityOf(validityDebyeKaatze1989, { temperature: 70, frequency: 1e9 })).toHaveLength(1)
    expect(validityOf(validityDebyeKleinSwift1977, { temperature: 50 })).toHaveLength(1)
    expect(validityOf(validityDebyeLiebe1991, { temperature: 20, frequency: 2e12 })).toHaveLength(1)
  })
  it('refuses hot water where the cubic of Klein and Swift 1977 fails', () => {
    expectDomainError(() => waterDebyeKleinSwift1977(at(80, 1e9)), { quantity: 'water temperature', max: 60 })
  })
})
