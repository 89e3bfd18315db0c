import { fitOffsetHilhorst2000, permittivity } from 'porewater'
import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { withReplaced } from '../../docs/tools/replaced-argument.js'
import { expectInputError } from '../support/refusals.js'

const argumentsOf = rememberedCalls()

/** Relations solved for the permittivity, with what they say of a water content. */
const solved = catalogue.filter(
  ({ topic, name }) => topic === 'dielectric' && name.startsWith('permittivity') && !name.startsWith('permittivityOf'),
)

interface Refusal {
  readonly code?: string
  readonly min?: number
  readonly max?: number
  readonly hint?: string
}

async function relation(entry: CatalogueEntry): Promise<((waterContent: number) => number | Refusal) | undefined> {
  const args = await argumentsOf(entry)
  const field = entry.arguments.find(({ path }) => /(^|\.)waterContent$/.test(path))
  if (args === undefined || field === undefined) return undefined
  return (waterContent) => {
    const call = withReplaced(entry, args, field, waterContent) as unknown[]
    try {
      return (publicNames[entry.name] as (...list: unknown[]) => number)(...call)
    } catch (error) {
      return error as Refusal
    }
  }
}

describe('where no permittivity gives a water content', () => {
  it.each(solved.map((entry) => [entry.name, entry] as const))(
    '%s tells the ends that it reaches',
    async (_, entry) => {
      const of = await relation(entry)
      if (of === undefined) return
      for (const tried of [1e-9, 1 - 1e-9]) {
        const refusal = of(tried)
        if (typeof refusal === 'number' || !/permittivity/.test(refusal.hint ?? '')) continue
        const { min, max } = refusal as Required<Refusal>
        expect(min).toBeLessThan(max)
        // At an end that is told there is an answer, beyond it none.
        const wettest = Math.min(max, 1)
        const dry = Math.max(min, 0.001)
        for (const [inside, outside] of [
          [wettest - 1e-7, max < 1 - 1e-4 ? max + 1e-4 : undefined],
          [dry + 1e-7, min > 1e-3 ? min - 1e-4 : undefined],
        ] as const) {
          expect(typeof of(inside), `${inside} of [${min}, ${max}]`).toBe('number')
          if (outside !== undefined) expect(of(outside)).toMatchObject({ code: 'outside-domain', min, max })
        }
      }
    },
  )
})

describe('the offset of Hilhorst fitted to readings', () => {
  const lineOf = (bulk: readonly number[], apparent: readonly number[]) =>
    fitOffsetHilhorst2000({ bulk: bulk as never, apparent: apparent.map(permittivity), water: permittivity(80) })
  it('is the ordinary line with its errors', () => {
    // x 1, 2, 3 and y 10, 14, 15: slope 2.5, intercept 8; residuals -0.5, 1, -0.5, so that 1.5 is left of 14, with one degree of freedom.
    expect(lineOf([1, 2, 3], [10, 14, 15])).toEqual({
      offset: expect.closeTo(8, 12),
      poreWater: expect.closeTo(32, 12),
      standardError: expect.closeTo(Math.sqrt(1.5 * (1 / 3 + 4 / 2)), 12),
      rSquared: expect.closeTo(1 - 1.5 / 14, 12),
      readings: 3,
    })
  })
  it('has no error with two readings, and is refused with one, or with more of one kind', () => {
    expect(lineOf([1, 2], [10, 14])).toMatchObject({
      offset: 6,
      poreWater: 20,
      standardError: 0,
      rSquared: 1,
      readings: 2,
    })
    expectInputError(() => lineOf([1], [10]), 'apparent, bulk')
    expectInputError(() => lineOf([1, 2, 3], [10, 14]), 'apparent, bulk')
    expectInputError(() => lineOf([1, 2], [10, 14, 15]), 'apparent, bulk')
    expectInputError(() => lineOf([2, 2, 2], [10, 14, 15]), 'bulk')
    expectInputError(() => lineOf([1, 2], [14, 14]), 'apparent, bulk')
  })
  it('takes readings that differ little, however large or small they are', () => {
    for (const scale of [0.001, 1, 10]) {
      const bulk = [1, 1 + 1e-6, 1 + 2e-6].map((x) => scale * x)
      expect(lineOf(bulk, [10, 20, 30]).rSquared).toBeCloseTo(1, 6)
    }
  })
})
