/** How long a simulated day of a container takes, how far it is from a finer one, and how well its water is balanced. */
import {
  boxContainer,
  type CropET,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  millimetresPerDay,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { compare, report } from './timing.js'

const bag = (nodes: number, tolerance: number) =>
  containerFlowRichards1931({
    container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(15) }),
    medium: vanGenuchten1980({
      residual: waterContent(0.18),
      saturated: waterContent(0.92),
      alpha: perCentimetre(0.15),
      n: 1.7,
    }),
    saturatedConductivity: centimetresPerHour(180),
    roots: {
      limits: {
        h1: centimetresOfSuction(0),
        h2: centimetresOfSuction(1),
        h3HighDemand: centimetresOfSuction(300),
        h3LowDemand: centimetresOfSuction(800),
        h4: centimetresOfSuction(8000),
        highDemand: millimetresPerDay<CropET>(5),
        lowDemand: millimetresPerDay<CropET>(1),
      },
    },
    nodes,
    tolerance,
  })

/** A day of 20 shots of 3 min, with 10 L of use and 14 L given. */
function day(flow: ReturnType<typeof bag>) {
  let state = flow.start(waterContent(0.6))
  let [drained, imbalance, steps] = [0, 0, 0]
  for (let shot = 0; shot < 20; shot++) {
    for (const [duration, applied] of [
      [minutes(3), litres(0.7)],
      [minutes(69), litres(0)],
    ] as const) {
      const after = flow.step(state, { duration, applied, demand: litres((10 * duration) / 86400) })
      state = after.state
      drained += after.drained
      imbalance += Math.abs(after.imbalance)
      steps += after.steps
    }
  }
  return { drained, imbalance, steps }
}

export function run(quick: boolean): void {
  const sizes = [
    { name: '31 nodes, tolerance 1e-3', flow: bag(31, 1e-3) },
    { name: '61 nodes, tolerance 1e-4 (default)', flow: bag(61, 1e-4) },
    { name: '100 nodes, tolerance 1e-3', flow: bag(100, 1e-3) },
  ]
  report(
    'A simulated day of 20 shots',
    compare(
      sizes.map(({ name, flow }) => ({ name, run: () => day(flow).drained })),
      quick ? 3 : 9,
    ),
  )
  const exact = quick ? undefined : day(bag(401, 1e-6)).drained
  for (const { name, flow } of sizes) {
    const { drained, imbalance, steps } = day(flow)
    const far =
      exact === undefined ? '' : `, drain ${((drained / exact - 1) * 100).toFixed(2)} % from 401 nodes and 1e-6`
    process.stdout.write(`  ${name}: ${steps} steps, balance within ${(imbalance / 14).toExponential(1)}${far}\n`)
  }
  process.stdout.write('\n')
}
