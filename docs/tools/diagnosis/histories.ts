import {
  type DiagnosedOrder,
  type FaultName,
  minutes,
  type Observation,
  type RehearsalScenario,
  type RehearsalTruth,
  type RehearsedController,
  rehearsalFaults,
  rehearsalScenario,
  rehearse,
  rehearsedDiagnosis,
  rehearsedWatering,
  seconds,
  type ValveOrder,
} from 'porewater'
import { HEALTHY_DAYS, WARM_UP } from './promises.js'

/** The media in turn, two seeds each, so that each has its fault at either probe. */
export function mediumOf(seed: number): MediumName {
  return MEDIA[(seed >> 1) % MEDIA.length]!
}

export const MEDIA = ['stone-wool', 'coir-dust', 'sphagnum-peat-moss', 'pine-bark'] as const
export type MediumName = (typeof MEDIA)[number]

/** What one history showed. */
export interface History {
  readonly fault: FaultName | null
  readonly medium: MediumName
  readonly seed: number
  /** Seconds from the beginning of the fault until it was named first or second; null where it was not. */
  readonly after: number | null
  /** Alarms while nothing was wrong, for how many days nothing was, and how often the zone was looked at. Unit: d, s. */
  readonly falseAlarms: readonly string[]
  readonly healthyDays: number
  readonly poll: number
  /** Moments at which somebody was sent to water by hand although the zone was full. */
  readonly byHandWhileFull: number
}

const POLL = 120
const CLOSED: ValveOrder = { open: false, closeAfter: 0 }

type AnyController = RehearsedController<unknown, unknown, DiagnosedOrder>
type Told = { readonly observed: Observation; readonly truth: RehearsalTruth }

/** A healthy beginning: the orders that were given in it and what controller and diagnosis knew at its end. */
export interface Beginning {
  readonly orders: readonly DiagnosedOrder[]
  readonly state: unknown
  readonly healthy: History
}

/** When something goes wrong: after the warm-up, at any time of day, so that seeds that follow each other are spread over it. Unit: s. */
export function faultFrom(seed: number): number {
  return WARM_UP * 86400 + ((seed * 443) % 720) * POLL
}

export function beginningOf(medium: MediumName, seed: number): Beginning {
  const days = faultFrom(seed) / 86400
  const scenario = rehearsalScenario(medium)
  const controller = rehearsedDiagnosis(scenario, rehearsedWatering(scenario)) as unknown as AnyController
  const orders: DiagnosedOrder[] = []
  let state = controller.reducer.start
  const kept: AnyController = {
    ...controller,
    reducer: {
      start: controller.reducer.start,
      step: (before, input) => {
        if (orders.length * POLL >= days * 86400) return [before, CLOSED as DiagnosedOrder]
        const [next, order] = controller.reducer.step(before, input)
        orders.push(order)
        state = next
        return [next, order]
      },
    },
  }
  const { alarms } = rehearseOn(scenario, kept, seed, days, null)
  return { orders, state, healthy: healthyHistory(medium, seed, days, POLL, alarms) }
}

/** A zone in which nothing goes wrong. */
export function healthy(medium: MediumName, seed: number, poll: number): History {
  const scenario = rehearsalScenario(medium)
  const controller = rehearsedDiagnosis(scenario, rehearsedWatering(scenario)) as unknown as AnyController
  const { alarms } = rehearseOn(scenario, controller, seed, HEALTHY_DAYS, null, poll)
  return healthyHistory(medium, seed, HEALTHY_DAYS, poll, alarms)
}

function healthyHistory(
  medium: MediumName,
  seed: number,
  healthyDays: number,
  poll: number,
  alarms: readonly { readonly alarm: string }[],
): History {
  const falseAlarms = alarms.map(({ alarm }) => alarm)
  return { fault: null, medium, seed, after: null, falseAlarms, healthyDays, poll, byHandWhileFull: 0 }
}

/** The same beginning, played back, and then a fault. The zone is simulated again; controller and diagnosis go on from where they were. */
export function afterBeginning(
  medium: MediumName,
  seed: number,
  fault: FaultName,
  hours: number,
  { orders, state: held }: Beginning,
): History {
  const scenario = rehearsalScenario(medium)
  const controller = rehearsedDiagnosis(scenario, rehearsedWatering(scenario)) as unknown as AnyController
  const from = faultFrom(seed)
  return untilNamed(scenario, controller, { medium, seed, fault, from, hours, orders, held })
}

interface Course {
  readonly medium: MediumName
  readonly seed: number
  readonly fault: FaultName
  readonly from: number
  readonly hours: number
  readonly orders: readonly ValveOrder[]
  readonly held: unknown
}

function untilNamed(scenario: RehearsalScenario, controller: AnyController, course: Course): History {
  const { medium, seed, fault, from, hours, orders, held } = course
  const sign = rehearsalFaults().find((one) => one.fault === fault)!.sign
  const names = controller.alarmsFor?.[sign] ?? []
  let byHandWhileFull = 0
  const end = from + hours * 3600
  // Calls are counted outside the state, which some faults restart.
  let call = 0
  let named = false
  const played: RehearsedController<unknown, Told, ValveOrder> = {
    alarmsFor: controller.alarmsFor!,
    input: (observed, truth) => ({ observed, truth }),
    order: (order) => order,
    reducer: {
      start: held,
      step: (state, { observed, truth }) => {
        if (call < orders.length) return [held, orders[call++]!]
        if (named || truth.time > end) return [state, CLOSED]
        const [next, order] = controller.reducer.step(state, controller.input(observed, truth))
        const { causes } = order.diagnosis
        named = causes.slice(0, 2).some(({ code }) => names.includes(code))
        const full = truth.waterContent >= (scenario.limits.fullAbove as number)
        if (full && causes.some(({ check }) => check === 'look-at-supply-then-water-by-hand')) byHandWhileFull++
        return [next, order]
      },
    },
  }
  const { timeToFirstAlarms } = rehearseOn(scenario, played, seed, end / 86400, { fault, from })
  const told = timeToFirstAlarms[0]!
  const after = told.known ? told.time : null
  return { fault, medium, seed, after, falseAlarms: [], healthyDays: 0, poll: POLL, byHandWhileFull }
}

/** Readings that follow the salt show only where a zone drains every day, and from the first day on. */
export function withSalt(medium: MediumName, seed: number, fault: FaultName, hours: number): History {
  const scenario = rehearsalScenario(medium)
  const controller = rehearsedDiagnosis(scenario, timetable(scenario)) as unknown as AnyController
  const held = controller.reducer.start
  return untilNamed(scenario, controller, { medium, seed, fault, from: 0, hours, orders: [], held })
}

/** Shots by the clock, a quarter more than is used. */
function timetable(scenario: RehearsalScenario): RehearsedController<number, number, ValveOrder> {
  const shots = Math.round((1.25 * scenario.usualPerDay) / scenario.shot)
  const run = (scenario.shot / scenario.zone.flow) * 3600
  const every = 43200 / shots
  return {
    reducer: {
      start: -1,
      step: (last, now) => {
        const since = (now % 86400) - 7 * 3600
        const shot = since < 0 || since >= 43200 ? -1 : Math.floor(since / every)
        if (shot < 0 || shot === last) return [shot < 0 ? -1 : last, CLOSED]
        return [shot, { open: true, closeAfter: run }]
      },
    },
    input: ({ now }: Observation) => now,
    order: (order) => order,
  }
}

function rehearseOn<Input, Order>(
  { zone, limits }: RehearsalScenario,
  controller: RehearsedController<unknown, Input, Order>,
  seed: number,
  days: number,
  wrong: { readonly fault: FaultName; readonly from: number } | null,
  poll = POLL,
) {
  // A power cut is told when it is over.
  const until = wrong?.fault === 'power-cut' ? { until: seconds(wrong.from + 7200) } : {}
  const faults = wrong === null ? [] : [{ fault: wrong.fault, from: seconds(wrong.from), place: seed % 2, ...until }]
  return rehearse({
    zone,
    limits,
    controller,
    days: Math.ceil(days),
    seed,
    faults,
    keepCourse: false,
    pollEvery: minutes(poll / 60),
  })
}
