import { ADVICE, type Advice } from '../../quantity/advice.js'
import { answersOf } from '../../quantity/answer.js'
import { VALVE_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, plain, requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { LOAD_INERTIA, REST, SOME_RUN_TIME, STARTS_PER_HOUR, STARTS_TIMES_INERTIA, ZONES } from '../domains.js'
import { MOTOR_STARTS } from './motor-starts-table.js'

/** How often a motor may start. */
export interface MotorStartLimits {
  /** Most starts in an hour, whatever the load. Unit: 1/h. Range: (0, ∞). */
  readonly maxStarts: number
  /** Most starts in an hour times inertia of the load. Unit: lb·ft²/h. Range: (0, ∞). */
  readonly maxStartsTimesInertia: number
  /** Least rest between a stop and the next start. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
}

/** A motor by rated power and poles. */
export interface MotorOfTable {
  /** Rated power, one that the table lists. Unit: hp. Range: any. */
  readonly horsepower: number
  /** Number of poles. */
  readonly poles: 2 | 4 | 6
}

/**
 * How often a polyphase induction motor of design A or B may start, from the table of NEMA MG 10.
 *
 * For submersible, single-phase, soft-started and unusual motors the maker's own limit rules. Motors and their switchgear stand near
 * water: their installation and protection are work for a licensed electrician under the local code.
 *
 * @procedure Looks the motor up; a power between two rows must be taken from the next larger row, which the caller chooses.
 * @returns Limits of the motor.
 * @throws `InputError` when the table has no such motor.
 * @validity Voltage and frequency as rated, load torque rising with the square of speed up to the rated torque, inertia within the table.
 * @source nema-mg10, Table 2-3, as reprinted in the EASA Electrical Engineering Handbook
 * @example
 * motorStartLimitsNema({ horsepower: 25, poles: 4 }) // => { maxStarts: 8.8, maxStartsTimesInertia: 122, minRest: 58 }
 */
export function motorStartLimitsNema(motor: MotorOfTable): MotorStartLimits {
  requireObject(motor, 'motor')
  const { horsepower, poles } = motor
  const row = MOTOR_STARTS.find(([power]) => power === horsepower)
  const column = [2, 4, 6].indexOf(poles)
  if (row === undefined || column < 0)
    throw new InputError(
      'motor',
      `the table has no motor of ${plain(horsepower)} hp with ${plain(poles)} poles`,
      `choose 2, 4 or 6 poles and one of ${MOTOR_STARTS.map(([power]) => power).join(', ')} hp`,
    )
  const [maxStarts, maxStartsTimesInertia, minRest] = row.slice(1 + 3 * column) as [number, number, number]
  return { maxStarts, maxStartsTimesInertia, minRest: minRest as Duration }
}

/** A motor and what it has to set in motion. */
export interface PumpStartsInput extends MotorStartLimits {
  /** Inertia of the load. Unit: lb·ft². Range: (0, ∞). */
  readonly inertia: number
}

/** How often a pump may start. */
export interface PumpStarts {
  /** Most starts in an hour. Unit: 1/h. */
  readonly startsPerHour: number
  /** Least time from one start to the next. Unit: s. */
  readonly minPeriod: Duration
  /** Least rest between a stop and the next start. Unit: s. */
  readonly minRest: Duration
}

/**
 * How often a pump may start without overheating its motor.
 *
 * @equation `n = \min\left(A, \; B / Wk^2\right)`
 * @returns Starts in an hour, time between starts and least rest.
 * @source nema-mg10, Table 2-3, as reprinted in the EASA Electrical Engineering Handbook
 * @example
 * const motor = motorStartLimitsNema({ horsepower: 25, poles: 4 })
 * pumpStarts({ ...motor, inertia: 50 }) // => { startsPerHour: 2.44, minPeriod: 1475.41, minRest: 58 }
 */
export function pumpStarts(input: PumpStartsInput): PumpStarts {
  requireObject(input, 'input')
  const byLoad =
    numberIn(input.maxStartsTimesInertia, STARTS_TIMES_INERTIA, 'maxStartsTimesInertia') /
    numberIn(input.inertia, LOAD_INERTIA, 'inertia')
  const startsPerHour = Math.min(numberIn(input.maxStarts, STARTS_PER_HOUR, 'maxStarts'), byLoad)
  return answersOf(
    {
      startsPerHour,
      minPeriod: (3600 / startsPerHour) as Duration,
      minRest: numberIn(input.minRest, VALVE_TIME, 'minRest') as Duration,
    },
    'maxStarts',
  )
}

/** Zones that a pump serves in turn. */
export interface PumpScheduleInput {
  /** Number of zones. Unit: 1. Range: integers [1, 100000]. */
  readonly zones: number
  /** Time that each zone runs. Unit: s. Range: (0, ∞). */
  readonly runTime: Duration
  /** Rest from the closing of one valve to the opening of the next. Unit: s. Range: [0, ∞). */
  readonly rest: Duration
  /** Starts that the pump may make in an hour. Unit: 1/h. Range: (0, ∞). */
  readonly startsPerHour: number
  /** Whether the pump runs on between two zones instead of stopping. */
  readonly keepRunning: boolean
}

/** A round through all zones. */
export interface PumpSchedule extends Advice {
  /** Time from the first opening to the last closing. Unit: s. */
  readonly cycle: Duration
  /** Starts of the pump in a round. Unit: 1. */
  readonly startsPerCycle: number
  /** Rounds that starts and time allow in an hour. Unit: 1/h. */
  readonly cyclesPerHour: number
}

/**
 * How long a round through all zones takes and how many rounds an hour the starts of the pump and the time allow.
 *
 * with m starts in a round: one for each zone, or a single one when the pump runs on between zones. A pump must not run against closed
 * valves for long: running on needs overlapping valves or a return line.
 *
 * @equation `T = n t + (n - 1) r, \quad N = \min\left(\frac{3600}{T}, \; \frac{s}{m}\right)`
 * @param input - Zones, times and starts.
 * @returns Length of a round, its starts, and rounds in an hour.
 * @source definition
 * @example
 * pumpSchedule({
 *   zones: 6,
 *   runTime: minutes(2),
 *   rest: seconds(10),
 *   startsPerHour: 15,
 *   keepRunning: false,
 * }) // => { cycle: 770, startsPerCycle: 6, cyclesPerHour: 2.5 }
 */
export function pumpSchedule(input: PumpScheduleInput): PumpSchedule {
  requireObject(input, 'input')
  const zones = wholeNumberIn(input.zones, ZONES, 'zones')
  const cycle =
    zones * numberIn(input.runTime, SOME_RUN_TIME, 'runTime') + (zones - 1) * numberIn(input.rest, REST, 'rest')
  const startsPerCycle = booleanOf(input.keepRunning, 'keepRunning') ? 1 : zones
  return answersOf(
    {
      cycle: cycle as Duration,
      startsPerCycle,
      cyclesPerHour: Math.min(
        3600 / cycle,
        numberIn(input.startsPerHour, STARTS_PER_HOUR, 'startsPerHour') / startsPerCycle,
      ),
      caution: ADVICE,
    },
    'rest',
  )
}
