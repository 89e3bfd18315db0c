/** How long a simulated day of a container takes, how far it is from a finer one, and how well its water is balanced. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { limits } from '../tests/support/uptake-limits.js'
import { compare, report } from './timing.js'

const curve = { residual: waterContent(0.18), saturated: waterContent(0.92), alpha: perCentimetre(0.15), n: 1.7 }

const bag = (nodes: number, tolerance: number, curves: 1 | 2 = 1) =>
  containerFlowRichards1931({
    ...(curves === 2 ? { wetting: wettingCurveKoolParker1987(curve) } : {}),
    container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(15) }),
    medium: vanGenuchten1980(curve),
    saturatedConductivity: centimetresPerHour(180),
    roots: { limits },
    nodes,
    tolerance,
  })

/** A day of 20 shots of 3 min, with 10 L of use and 14 L given. */
function day(flow: ReturnType<typeof bag>) {
  let state = flow.startFrom(waterContent(0.6))
  let [drained, imbalance, steps] = [0, 0, 0]
  const shots: number[] = []
  for (let shot = 0; shot < 20; shot++) {
    const before = drained
    for (const [duration, applied] of [
      [minutes(3), litres(0.7)],
      [minutes(69), litres(0)],
    ] as const) {
      const [next, after] = flow.step(state, { duration, applied, demand: litres((10 * duration) / 86400) })
      state = next
      drained += after.drained
      imbalance += Math.abs(after.imbalance)
      steps += after.steps
    }
    shots.push(drained - before)
  }
  return { drained, imbalance, steps, shots }
}

/** Suction at the bottom with which the day begins: that of 0.6 m³/m³ at rest. */
function bottomAtStart(): number {
  const flow = bag(401, 1e-6)
  return -flow.startFrom(waterContent(0.6)).pressureHeads[0]!
}

/** The same day by BDF with a sparse Jacobian, where python3 with scipy is there. */
function byStiffSolver(cells: number, tolerance: number): { ms: number; shots: number[] } | undefined {
  const script = fileURLToPath(new URL('./stiff-day.py', import.meta.url))
  const ran = spawnSync('python3', [script, String(cells), String(tolerance), String(bottomAtStart())], {
    encoding: 'utf8',
  })
  return ran.status === 0 ? (JSON.parse(ran.stdout) as { ms: number; shots: number[] }) : undefined
}

export function run(quick: boolean): void {
  const sizes = [
    { name: '27 nodes, tolerance 1e-3 (default)', flow: bag(27, 1e-3) },
    { name: '31 nodes, tolerance 3e-4', flow: bag(31, 3e-4) },
    { name: '61 nodes, tolerance 1e-4', flow: bag(61, 1e-4) },
  ]
  // Its drain is another one, and is not compared.
  const rewetting = bag(27, 1e-3, 2)
  const times = compare(
    [
      ...sizes.map(({ name, flow }) => ({ name, run: () => day(flow).drained })),
      { name: '27 nodes, draining and rewetting on two curves', run: () => day(rewetting).drained },
    ],
    quick ? 3 : 9,
  )
  report('A simulated day of 20 shots', times)
  const [usual, both] = [times[0]!, times.at(-1)!]
  process.stdout.write(
    `  goals: a day within 10 ms ${usual.median <= 10 ? 'met' : 'missed'}; two curves within 1.6 times one ${both.ratio <= 1.6 ? 'met' : 'missed'}\n`,
  )
  const exact = quick ? undefined : day(bag(401, 1e-6)).shots
  for (const { name, flow } of sizes) {
    const { imbalance, steps, shots } = day(flow)
    const far = exact === undefined ? '' : `, ${words(offBy(shots, exact))} from 401 nodes and 1e-6`
    process.stdout.write(`  ${name}: ${steps} steps, balance within ${(imbalance / 14).toExponential(1)}${far}\n`)
  }
  if (exact !== undefined) {
    besideStiffSolver(exact)
    linear()
  }
  process.stdout.write('\n')
}

/** How far the drain of a day and its worst shot are from the exact ones, as shares; shots of less than a twentieth of what is given are left out. */
function offBy(shots: readonly number[], exact: readonly number[]) {
  const sum = (list: readonly number[]) => list.reduce((total, part) => total + part, 0)
  const each = exact.map((drain, i) => (drain > 0.7 / 20 ? Math.abs(shots[i]! / drain - 1) : 0))
  return { drain: Math.abs(sum(shots) / sum(exact) - 1), shot: Math.max(...each) }
}
type Off = ReturnType<typeof offBy>

function words({ drain, shot }: Off): string {
  return `drain ${(100 * drain).toFixed(3)} % and worst shot ${(100 * shot).toFixed(2)} %`
}

/** Nodes and tolerances from which the one that is set beside the stiff solver is chosen. */
const SETTINGS = [
  [15, 3e-3],
  [21, 3e-3],
  [21, 1e-3],
  [31, 3e-3],
  [31, 1e-3],
  [31, 3e-4],
  [41, 3e-4],
  [61, 1e-4],
  [101, 1e-5],
] as const

/** The stiff solver beside the cheapest setting of our own whose drain is no further off, nor is its worst shot. */
function besideStiffSolver(exact: readonly number[]): void {
  const own = SETTINGS.map(([nodes, tolerance]) => {
    const flow = bag(nodes, tolerance)
    const off = offBy(day(flow).shots, exact)
    return { nodes, tolerance, off, ms: Math.min(...[1, 2, 3, 4, 5].map(() => once(flow, 1))) }
  }).sort((a, b) => a.ms - b.ms)
  for (const [cells, tolerance] of [
    [51, 1e-4],
    [101, 1e-5],
  ] as const) {
    const stiff = byStiffSolver(cells, tolerance)
    if (stiff === undefined) return
    const off = offBy(stiff.shots, exact)
    const match = own.find((it) => it.off.drain <= off.drain && it.off.shot <= off.shot)
    const beside =
      match === undefined
        ? 'none of our settings is as exact'
        : `${(stiff.ms / match.ms).toFixed(0)} times ${match.nodes} nodes and ${match.tolerance} with ${words(match.off)} in ${match.ms.toFixed(1)} ms (goal 100)`
    process.stdout.write(
      `  BDF of scipy, ${cells} cells, ${tolerance}: ${stiff.ms.toFixed(0)} ms of CPU, ${words(off)}: ${beside}\n`,
    )
  }
}

/** CPU of some days. Unit: ms. */
function once(flow: ReturnType<typeof bag>, days: number): number {
  const begun = process.cpuUsage()
  for (let k = 0; k < days; k++) day(flow)
  return process.cpuUsage(begun).user / 1000
}

/** How the time of a day goes with nodes and with shots. */
function linear(): void {
  for (const nodes of [31, 61, 121, 251, 501, 1000])
    process.stdout.write(`  ${nodes} nodes: ${(once(bag(nodes, 1e-3), 1) / nodes).toFixed(2)} ms a node\n`)
  for (const days of [1, 3, 10])
    process.stdout.write(`  ${20 * days} shots: ${(once(bag(31, 1e-3), days) / (20 * days)).toFixed(2)} ms a shot\n`)
}
