import * as z from 'zod'
import { waterStore } from '../flow/water-store.js'
import { checkPlanRequest } from '../irrigation/plan/plan-limits.js'
import type { DayPlan, DayPlanRequest, PlannedShot } from '../irrigation/plan/plan-request.js'
import { InputError } from '../quantity/errors.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { Flow } from '../quantity/generated/flow.js'
import type { DrainFraction } from '../quantity/generated/share.js'
import type { Volume } from '../quantity/generated/volume.js'
import type { WaterContent, WaterContentChange } from '../quantity/generated/water-content.js'
import { checked, numberField, quantityField, seriesField, wordField } from './field.js'
import { findingField } from './finding-field.js'
import { instantField } from './instant-field.js'
import { objectField, type UnknownKeys } from './object-field.js'

/** Between what water contents a zone is kept, and what its valve may do. */
export interface LimitsDocument {
  readonly version: 1
  readonly name?: string
  /** Water content at which to water again. Unit: m³/m³. */
  readonly refillPoint: WaterContent
  /** Water content that a shot must not exceed. Unit: m³/m³. */
  readonly fullPoint: WaterContent
  /** Share of the day's water that should drain. Unit: 1. */
  readonly drainFraction: DrainFraction
  /** Wanted fall of the water content overnight. Unit: m³/m³. */
  readonly overnightDryDown?: WaterContentChange
  /** Shortest time for which the valve may open. Unit: s. */
  readonly minRunTime: Duration
  /** Longest time for which the valve may open. Unit: s. */
  readonly maxRunTime: Duration
  /** Shortest time from the beginning of one shot to that of the next. Unit: s. */
  readonly betweenShots: Duration
  /** Most water in a day. Unit: L. */
  readonly maxPerDay: Volume
}

/** The emitters of one container. */
export interface EmittersDocument {
  readonly version: 1
  readonly name?: string
  /** Emitters in the container. Unit: 1. */
  readonly emitters: number
  /** Flow of one emitter. Unit: L/h. */
  readonly emitterFlow: Flow
  /** Time until the line is full and all emitters run. Unit: s. */
  readonly lineFill: Duration
}

/** A shot, planned or given. */
export type ShotDocument = { readonly version: 1 } & PlannedShot
/** A plan for a day. */
export type PlanDocument = { readonly version: 1 } & DayPlan
/** What a plan for a day has to respect. */
export type PlanRequestDocument = { readonly version: 1 } & DayPlanRequest

const MOST_STEPS = 100_000
const MOST_SHOTS = 10_000
const SHARE = {
  quantity: 'share',
  unit: '1',
  min: 0,
  max: 1e12,
  ends: '[]',
  hint: 'give a share, zero or more',
} as const

const limitsShape = () => ({
  refillPoint: quantityField('WaterContent', 'water content at which to water again', {
    min: 0,
    max: 1,
    ends: '()',
    hint: 'give the water content at which to water again',
  }),
  fullPoint: quantityField('WaterContent', 'water content that a shot must not exceed', {
    min: 0,
    max: 1,
    ends: '(]',
    hint: 'give the water content that a shot must not exceed',
  }),
  drainFraction: quantityField('DrainFraction', "share of the day's water that should drain", {
    min: 0,
    max: 0.9,
    ends: '[]',
    hint: 'at nine tenths of drain nearly all water is lost; ask for less',
  }),
  overnightDryDown: quantityField('WaterContentChange', 'wanted fall of the water content overnight', {
    min: 0,
    max: 1,
    ends: '[]',
    hint: 'give the fall as a positive change',
  }).optional(),
  minRunTime: time('shortest time for which the valve may open', 86_400),
  maxRunTime: time('longest time for which the valve may open', 86_400, '(]'),
  betweenShots: time('shortest time between the beginnings of two shots', 86_400),
  maxPerDay: quantityField('Volume', 'most water in a day'),
})

const emittersShape = () => ({
  emitters: numberField(
    { quantity: 'emitters', unit: '1', min: 1, max: 1000, ends: '[]', hint: 'count those in one container' },
    true,
  ),
  emitterFlow: quantityField('Flow', 'flow of one emitter', {
    min: 0,
    max: Infinity,
    ends: '()',
    hint: 'give the measured flow of one emitter',
  }),
  lineFill: time('time until all emitters run', 3600),
})

const shotShape = () => ({
  time: instantField('when it begins'),
  volume: quantityField('Volume', 'water for the container'),
  perEmitter: quantityField('Volume', 'water from each emitter'),
  runTime: time('how long the valve is open', 86_400),
  reason: wordField('why now, and why so much', 1000),
})

function time(about: string, max: number, ends: '[]' | '(]' = '[]') {
  return quantityField('Duration', about, {
    min: 0,
    max,
    ends,
    hint: `give ${ends === '(]' ? 'more than zero' : 'zero or more'}`,
  })
}

const head = () => ({ version: z.literal(1), name: wordField('name for people').optional() })

/** The schema of limits. */
export function limitsSchema(unknownKeys: UnknownKeys) {
  return objectField({ ...head(), ...limitsShape() }, unknownKeys).transform((limits, context) =>
    checked(context, 'limits that agree', () => {
      if (limits.refillPoint >= limits.fullPoint)
        throw new InputError('refillPoint', 'is not below the full point', 'give a lower refill point')
      if (limits.minRunTime > limits.maxRunTime)
        throw new InputError('minRunTime', 'is longer than the longest run time', 'give a shorter one')
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
  const series = (quantity: string, unit: string, max: number) =>
    seriesField({ quantity, unit, min: 0, max, ends: '[]', hint: 'give zero or more' }, false, MOST_STEPS)
  return objectField(
    {
      version: z.literal(1),
      shots: z.array(objectField(shotShape(), unknownKeys)).max(MOST_SHOTS),
      time: seriesField(
        { quantity: 'end of each step', unit: 's', min: -1e12, max: 1e12, ends: '[]', hint: 'give seconds since 1970' },
        false,
        MOST_STEPS,
      ),
      content: series('predicted water content', 'm³/m³', 1),
      drain: series('predicted drain in each step', 'L', Infinity),
      applied: quantityField('Volume', 'water given'),
      drained: quantityField('Volume', 'predicted drain'),
      taken: quantityField('Volume', 'predicted uptake'),
      drainFraction: numberField<DrainFraction>(SHARE),
      shotDrainFraction: numberField<DrainFraction>(SHARE),
      overnightDryDown: quantityField('WaterContentChange', 'predicted fall overnight'),
      compromises: z.array(findingField(unknownKeys)).max(1000),
    },
    unknownKeys,
  ).transform((plan, context) =>
    checked(context, 'one entry a step', () => {
      if (plan.content.length !== plan.time.length || plan.drain.length !== plan.time.length)
        throw new InputError('content and drain', 'have other lengths than time', 'give one entry for each step')
      return plan
    }),
  )
}

/** The schema of a request for a plan; what passes it can be planned. */
export function planRequestSchema(unknownKeys: UnknownKeys) {
  const steps = (quantity: string, unit: string) =>
    seriesField({ quantity, unit, min: 0, max: Infinity, ends: '[)', hint: 'give zero or more' }, false, MOST_STEPS)
  return objectField(
    {
      version: z.literal(1),
      start: instantField('beginning of the plan'),
      step: quantityField('Duration', 'length of one step', {
        min: 30,
        max: 3600,
        ends: '[]',
        hint: 'plan in steps of half a minute to an hour',
      }),
      demand: steps('water that the plants take in each step', 'L'),
      container: objectField(
        {
          substrateVolume: quantityField('Volume', 'volume of medium'),
          containerCapacity: quantityField('WaterContent', 'water content above which water drains'),
          minContent: quantityField('WaterContent', 'water content below which plants get nothing'),
          bypass: quantityField('Share', 'share of a shot that passes by the medium'),
          drainLag: time('time in which drain falls to about a third', 86_400, '(]'),
        },
        unknownKeys,
      ),
      content: quantityField('WaterContent', 'water content at the start'),
      firstShot: instantField('no shot begins earlier'),
      lastShot: instantField('no shot begins later'),
      trigger: z.discriminatedUnion('by', [
        objectField({ by: z.literal('level') }, unknownKeys),
        objectField(
          {
            by: z.literal('light'),
            radiation: steps('light in each step', 'J/cm²'),
            threshold: quantityField('RadiationSum', 'light between two shots'),
          },
          unknownKeys,
        ),
        objectField(
          { by: z.literal('clock'), times: z.array(instantField('when a shot begins')).max(MOST_SHOTS) },
          unknownKeys,
        ),
      ]),
      ...limitsShape(),
      ...emittersShape(),
    },
    unknownKeys,
  ).transform((request, context) =>
    checked(context, 'a request that can be planned', () => {
      const plain = request as unknown as PlanRequestDocument
      checkPlanRequest(plain, waterStore(plain.container))
      return request
    }),
  )
}
