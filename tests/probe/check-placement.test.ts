import fc from 'fast-check'
import {
  centimetres,
  checkPlacement,
  explainProbeFinding,
  type Length,
  type PlacedProbe,
  type PlacementContainer,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

const cm = centimetres
/** A place from the middle of the slab. */
const place = (x: number, y: number, depth: number) => from(50 + x, 7.5 + y, depth)
const from = (x: number, y: number, depth: number) => ({ x: x as Length, y: y as Length, depth: depth as Length })
const slab: PlacementContainer = { shape: 'box', length: cm(100), width: cm(15), height: cm(10) }
const pot: PlacementContainer = { shape: 'tapered-pot', bottomDiameter: cm(18), topDiameter: cm(22), height: cm(20) }
const codes = (probe: Omit<PlacedProbe, 'name'>, container: PlacementContainer = slab) =>
  checkPlacement({ container, probes: [{ name: 'A', ...probe }] }).conflicts.map(({ code, to }) => `${code} ${to}`)

describe('the placement of probes', () => {
  it('passes rods in the middle', () => {
    expect(codes({ from: place(0, 0, 5) })).toEqual([])
    expect(codes({ from: place(0, 0, 0), to: place(0, 0, 7) })).toEqual([])
    expect(codes({ from: place(0, 0, 5), temperatureElement: place(0, 0, 5) })).toEqual([])
  })
  it('finds walls, bottom and surface, and says what to move', () => {
    expect(codes({ from: place(0, 6, 5) })).toEqual(['near-wall wall'])
    expect(codes({ from: place(48.5, 0, 5) })).toEqual(['near-wall wall'])
    expect(codes({ from: place(0, 0, 9) })).toEqual(['near-bottom bottom'])
    expect(codes({ from: place(0, 0, 1) })).toEqual(['near-surface surface'])
    expect(codes({ from: place(0, 8, 5) })).toEqual(['outside-medium wall'])
    expect(codes({ from: place(0, 0, 11) })).toEqual(['outside-medium bottom'])
    const { conflicts } = checkPlacement({
      container: slab,
      probes: [{ name: 'A', from: place(0, 6.2, 5), radius: cm(0.3) }],
    })
    expect(conflicts[0]?.distance).toBeCloseTo(1, 12)
    expect(conflicts[0]).toMatchObject({ probe: 'A', needed: 2, by: expect.closeTo(1, 12) })
    expect(conflicts.map((found) => explainProbeFinding(found).message)).toEqual(['move A 1.0 cm towards the middle'])
  })
  it('measures across a slanting wall as a search over its surface does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 4, max: 16, noNaN: true }),
        (r, angle, depth) => {
          const rod = from(11 + r * Math.cos(angle), 11 + r * Math.sin(angle), depth)
          const { conflicts } = checkPlacement({
            container: pot,
            probes: [{ name: 'A', from: rod }],
            clearance: cm(50),
          })
          const wall = conflicts.find(({ to }) => to === 'wall')?.distance ?? 0
          // The nearest place of the wall lies on the same radius.
          let nearest = Number.POSITIVE_INFINITY
          for (let i = 0; i <= 20000; i++) {
            const d = (20 * i) / 20000
            nearest = Math.min(nearest, Math.hypot(11 - d / 10 - r, d - depth))
          }
          expect(Math.abs(wall - nearest)).toBeLessThan(1e-6)
        },
      ),
      { numRuns: 30 },
    )
  })
  it('measures between straight bodies as a search over both does', () => {
    const coordinate = fc.double({ min: -3, max: 3, noNaN: true })
    const point = fc.tuple(coordinate, coordinate, coordinate)
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const at = ([x, y, z]: number[]) => from(50 + x!, 50 + y!, 50 + z!)
        const { conflicts } = checkPlacement({
          container: { shape: 'cylinder', diameter: cm(100), height: cm(100) },
          probes: [{ name: 'A', from: at(a), to: at(b) }],
          objects: [{ name: 'stake', kind: 'metal', from: at(c), to: at(d) }],
          clearance: cm(20),
        })
        let nearest = Number.POSITIVE_INFINITY
        const n = 150
        for (let i = 0; i <= n; i++) {
          for (let k = 0; k <= n; k++) {
            const apart = [0, 1, 2].map((m) => a[m]! + ((b[m]! - a[m]!) * i) / n - c[m]! - ((d[m]! - c[m]!) * k) / n)
            nearest = Math.min(nearest, Math.hypot(...apart))
          }
        }
        const found = conflicts.find(({ code }) => code === 'near-object')?.distance ?? Number.NaN
        expect(found).toBeLessThanOrEqual(nearest + 1e-9)
        expect(found).toBeGreaterThan(nearest - 0.08)
      }),
      { numRuns: 40 },
    )
  })
  it('looks at drippers from above and at metal through the medium', () => {
    const check = (kind: 'dripper' | 'metal') =>
      checkPlacement({
        container: slab,
        probes: [{ name: 'A', from: place(0, 0, 5) }],
        objects: [{ name: 'it', kind, from: place(1, 0, 0) }],
      }).conflicts
    expect(check('metal')).toEqual([])
    expect(check('dripper')).toMatchObject([{ code: 'near-object', to: 'it', distance: 1 }])
  })
  it('looks at each pair of probes once, and at the depth of the temperature element', () => {
    const { conflicts } = checkPlacement({
      container: slab,
      probes: [
        { name: 'A', from: place(0, 0, 5), temperatureElement: place(0, 0, 1) },
        { name: 'B', from: place(1.5, 0, 5), temperatureElement: place(1.5, 0, 8) },
      ],
    })
    expect(conflicts.map(({ code, probe, to }) => [code, probe, to])).toEqual([
      ['near-probe', 'A', 'B'],
      ['temperature-depth', 'A', 'surface'],
      ['temperature-depth', 'B', 'bottom'],
    ])
  })
  it('always says what geometry cannot see, and to cut a slit in stone wool', () => {
    const check = (medium: 'loose' | 'pre-formed') =>
      checkPlacement({ container: slab, probes: [], medium }).cautions.map(({ code }) => code)
    expect(check('loose')).toEqual(expect.arrayContaining(['air-gap', 'stone-or-lump', 'compaction', 'before-roots']))
    expect(check('loose')).not.toContain('cut-a-slit')
    expect(check('pre-formed')).toContain('cut-a-slit')
  })
  it('refuses measures without meaning', () => {
    expectDomainError(() => codes({ from: place(Number.NaN, 0, 1) }), { quantity: 'coordinate' })
    expectDomainError(() => codes({ from: place(0, 0, 1) }, { ...slab, height: 0 as Length } as PlacementContainer), {})
    expectDomainError(() => checkPlacement({ container: slab, probes: [], clearance: 0 as Length }), {
      quantity: 'clearance',
    })
  })
})
