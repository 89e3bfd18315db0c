import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  decisiemensPerMetre,
  layeredFlowRichards1931,
  litres,
  minutes,
  type PoreWaterEC,
  perCentimetre,
  type SolutionEC,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'

const lower = { residual: waterContent(0.05), saturated: waterContent(0.92), alpha: perCentimetre(0.09), n: 2.4 }
const upper = { residual: waterContent(0.1), saturated: waterContent(0.88), alpha: perCentimetre(0.06), n: 1.8 }
const container = boxContainer({ length: centimetres(20), width: centimetres(10), height: centimetres(6) })

/** Two shots that drain, into two layers, with salt: what is held, what drained, the EC of all, at the bottom and at the surface. */
function outcome(nodes: number, tolerance: number, curves: 1 | 2) {
  const layer = (drying: typeof lower, conductivity: number) => ({
    container,
    medium: vanGenuchten1980(drying),
    ...(curves === 2 ? { wetting: wettingCurveKoolParker1987(drying) } : {}),
    saturatedConductivity: centimetresPerHour(conductivity),
  })
  const flow = layeredFlowRichards1931({
    layers: [layer(lower, 90), layer(upper, 40)],
    salt: { startEC: decisiemensPerMetre<PoreWaterEC>(4), dispersivity: centimetres(1) },
    nodes,
    tolerance,
  })
  const feedEC = decisiemensPerMetre<SolutionEC>(1.5)
  let state = flow.startAt((z) => centimetresOfSuction(8 + z), curves === 2 ? 'wetted' : 'drained')
  let [drained, steps] = [0, 0]
  // In short calls, each of which may take some thousand steps: the exact run needs more for a whole shot.
  for (const [volume, time] of [0.7, 0.5].flatMap((shot) => [
    ...[5, 5, 5].map((time) => [shot / 3, time] as const),
    ...[5, 10, 15, 15].map((time) => [0, time] as const),
  ])) {
    const during = { duration: minutes(time), applied: litres(volume), demand: litres(0), feedEC }
    const [next, after] = flow.step(state, during)
    state = next
    drained += after.drained
    steps += after.steps
  }
  const profile = flow.profile(state)
  const values = {
    held: flow.waterContent(state) as number,
    drained,
    meanEC: flow.meanEC(state) as number,
    bottomEC: profile[0]?.poreWaterEC as number,
    surfaceEC: profile.at(-1)?.poreWaterEC as number,
  }
  return { values, steps }
}
type Name = keyof ReturnType<typeof outcome>['values']

/** By which power of a ratio a value of one outcome is closer to the exact one than that of another. */
function order(name: Name, ratio: number, [coarse, fine, exact]: readonly ReturnType<typeof outcome>[]): number {
  const off = (of: typeof coarse) => Math.abs(of!.values[name]! - exact!.values[name]!)
  return Math.log(off(coarse) / off(fine)) / Math.log(ratio)
}

describe('layers with salt in their water come closer', () => {
  it('on two curves with the square of the distance between nodes', () => {
    const runs = [13, 49, 193].map((nodes) => outcome(nodes, 1e-6, 2))
    // The exact one is no further off than a sixteenth of the finer.
    for (const name of ['held', 'drained', 'meanEC', 'bottomEC'] as const)
      expect(order(name, 4, runs), name).toBeGreaterThan(1.9)
  })
  it.each([
    [1, 1e-3, 2],
    [2, 1e-5, 1.85],
  ] as const)('on %i curves with the square of the step in time', (curves, coarse, least) => {
    const runs = [coarse, 1e-7, 1e-9].map((tolerance) => outcome(25, tolerance, curves))
    const ratio = runs[1]!.steps / runs[0]!.steps
    for (const name of ['meanEC', 'bottomEC', 'surfaceEC'] as const)
      expect(order(name, ratio, runs), name).toBeGreaterThan(1.9)
    for (const name of ['held', 'drained'] as const) expect(order(name, ratio, runs), name).toBeGreaterThan(least)
  })
})
