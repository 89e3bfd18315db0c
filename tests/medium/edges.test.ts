import {
  explainMediumFinding,
  type MediumFinding,
  mediumNotes,
  type Porosity,
  percent,
  percentWaterContent,
  waterClassesDeBoodt1972,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

describe('words on media', () => {
  const words = (finding: Partial<MediumFinding>) =>
    explainMediumFinding({ level: 'note', ...finding } as MediumFinding)
  it.each([
    [{ code: 'at-limit', about: 'n', value: 1.02, unit: '1' }, /^n ended at 1\.02 1, the limit/, undefined],
    [
      { code: 'outside-ideal-substrate', about: 'airCapacity', value: 0.4, min: 0.2, max: 0.3 },
      /^air capacity is 40\.0 % .* 20 to 30 %$/,
      /de-boodt-1972/,
    ],
    [
      { code: 'no-room', value: 0.4, limit: 0.3 },
      /refill point of 40\.0 % is not below the full point of 30\.0 %/,
      undefined,
    ],
    [{ code: 'air-below-min', value: 0.05, limit: 0.1 }, /holds 5\.0 % of air, less than the 10\.0 %/, /hydrostatics/],
    [{ code: 'beyond-buffer', value: 130, limit: 100 }, /is 130 cm; beyond 100 cm/, /de-boodt-1972/],
    [{ code: 'lower-limit-assumed', value: 100 }, /a suction of 100 cm/, /de-boodt-1972/],
    [{ code: 'residual-extrapolated', value: 0.35, max: 300 }, /at 300 cm, still holds 35 %/, undefined],
    [{ code: 'saturation-extrapolated', value: 0.12 }, /lacks 12 %/, undefined],
    [{ code: 'no-air-entry', value: -0.5 }, /of -0\.50 kPa; take it as zero/, undefined],
  ] as [Partial<MediumFinding>, RegExp, RegExp | undefined][])('say the numbers of %o', (finding, message, source) => {
    const said = words(finding)
    expect(said.message).toMatch(message)
    if (source !== undefined) expect(said.source).toMatch(source)
  })
  it('are there for every note, with a source', () => {
    for (const note of mediumNotes) {
      expect(explainMediumFinding(note).message).toMatch(/\w{3}/)
      expect(explainMediumFinding(note).source).toMatch(/\w/)
    }
  })
})

describe('water that a sample releases', () => {
  const sample = (readings: readonly number[]) => ({
    totalPoreSpace: percent<Porosity>(90),
    at10: percentWaterContent(readings[0]!),
    at50: percentWaterContent(readings[1]!),
    at100: percentWaterContent(readings[2]!),
  })
  it('may hold all of it at 10 cm, and give nothing up after that', () => {
    expect(waterClassesDeBoodt1972(sample([90, 90, 90]))).toMatchObject({
      airCapacity: 0,
      easilyAvailableWater: 0,
      waterBufferingCapacity: 0,
      availableWater: 0,
    })
  })
  it.each([
    [91, 50, 40],
    [60, 61, 40],
    [60, 50, 51],
  ] as const)('falls with suction: %i, %i, %i %% is refused', (...readings) => {
    expectInputError(() => waterClassesDeBoodt1972(sample(readings)), 'at10, at50, at100')
  })
})
