import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  decisiemensPerMetre,
  type FeddesLimits,
  fraction,
  layeredFlowRichards1931,
  litres,
  type PoreWaterEC,
  perCentimetre,
  type RichardsState,
  type SolutionEC,
  seconds,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { expect, it } from 'vitest'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const layer = fc
  .record({ residual: number(0, 0.2), saturated: number(0.4, 0.95), alpha: number(0.01, 0.3), n: number(1.2, 3) })
  .map(({ residual, saturated, alpha, n }) =>
    vanGenuchten1980({
      residual: waterContent(residual),
      saturated: waterContent(saturated),
      alpha: perCentimetre(alpha),
      n,
    }),
  )
const limits = { h1: 0, h2: 5, h3HighDemand: 300, h3LowDemand: 800, h4: 8000, highDemand: 5, lowDemand: 1 }
const columns = fc.record({
  media: fc.array(layer, { minLength: 1, maxLength: 2 }),
  power: number(0, 2.5),
  base: fc.constantFrom('seepage' as const, 'closed' as const, centimetresOfSuction(5)),
  bypass: fc.constantFrom(0, 0.1),
  salted: fc.boolean(),
  bottom: number(0, 60),
})
const shots = fc.array(
  fc.record({ duration: number(1, 7200), applied: number(0, 0.4), demand: number(0, 0.02), dry: number(0, 0.01) }),
  { minLength: 2, maxLength: 5 },
)

type Column = typeof columns extends fc.Arbitrary<infer C> ? C : never

function simulation({ media, power, base, bypass, salted }: Column) {
  const container = boxContainer({ length: centimetres(20), width: centimetres(15), height: centimetres(8) })
  return layeredFlowRichards1931({
    layers: media.map((medium) => ({ container, medium, saturatedConductivity: centimetresPerHour(10 ** power) })),
    base,
    bypass: fraction(bypass),
    rim: centimetres(1),
    roots: { limits: limits as unknown as FeddesLimits },
    nodes: 15,
    tolerance: 1e-3,
    ...(salted
      ? { salt: { startEC: decisiemensPerMetre<PoreWaterEC>(3), matEC: decisiemensPerMetre<SolutionEC>(2) } }
      : {}),
  })
}

it('goes on bit for bit through JSON after every step, in a simulation made anew, while another is at work', () => {
  fc.assert(
    fc.property(columns, shots, (column, days) => {
      const straight = simulation(column)
      const other = simulation({ ...column, power: column.power / 2 })
      const begun = straight.startAt((z) => centimetresOfSuction(z + column.bottom))
      let [a, b]: RichardsState[] = [begun, JSON.parse(JSON.stringify(begun))]
      for (const { duration, applied, demand, dry } of days) {
        const during = {
          duration: seconds(duration),
          applied: litres(applied),
          demand: litres(demand),
          evaporation: litres(dry),
          feedEC: decisiemensPerMetre<SolutionEC>(2.5),
        }
        const made = simulation(column)
        other.step(other.startAt(centimetresOfSuction), during)
        const one = straight.step(a as RichardsState, during)
        const two = made.step(b as RichardsState, during)
        expect(two).toStrictEqual(one)
        expect(made.profile(two[0])).toStrictEqual(straight.profile(one[0]))
        a = one[0]
        b = JSON.parse(JSON.stringify(two[0]))
        expect(b).toStrictEqual(a)
      }
    }),
    { numRuns: 12 },
  )
})
