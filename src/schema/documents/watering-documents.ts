import * as z from 'zod'
import { BYPASS, DRAIN_LAG, MIN_WATER_CONTENT } from '../../flow/domains.js'
import { LIGHT_IN_STEP, LIGHT_THRESHOLD } from '../../irrigation/domains.js'
import { type DayPlan, type PlannedShot, SHOT_REASONS } from '../../irrigation/plan/day-plan.js'
import { PLAN_CAUSES, PLAN_FINDING_CODES } from '../../irrigation/plan/plan-finding.js'
import { checkPlanRequest, PLAN_DOMAINS } from '../../irrigation/plan/plan-limits.js'
import type { DayPlanRequest } from '../../irrigation/plan/plan-request.js'
import { DROP } from '../../irrigation/plan/planning.js'
import type { DrainWish, Emitters, ValveLimits, ValveRest } from '../../irrigation/terms.js'
import { type Domain, domainWith } from '../../quantity/domain.js'
import {
  CAPACITY,
  DRAINED,
  EMITTERS,
  INSTANT,
  SUBSTRATE,
  VALVE_TIME,
  WATER_CONTENT,
  WATER_USE,
} from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { DrainFraction } from '../../quantity/generated/kinds.js'
import { inOrder } from '../../quantity/in-order.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { PREDICTED_SHARE } from '../domains.js'
import { checked, numberField, quantityField, seriesField, wordField } from '../field/field.js'
import { instantField } from '../field/instant-field.js'
import { choiceField, objectField, type UnknownKeys } from '../field/object-field.js'

/** Between what water contents a zone is kept, and what its valve may do. */
export interface LimitsDocument
  extends DrainWish,
    ValveLimits,
    ValveRest,
    Pick<DayPlanRequest, 'refillPoint' | 'fullPoint' | 'overnightDryDown' | 'maxPerShot' | 'maxPerDay'> {
  readonly version: 1
  readonly name?: string
}

/** The emitters of one container. */
export interface EmittersDocument extends Emitters, Pick<DayPlanRequest, 'lineFill'> {
  readonly version: 1
  readonly name?: string
}

/** A shot, planned or given. */
export type ShotDocument = { readonly version: 1 } & PlannedShot
/** A plan for a day. */
export type PlanDocument = { readonly version: 1 } & DayPlan
/** What a plan for a day has to respect. */
export type PlanRequestDocument = { readonly version: 1 } & DayPlanRequest

const MAX_STEPS = 100_000
const MAX_SHOTS = 10_000

/** A quantity of a request, in the range and with the hint of the plan's own argument. */
function planned<K extends KindName>(kind: K, name: keyof typeof PLAN_DOMAINS, about: string) {
  return quantityField(kind, about, PLAN_DOMAINS[name])
}

const limitsShape = () => ({
  refillPoint: planned('WaterContent', 'refillPoint', 'water content at which to water again'),
  fullPoint: planned('WaterContent', 'fullPoint', 'water content that a shot must not exceed'),
  drainFraction: planned('DrainFraction', 'drainFraction', "share of the day's water that should drain"),
  overnightDryDown: planned(
    'WaterContentChange',
    'overnightDryDown',
    'wanted fall of the water content overnight',
  ).optional(),
  minRunTime: planned('Duration', 'minRunTime', 'shortest time for which the valve may open'),
  maxRunTime: planned('Duration', 'maxRunTime', 'longest time for which the valve may open'),
  minRest: planned('Duration', 'minRest', 'shortest time from the end of one opening to the start of the next'),
  maxPerShot: planned('Volume', 'maxPerShot', 'most water in one shot').optional(),
  maxPerDay: planned('Volume', 'maxPerDay', 'most water in a day'),
})

const emittersShape = () => ({
  emitters: numberField(EMITTERS),
  emitterFlow: planned('Flow', 'emitterFlow', 'flow of one emitter'),
  lineFill: planned('Duration', 'lineFill', 'time until all emitters run'),
})

const shotShape = () => ({
  time: instantField('when it begins'),
  volume: quantityField('Volume', 'water for the container'),
  perEmitter: quantityField('Volume', 'water from each emitter'),
  runTime: quantityField('Duration', 'how long the valve is open', VALVE_TIME),
  reason: choiceField('why now', SHOT_REASONS),
  waterContent: quantityField('WaterContent', 'water content just before it', WATER_CONTENT),
})

const findingShape = () => ({
  code: choiceField('name for programs', PLAN_FINDING_CODES),
  level: choiceField('how much it matters', ['note', 'caution', 'danger']),
  about: wordField('which argument'),
  reached: z.number().optional(),
  wanted: z.number().optional(),
  unit: choiceField('unit of both', ['m³/m³', 'L', '1']).optional(),
  because: choiceField('what stands in the way', PLAN_CAUSES).optional(),
  time: instantField('the moment').optional(),
})

const head = () => ({ version: z.literal(1), name: wordField('name for people').optional() })

/** The schema of limits. */
export function limitsSchema(unknownKeys: UnknownKeys) {
  return objectField({ ...head(), ...limitsShape() }, unknownKeys).transform((limits, context) =>
    checked(context, 'limits that agree', () => {
      inOrder('refillPoint', limits.refillPoint, 'fullPoint', limits.fullPoint)
      inOrder('minRunTime', limits.minRunTime, 'maxRunTime', limits.maxRunTime + DROP)
      return limits
    }),
  )
}

/** The schema of emitters. */
export function emittersSchema(unknownKeys: UnknownKeys) {
  return objectField({ ...head(), ...emittersShape() }, unknownKeys)
}

/** The schema of a shot. */
export function shotSchema(unknownKeys: UnknownKeys) {
  return objectField({ version: z.literal(1), ...shotShape() }, unknownKeys)
}

/** The schema of a plan. */
export function planSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      shots: z.array(objectField(shotShape(), unknownKeys)).max(MAX_SHOTS),
      time: plainList(steps(INSTANT, 'end of each step')),
      waterContent: plainList(steps(WATER_CONTENT, 'predicted water content')),
      drain: plainList(steps(DRAINED, 'predicted drain in each step')),
      applied: quantityField('Volume', 'water given'),
      drained: quantityField('Volume', 'predicted drain'),
      taken: quantityField('Volume', 'predicted uptake'),
      drainFraction: numberField<DrainFraction>(PREDICTED_SHARE),
      shotDrainFraction: numberField<DrainFraction>(PREDICTED_SHARE),
      overnightDryDown: quantityField('WaterContentChange', 'predicted fall overnight'),
      findings: z.array(objectField(findingShape(), unknownKeys)).max(MAX_SHOTS),
      caution: wordField('what must hold before anything acts on it', 1000),
    },
    unknownKeys,
  ).transform((plan, context) =>
    checked(context, 'one entry a step', () => {
      if (plan.waterContent.length !== plan.time.length || plan.drain.length !== plan.time.length)
        throw new InputError('waterContent, drain', 'have other lengths than time', 'give one entry for each step')
      return plan
    }),
  )
}

/** A list as a plan holds it, which JSON keeps. */
function plainList(series: ReturnType<typeof seriesField>) {
  return series.transform((numbers) => Array.from(numbers))
}

function steps(domain: Domain, quantity: string) {
  return seriesField(domainWith(domain, { quantity }), false, MAX_STEPS)
}

function triggerField(unknownKeys: UnknownKeys) {
  return z.discriminatedUnion('by', [
    objectField({ by: z.literal('level') }, unknownKeys),
    objectField(
      {
        by: z.literal('light'),
        radiation: steps(LIGHT_IN_STEP, 'light in each step'),
        threshold: quantityField('RadiationSum', 'light between two shots', LIGHT_THRESHOLD),
      },
      unknownKeys,
    ),
    objectField(
      { by: z.literal('clock'), times: z.array(instantField('when a shot begins')).max(MAX_SHOTS) },
      unknownKeys,
    ),
  ])
}

/** The schema of a request for a plan; what passes it can be planned. */
export function planRequestSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      start: instantField('beginning of the plan'),
      step: planned('Duration', 'step', 'length of one step'),
      demand: steps(WATER_USE, 'water that the plants take in each step'),
      container: objectField(
        {
          substrateVolume: quantityField('Volume', 'volume of medium', SUBSTRATE),
          containerCapacity: quantityField('WaterContent', 'water content above which water drains', CAPACITY),
          minWaterContent: quantityField(
            'WaterContent',
            'water content below which plants get nothing',
            MIN_WATER_CONTENT,
          ),
          bypass: quantityField('Share', 'share of a shot that passes by the medium', BYPASS),
          drainLag: quantityField('Duration', 'time in which drain falls to about a third', DRAIN_LAG),
        },
        unknownKeys,
      ),
      waterContent: planned('WaterContent', 'waterContent', 'water content at the start'),
      firstShot: instantField('no shot begins earlier'),
      lastShot: instantField('no shot begins later'),
      trigger: triggerField(unknownKeys),
      ...limitsShape(),
      ...emittersShape(),
    },
    unknownKeys,
  ).transform((request, context) =>
    checked(context, 'a request that can be planned', () => {
      const plain = request as unknown as PlanRequestDocument
      checkPlanRequest(plain)
      return request
    }),
  )
}
