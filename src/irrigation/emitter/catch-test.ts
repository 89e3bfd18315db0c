import { answerOf } from '../../quantity/answer.js'
import { VALVE_TIME } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Flow, Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { EFFICIENCY, ON_TIME, RUN_TIME } from '../domains.js'
import type { EmitterFinding } from './emitter-finding.js'
import {
  christiansenUniformity,
  flowVariation,
  flowVariationCoefficient,
  lowQuarterUniformity,
  statisticalUniformity,
} from './uniformity.js'
import { type UniformityGrade, uniformityGrade } from './uniformity-grades.js'

/** Catches that say something of a zone, and the share of the driest quarter that will do; common practice, no source. */
const ENOUGH = 16
const EVEN = 0.8

/** A run time for the mean emitter and how uneven the emitters are. */
export interface DriestQuarterInput {
  /** Run time with which the mean emitter gives what is wanted. Unit: s. Range: [0, ∞). */
  readonly runTime: Duration
  /** Distribution uniformity of the low quarter. Unit: 1. Range: (0, 1]. */
  readonly uniformity: Share
  /** Part of the run time in which the line fills; none by default. Unit: s. Range: [0, 86400]. */
  readonly lineFill?: Duration
}

/**
 * Run time with which the driest quarter of the emitters gives on average what is wanted. The others then give more, and drain more.
 *
 * Below a uniformity of about 0.8 cleaning and pressure come before longer runs.
 *
 * @equation `t' = \frac{t - t_{fill}}{DU_{lq}} + t_{fill}`
 * @returns Longer run time. Unit: s.
 * @throws `DomainError` outside the ranges, `InputError` when the line fills longer than the valve is open.
 * @source merriam-1978
 * @example
 * runTimeForDriestQuarter({ runTime: seconds(200), uniformity: fraction(0.9), lineFill: seconds(20) }) // => 220
 */
export function runTimeForDriestQuarter(input: DriestQuarterInput): Duration {
  requireObject(input, 'input')
  const time = numberIn(input.runTime, RUN_TIME, 'runTime')
  const fill = numberIn(optionOr(input.lineFill, 0), VALVE_TIME, 'lineFill')
  const uniformity = numberIn(input.uniformity, EFFICIENCY, 'uniformity')
  if (time === 0) return 0 as Duration
  if (fill > time) throw new InputError('lineFill', `${fill} s is longer than the run time of ${time} s`, 'run longer')
  return answerOf((time - fill) / uniformity + fill, 'uniformity') as Duration
}

/** What was caught under the emitters of a zone in one run. */
export interface CatchTestInput {
  /** Water in each cup, in the order of the list; leave a lost cup out. Unit: mL. Range: each in [0, ∞). */
  readonly catches: ArrayLike<number>
  /** How long all cups were under their emitters. Unit: s. Range: (0, ∞). */
  readonly duration: Duration
}

/** The sheet of a catch test. */
export interface CatchTest {
  /** Mean flow of an emitter. Unit: L/h. */
  readonly meanFlow: Flow
  /** Lowest flow. Unit: L/h. */
  readonly minFlow: Flow
  /** Highest flow. Unit: L/h. */
  readonly maxFlow: Flow
  /** Distribution uniformity of the low quarter. Unit: 1. */
  readonly lowQuarter: Share
  /** Christiansen's coefficient. Unit: 1. */
  readonly christiansen: Share
  /** Statistical uniformity. Unit: 1. */
  readonly statistical: Share
  /** Coefficient of variation. Unit: 1. */
  readonly variation: number
  /** What the lowest flow lacks of the highest. Unit: 1. */
  readonly flowVariation: Share
  /** Class by statistical uniformity. */
  readonly grade: UniformityGrade
  /** By what to multiply a run time so that the driest quarter gets its share; without meaning when that quarter is dry. Unit: 1. */
  readonly runTimeFactor: number | undefined
  /** Places in the list, from 0, of the emitters that give less than three quarters of the mean. Unit: 1. */
  readonly weak: readonly number[]
  /** What a person should know; `explainIrrigationFinding` has the words. */
  readonly findings: readonly EmitterFinding[]
}

/**
 * The sheet of a catch test: flows, uniformity by every usual index, the emitters to look at, and how much longer to run until then.
 *
 * @procedure Turns catches into flows, computes low-quarter uniformity, Christiansen's coefficient, statistical uniformity, coefficient
 * of variation and flow variation, grades the zone and lists emitters below three quarters of the mean.
 * @param test - Catches and their time. Put the cups out after the line is full and the pressure is up.
 * @returns The sheet.
 * @throws `DomainError` outside the ranges, `InputError` for fewer than four catches or none with water.
 * @source asabe-ep458; merriam-1978
 * @example
 * const sheet = catchTest({ catches: [100, 98, 103, 97, 101, 55, 99, 102], duration: minutes(3) })
 * sheet // => { meanFlow: 1.8875, lowQuarter: 0.8053, grade: 'good', weak: [5] }
 */
export function catchTest(test: CatchTestInput): CatchTest {
  requireObject(test, 'test')
  const { catches, duration } = test
  const hours = numberIn(duration, ON_TIME, 'duration') / 3600
  const lowQuarter = lowQuarterUniformity(catches)
  const flows = Array.from(catches, (caught) => answerOf(caught / 1000 / hours, 'duration'))
  const mean = flows.reduce((sum, flow) => sum + flow, 0) / flows.length
  const statistical = statisticalUniformity(catches)
  const weak = flows.flatMap((flow, i) => (flow < 0.75 * mean ? [i] : []))
  return {
    meanFlow: answerOf(mean, 'duration') as Flow,
    minFlow: flows.reduce((a, b) => Math.min(a, b), Infinity) as Flow,
    maxFlow: flows.reduce((a, b) => Math.max(a, b), -Infinity) as Flow,
    lowQuarter,
    christiansen: christiansenUniformity(catches),
    statistical,
    variation: flowVariationCoefficient(catches),
    flowVariation: flowVariation(catches),
    grade: uniformityGrade(statistical),
    runTimeFactor: lowQuarter > 0 ? 1 / lowQuarter : undefined,
    weak,
    findings: findings(flows.length, lowQuarter, weak.length),
  }
}

function findings(cups: number, lowQuarter: number, weak: number): EmitterFinding[] {
  const found: EmitterFinding[] = []
  if (cups < ENOUGH) found.push({ code: 'few-catches', level: 'note', value: cups, limit: ENOUGH, unit: '1' })
  if (lowQuarter < EVEN)
    found.push({ code: 'uneven-zone', level: 'caution', value: lowQuarter, limit: EVEN, unit: '1' })
  if (weak > 0) found.push({ code: 'weak-emitters', level: 'caution', value: weak, limit: cups, unit: '1' })
  return found
}
