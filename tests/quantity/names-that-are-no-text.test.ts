import {
  calibrateTwoPoint,
  conductivityOfSalt,
  conductivityOnsager1927,
  decisiemensPerMetre,
  demalPotassiumChloride,
  explainIrrigationFinding,
  fitCalibration,
  mediaSaltBand,
  rehearsalScenario,
  rootTemperatureBand,
  type SolutionEC,
  saltTolerance,
  tabledCoverFao56,
  tabledCropFao56,
  tabledSoilFao56,
  tabledStagesFao56,
  tabledWettedShareFao56,
  tableRow,
  texturesCarselParrish1988,
  wmoLimits,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

type Lookup = readonly [name: string, call: (name: never) => unknown, argument: string]

const LOOKUPS: readonly Lookup[] = [
  ['rehearsalScenario', rehearsalScenario, 'medium'],
  ['saltTolerance', saltTolerance, 'crop'],
  ['tableRow', (name) => tableRow(texturesCarselParrish1988, name), 'name'],
  ['tabledCropFao56', tabledCropFao56, 'crop'],
  ['tabledStagesFao56', tabledStagesFao56, 'crop'],
  ['tabledSoilFao56', tabledSoilFao56, 'soil'],
  ['tabledCoverFao56', tabledCoverFao56, 'stage'],
  ['tabledWettedShareFao56', tabledWettedShareFao56, 'wetting'],
  ['mediaSaltBand', (method) => mediaSaltBand({ method, ec: decisiemensPerMetre<SolutionEC>(1) }), 'method'],
  ['rootTemperatureBand', (organism) => rootTemperatureBand({ temperature: 20 as never, organism }), 'organism'],
  ['wmoLimits', (of) => wmoLimits({ of }), 'of'],
  ['calibrateTwoPoint', (form) => calibrateTwoPoint({ form: form ?? 7 } as never), 'form'],
  ['fitCalibration', (form) => fitCalibration({ form } as never), 'form'],
  ['conductivityOfSalt', (salt) => conductivityOfSalt({ salt } as never), 'salt'],
  [
    'conductivityOnsager1927',
    (cation) => conductivityOnsager1927({ cation, anion: cation, concentration: 1 as never }),
    'cation',
  ],
  ['demalPotassiumChloride', (solution) => demalPotassiumChloride({ solution } as never), 'solution'],
  ['explainIrrigationFinding', (code) => explainIrrigationFinding({ code } as never), 'finding'],
]

describe('a lookup by name', () => {
  it.each(LOOKUPS)(
    '%s threw a TypeError of the language for a symbol, or for an object without a text',
    (_, call, argument) => {
      for (const name of [Symbol('tomato'), Object.create(null), null, undefined, 7])
        expectInputError(() => call(name as never), argument)
    },
  )
  it('took a list of one name for the name', () => {
    expect(saltTolerance('tomato').thresholdEC).toBe(2.5)
    expectInputError(() => saltTolerance(['tomato'] as never), 'crop')
  })
})
