import { APPLICATION_RATE } from '../../flow/domains.js'
import { ADVICE, type Advice } from '../../quantity/advice.js'
import { answersOf } from '../../quantity/answer.js'
import type { ApplicationRate, Duration, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { INFILTRATION, ON_TIME, PONDING, REST, RUN_TIME } from '../domains.js'
import type { OpenTime } from '../terms.js'

/** A run time that is to be given in parts. */
export interface SoakCyclesInput extends OpenTime {
  /** Longest time that it may be open without a break. Unit: s. Range: (0, ∞). */
  readonly maxOn: Duration
  /** Break from the end of one opening to the start of the next, for the water to spread. Unit: s. Range: [0, ∞). */
  readonly soak: Duration
}

/** Equal openings with breaks between them. */
export interface SoakCycles extends Advice {
  /** Number of openings. Unit: 1. */
  readonly cycles: number
  /** Length of each opening. Unit: s. */
  readonly on: Duration
  /** Break from the end of one opening to the start of the next. Unit: s. */
  readonly soak: Duration
  /** Time from the first opening to the last closing. Unit: s. */
  readonly elapsed: Duration
}

/**
 * Divides a run time into equal openings with breaks in which the water spreads. There is no break after the last.
 *
 * @equation `n = \left\lceil t / t_{max} \right\rceil, \quad t_{on} = t / n, \quad t_{all} = t + (n - 1) \, t_{soak}`
 * @returns Number and length of the openings and the time that all takes.
 * @source common practice, no source
 * @example
 * soakCycles({ runTime: minutes(12), maxOn: minutes(4), soak: minutes(20) }) // => { cycles: 3, on: 240, elapsed: 3120 }
 */
export function soakCycles(input: SoakCyclesInput): SoakCycles {
  requireObject(input, 'input')
  const runTime = numberIn(input.runTime, RUN_TIME, 'runTime')
  const soak = numberIn(input.soak, REST, 'soak')
  const parts = Math.ceil(runTime / numberIn(input.maxOn, ON_TIME, 'maxOn') - 1e-9)
  const cycles = runTime === 0 ? 0 : Math.max(1, parts)
  return answersOf(
    {
      cycles,
      on: (cycles === 0 ? 0 : runTime / cycles) as Duration,
      soak: soak as Duration,
      elapsed: (runTime + Math.max(0, cycles - 1) * soak) as Duration,
      caution: ADVICE,
    },
    'maxOn',
  )
}

/** A run time and how fast the surface of the medium takes water. */
export interface InfiltrationCyclesInput extends OpenTime {
  /** Water that falls on the wetted surface. Unit: mm/h. Range: (0, ∞). */
  readonly applicationRate: ApplicationRate
  /** Water that the surface takes, measured when it is wet. Unit: mm/h. Range: (0, ∞). */
  readonly infiltrationRate: ApplicationRate
  /** Depth of water that may stand on the surface before it runs away. Unit: mm. Range: (0, ∞). */
  readonly ponding: WaterDepth
}

/**
 * Divides a run time so that no more water stands on the medium than may, with breaks long enough for it to go in.
 *
 * Where the surface takes water as fast as it comes, one opening is enough. Dry peat, bark and coir take it far more slowly than wet:
 * measure the rate in the state in which it matters.
 *
 * @equation `t_{max} = \frac{d}{R - i}, \quad t_{soak} = \frac{d}{i} \qquad (R > i)`
 * @param input - Run time, rates and depth.
 * @returns Number and length of the openings, the breaks and the time that all takes.
 * @source definition: water balance of the ponded surface, with a constant infiltration rate
 * @example
 * soakCyclesForInfiltration({
 *   runTime: minutes(12),
 *   applicationRate: millimetresPerHour(50),
 *   infiltrationRate: millimetresPerHour(20),
 *   ponding: millimetresOfDepth(2),
 * }) // => { cycles: 3, on: 240, soak: 360, elapsed: 1440 }
 */
export function soakCyclesForInfiltration(input: InfiltrationCyclesInput): SoakCycles {
  requireObject(input, 'input')
  const runTime = numberIn(input.runTime, RUN_TIME, 'runTime')
  const rate = numberIn(input.applicationRate, APPLICATION_RATE, 'applicationRate')
  const infiltration = numberIn(input.infiltrationRate, INFILTRATION, 'infiltrationRate')
  const ponding = numberIn(input.ponding, PONDING, 'ponding')
  if (rate <= infiltration)
    return {
      cycles: runTime > 0 ? 1 : 0,
      on: runTime as Duration,
      soak: 0 as Duration,
      elapsed: runTime as Duration,
      caution: ADVICE,
    }
  return soakCycles({
    runTime: runTime as Duration,
    maxOn: ((ponding / (rate - infiltration)) * 3600) as Duration,
    soak: ((ponding / infiltration) * 3600) as Duration,
  })
}
