import {
  applyCalibration,
  boxContainer,
  calibrateTwoPoint,
  celsius,
  centimetres,
  checkPlacement,
  explainDielectricFinding,
  explainMediumFinding,
  explainProbeFinding,
  explainQuantityFinding,
  explainUncertaintyFinding,
  type Finding,
  fitNoUseCorrection,
  fraction,
  gigahertz,
  gramsPerCubicCentimetre,
  irrigationLimits,
  meanWithConfidence,
  mediumNotes,
  outsideIdealSubstrate,
  perCentimetre,
  percent,
  permittivityDobson1985,
  probeDrift,
  propagateFirstOrder,
  propagateMonteCarlo,
  rawReading,
  soilFromTextureSaxtonRawls2006,
  validityOf,
  validityTopp1980,
  vanGenuchten1980,
  waterClassesDeBoodt1972,
  waterContent,
  zoneMean,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const sample = (reading: number, content: number) => ({
  reading: rawReading(reading),
  waterContent: waterContent(content),
})
const calibration = calibrateTwoPoint({
  dry: sample(410, 0.03),
  saturated: sample(1012, 0.9),
  porosity: fraction(0.95),
})
const medium = vanGenuchten1980({
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.05),
  n: 1.6,
})
const limits = irrigationLimits({
  medium,
  container: boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) }),
  depletion: percent(20) as never,
  minAir: percent(30),
})
const steady = Float64Array.from({ length: 48 }, () => 0.5)
const warm = Float64Array.from({ length: 48 }, (_, i) => 20 + 5 * Math.sin((i * Math.PI) / 12))

/** Sentences by the topic that says them, from findings that functions gave. */
const said: Readonly<Record<string, readonly Finding[]>> = {
  probe: [
    ...applyCalibration(calibration, rawReading(300)).findings,
    ...applyCalibration(calibration, rawReading(1100)).findings,
    ...calibrateTwoPoint({ dry: sample(1012, 0.03), saturated: sample(410, 0.9) }).findings,
    ...meanWithConfidence({ waterContents: [0.5, 0.6].map(waterContent) }).findings,
    ...probeDrift({ first: { before: rawReading(290), now: rawReading(420) }, calibration }).findings,
    ...fitNoUseCorrection({ waterContents: steady, temperatures: warm }).findings,
    ...zoneMean({
      probes: [
        { name: 'silent', weight: 1 },
        ...[0.5, 0.51, 0.52, 0.9].map((value, i) => ({ name: `P${i}`, weight: 1, waterContent: waterContent(value) })),
      ],
    }).findings,
    ...checkPlacement({
      container: { shape: 'box', length: centimetres(100), width: centimetres(15), height: centimetres(7.5) },
      probes: [],
      medium: 'pre-formed',
    }).cautions,
  ].map(explainProbeFinding),
  medium: [
    ...limits.findings,
    ...mediumNotes,
    ...outsideIdealSubstrate(
      waterClassesDeBoodt1972({
        totalPoreSpace: percent(80),
        at10: waterContent(0.7),
        at50: waterContent(0.42),
        at100: waterContent(0.4),
      }),
    ),
    ...soilFromTextureSaxtonRawls2006({ sand: fraction(0.1), clay: fraction(0.65), organicMatter: fraction(0.02) })
      .findings,
  ].map(explainMediumFinding),
  permittivity: permittivityDobson1985({
    sand: fraction(0.3),
    clay: fraction(0.2),
    bulkDensity: gramsPerCubicCentimetre(1.4),
    waterContent: waterContent(0.2),
    frequency: gigahertz(1.35),
    temperature: celsius(20),
  }).findings.map(explainDielectricFinding),
  uncertainty: [
    ...propagateFirstOrder<{ x: number }>({
      inputs: { x: { estimate: 0, standardUncertainty: 1 } },
      of: ({ x }) => x * x,
    }).findings,
    ...propagateMonteCarlo<{ x: number }>({
      inputs: { x: { estimate: 0.5, standardUncertainty: 0.3 } },
      of: ({ x }) => {
        waterContent(x)
        return x
      },
      draws: 1000,
      seed: 1,
    }).findings,
  ].map(explainUncertaintyFinding),
  validity: validityOf(validityTopp1980, { apparent: 55 }).map(explainQuantityFinding),
}

describe('sentences of findings', () => {
  it.each(Object.entries(said))('of %s hold their numbers', (_topic, findings) => {
    expect(findings.length).toBeGreaterThan(0)
    for (const { message, code } of findings) {
      expect(message, code).toMatch(/^[\w[(].{20,}/)
      expect(message, code).not.toMatch(/undefined|NaN|\?|Infinity|\[object/)
    }
  })
  it('differ in most codes of a topic', () => {
    expect(new Set(said.probe!.map(({ code }) => code)).size).toBeGreaterThan(14)
    expect(new Set(said.medium!.map(({ code }) => code)).size).toBeGreaterThan(12)
  })
  it('keep the numbers, and tell where the rule comes from', () => {
    const [outside] = applyCalibration(calibration, rawReading(300)).findings
    expect(outside && explainProbeFinding(outside)).toMatchObject({ ...outside, message: expect.any(String) })
    expect(outside).toEqual({
      code: 'outside-calibration',
      level: 'caution',
      about: 'reading',
      value: 300,
      min: 410,
      max: 1012,
      unit: 'raw',
    })
    expect(said.medium!.find(({ code }) => code === 'drying-curve')?.source).toBe('kool-1987')
  })
  it('are refused for a code of another topic, with the codes that there are', () => {
    const strange = { code: 'toString', level: 'note' } as never
    for (const explain of [
      explainProbeFinding,
      explainMediumFinding,
      explainUncertaintyFinding,
      explainQuantityFinding,
      explainDielectricFinding,
    ]) {
      expectInputError(() => explain(strange), 'finding')
      expectInputError(() => explain(undefined as never), 'finding')
    }
  })
})
