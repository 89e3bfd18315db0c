import {
  bottomSuctionAtRest,
  boxContainer,
  type ConductiveModel,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type DrainFraction,
  drainageTimes,
  type FeddesLimits,
  fraction,
  haverkamp1977,
  inMinutes,
  litres,
  millimetresPerDay,
  minutes,
  perCentimetre,
  type RichardsContainer,
  type RichardsState,
  seconds,
  type Volume,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { checkPublished, publishedRows } from '../support/published.js'

// A section of 10 cm by 10 cm: a centimetre of water is a tenth of a litre.
const column = (height: number) =>
  boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(height) })
const asDepth = (volume: Volume) => volume * 10
const NOTHING = litres(0)

const medium = (given: Record<string, number>): ConductiveModel =>
  vanGenuchten1980({
    residual: waterContent(given.theta_r as number),
    saturated: waterContent(given.theta_s as number),
    alpha: perCentimetre(given.alpha as number),
    n: given.n as number,
    poreConnection: given.l ?? 0.5,
  })

/** Suction at each height and water that entered, after each of some times, in a column between two suctions that are held. */
function infiltration(
  model: ConductiveModel,
  ks: number,
  given: Record<string, number>,
  nodes: number,
  times: number[],
) {
  const flow = containerFlowRichards1931({
    container: column(given.length as number),
    medium: model,
    saturatedConductivity: centimetresPerHour(ks),
    surface: centimetresOfSuction(-(given.h_top as number)),
    base: centimetresOfSuction(-(given.h_bottom as number)),
    nodes,
    tolerance: 1e-6,
  })
  let state = flow.startAt(() => centimetresOfSuction(-(given.h_initial as number)))
  let [time, entered, drained] = [0, 0, 0]
  return new Map(
    times.map((until) => {
      const [next, after] = flow.step(state, { duration: seconds(until - time), applied: NOTHING, demand: NOTHING })
      state = next
      time = until
      entered += asDepth(after.entered)
      drained += asDepth(after.drained)
      const profile = flow.profile(state)
      // Between the two nodes beside the height; at a node it is that of the node.
      const head = (z: number) => {
        const k = Math.max(
          1,
          profile.findIndex(({ height }) => height >= z),
        )
        const [below, above] = [profile[k - 1]!, profile[k]!]
        const part = (z - below.height) / (above.height - below.height)
        return below.pressureHead + part * (above.pressureHead - below.pressureHead)
      }
      return [until, { head, entered, drained }] as const
    }),
  )
}

/** The rows of a topic share one column; it is simulated once. */
function infiltrationRows(topic: string, nodes: number, modelOf: (given: Record<string, number>) => ConductiveModel) {
  let course: ReturnType<typeof infiltration> | undefined
  const times = [...new Set(publishedRows('hydraulics', topic).map((row) => Number(row.given.t?.[0])))].sort(
    (a, b) => a - b,
  )
  checkPublished('hydraulics', topic, (given) => {
    course ??= infiltration(modelOf(given), given.ks * 3600, given, nodes, times)
    const { head, entered } = course.get(given.t) as { head: (z: number) => number; entered: number }
    return { h: given.z === undefined ? undefined : head(given.z), cumulative_infiltration: entered }
  })
}

infiltrationRows('flow.celia_haverkamp', 801, (given) =>
  haverkamp1977({
    residual: waterContent(given.theta_r as number),
    saturated: waterContent(given.theta_s as number),
    alpha: given.alpha as number,
    beta: given.beta as number,
    conductivityA: given.A as number,
    conductivityGamma: given.gamma as number,
  }),
)
infiltrationRows('flow.celia_vg', 801, medium)

const container = (given: Record<string, number>, more: Partial<RichardsContainer> = {}) =>
  containerFlowRichards1931({
    container: column(given.height as number),
    medium: medium(given),
    saturatedConductivity: centimetresPerHour((given.ks as number) * 60),
    ...more,
  })

checkPublished('hydraulics', 'flow.drainage_end_state', (given) => {
  const flow = container(given, { nodes: 241, tolerance: 1e-5 })
  let state = flow.startAt(() => centimetresOfSuction(0))
  let outflow = 0
  for (let left = given.t as number; left > 0; left -= 1440) {
    const [next, after] = flow.step(state, {
      duration: minutes(Math.min(left, 1440)),
      applied: NOTHING,
      demand: NOTHING,
    })
    state = next
    outflow += asDepth(after.drained)
  }
  return { mean_theta: flow.waterContent(state), h_top: state.pressureHeads.at(-1), outflow }
})

checkPublished('hydraulics', 'flow.shot_at_capacity', (given) => {
  const flow = container(given, { nodes: 121, tolerance: 1e-6 })
  let state: RichardsState = flow.startAt((height) => centimetresOfSuction(height))
  let [time, outflow] = [0, 0]
  const pass = (until: number, depth: number) => {
    const [next, after] = flow.step(state, {
      duration: minutes(until - time),
      applied: litres(depth / 10),
      demand: NOTHING,
    })
    state = next
    time = until
    outflow += asDepth(after.drained)
    return outflow
  }
  pass(given.duration, given.rate * given.duration)
  const course = (given.times as number[]).map((until) => pass(until, 0))
  return { outflow: course, outflow_final: course.at(-1) }
})

checkPublished('hydraulics', 'lag.drainage_time', (given, row) => {
  const names = Object.keys(row.expected)
  const times = drainageTimes({
    container: column(given.height),
    medium: medium(given),
    saturatedConductivity: centimetresPerHour(given.ks * 60),
    shares: names.map((name) => fraction<DrainFraction>(Number(name.slice(1)) / 100)),
  })
  return Object.fromEntries(names.map((name, i) => [name, inMinutes(times[i] as never)]))
})

// Closed column, two halves at rest under different suctions: the end is at rest again and holds the same water.
checkPublished('hydraulics', 'flow.redistribution', (given) => {
  const half = (suction: number) => medium(given).waterContent(centimetresOfSuction(suction)) * (given.height / 2)
  const total = half(given.suction_upper_half) + half(given.suction_lower_half)
  const shape = { container: column(given.height), medium: medium(given) }
  const bottom = bottomSuctionAtRest({ ...shape, waterContent: waterContent(total / given.height) })
  return {
    water_total: total,
    suction_bottom_end: bottom,
    theta_bottom_end: shape.medium.waterContent(bottom),
    theta_top_end: shape.medium.waterContent(centimetresOfSuction(bottom + given.height)),
  }
})

checkPublished('hydraulics', 'uptake.pot_drydown', (given) => {
  const suction = (name: string) => centimetresOfSuction(-given[name])
  const limits: FeddesLimits = {
    h1: suction('h1'),
    h2: suction('h2'),
    h3HighDemand: suction('h3'),
    h3LowDemand: suction('h3'),
    h4: suction('h4'),
    highDemand: millimetresPerDay(5),
    lowDemand: millimetresPerDay(1),
  }
  const flow = container(given, { nodes: 241, tolerance: 1e-5, roots: { limits } })
  let state = flow.startAt((height) => centimetresOfSuction(height))
  let taken = 0
  let day = 0
  const course = (given.times as number[]).map((until) => {
    for (; day < until; day++) {
      const demand = litres(given.potential_uptake / 10)
      const [next, after] = flow.step(state, { duration: minutes(1440), applied: NOTHING, demand })
      state = next
      taken += asDepth(after.taken)
    }
    return { waterContent: flow.waterContent(state), taken }
  })
  return {
    mean_theta: course.map(({ waterContent: content }) => content),
    cumulative_uptake: course.map(({ taken }) => taken),
  }
})
