import {
  calibrateTwoPoint,
  centimetres,
  checkPlacement,
  explainProbeFinding,
  type Length,
  type PlacementContainer,
  rawReading,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const sample = (reading: number, content: number) => ({
  reading: rawReading(reading),
  waterContent: waterContent(content),
})

describe('readings of two samples', () => {
  it('are refused one count apart, in whichever order', () => {
    for (const [dry, wet] of [
      [500, 501],
      [501, 500],
      [0.8, 0.801],
    ] as const)
      expectInputError(
        () => calibrateTwoPoint({ dry: sample(dry, 0.02), saturated: sample(wet, 0.78) }),
        'saturated.reading',
      )
  })
  it('that fall with water are told, for the samples may be swapped', () => {
    const swapped = calibrateTwoPoint({ dry: sample(1100, 0.02), saturated: sample(300, 0.78) })
    expect(swapped.findings).toMatchObject([{ code: 'reading-falls-with-water', level: 'caution' }])
    expect(calibrateTwoPoint({ dry: sample(300, 0.02), saturated: sample(1100, 0.78) }).findings).toEqual([])
  })
})

describe('rods longer than the cube', () => {
  const cube: PlacementContainer = {
    shape: 'box',
    length: centimetres(10),
    width: centimetres(10),
    height: centimetres(6.5),
  }
  const upright = (from: number, to: number) =>
    checkPlacement({
      container: cube,
      probes: [
        {
          name: 'A',
          from: { x: 5 as Length, y: 5 as Length, depth: from as Length },
          to: { x: 5 as Length, y: 5 as Length, depth: to as Length },
        },
      ],
    }).conflicts
  it('are not to be raised into the air', () => {
    for (const to of [5.8, 7.5]) {
      const [found] = upright(0, to)
      expect(found).toMatchObject({ code: 'rods-too-long', to: 'bottom' })
      const move = found && explainProbeFinding(found).message
      expect(move).toMatch(/in air: insert them level/)
      expect(move).not.toMatch(/^raise/)
    }
  })
  it('that can be raised still are', () => {
    expect(upright(2, 5)).toMatchObject([{ code: 'near-bottom' }])
    expect(upright(2, 5).map((found) => explainProbeFinding(found).message)).toEqual(['raise A by 0.5 cm'])
    expect(upright(0, 4)).toEqual([])
  })
})

describe('a placement that was written down wrong', () => {
  const container = { shape: 'cylinder', diameter: centimetres(20), height: centimetres(20) } as const
  const place = { x: centimetres(10), y: centimetres(10), depth: centimetres(10) }
  const check = (change: object) => () =>
    checkPlacement({ container, probes: [{ name: 'A', from: place }], ...change } as never)
  it('is refused by name: a count of objects instead of a list, an entry that was lost, a shape and a kind nobody knows', () => {
    expectInputError(check({ objects: 0 }), 'objects')
    expectInputError(check({ objects: [null] }), /^objects\[0\]$/)
    expectInputError(check({ probes: [null] }), /^probes\[0\]$/)
    expectInputError(check({ probes: [{ name: 'A' }] }), /^from$/)
    expectInputError(check({ container: { ...container, shape: 'round' } }), 'container.shape')
    expectInputError(check({ objects: [{ name: 'x', kind: 'driper', from: place }] }), /^objects\[0\]\.kind$/)
    expectInputError(check({ medium: 'pre formed' }), 'medium')
  })
})
