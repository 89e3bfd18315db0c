import { newPace, type PaceWatch } from './watch-pace.js'

/** What is remembered of a probe. */
export interface ProbeWatch {
  /** Times and water contents of the newest readings that can be believed. */
  readonly times: readonly number[]
  readonly levels: readonly number[]
  /** Readings that cannot be believed, since the last that could. */
  readonly bad: BadReadings | null
  /** When anything came last, or since when a first reading is awaited. Unit: s. */
  readonly heard: number | null
  /** Readings in all. Unit: 1. */
  readonly count: number
  /** Since when it says the same, how often, and for how long it usually does. Unit: s. */
  readonly flatSince: number | null
  readonly flatCount: number
  readonly flatUsual: number
  /** Noise of the last half hour of readings, and the usual one. Unit: m³/m³. */
  readonly noise: number
  readonly usualNoise: number
  /** Times of spikes. */
  readonly spikes: readonly number[]
  /** The last jump to another level without a shot. */
  readonly step: LevelStep | null
  /** The lowest level since the last shot, and the last climb without one. */
  readonly low: number | null
  readonly lowTime: number
  readonly climb: Climb | null
  /** Fall between shots. Unit: m³/m³/s. */
  readonly fall: number
  /** When that was seen, and at which light. Unit: s, W/m². */
  readonly fallTime: number | null
  readonly fallLight: number | null
  /** Usual rise of a shot as a share of volume over volume, and shots that it was learnt from. Unit: 1. */
  readonly usualRise: number
  readonly rises: number
  /** Mean age at arrival of the last readings, and how much it varies. Unit: s. */
  readonly age: number
  readonly ageSpread: number
  /** Whether the last age lay far from the usual. */
  readonly isStray: boolean
  readonly pace: PaceWatch
}

export interface BadReadings {
  readonly kind: 'not-a-number' | 'unbelievable'
  readonly value: number | null
  readonly since: number
  readonly count: number
  /** Whether all of them are alike. */
  readonly alike: boolean
  /** The last level before. Unit: m³/m³. */
  readonly before: number | null
}

export interface LevelStep {
  readonly time: number
  readonly before: number
  readonly after: number
}

export interface Climb {
  readonly time: number
  readonly size: number
  /** How long it took. Unit: s. */
  readonly lasted: number
}

export const newProbe: ProbeWatch = {
  times: [],
  levels: [],
  bad: null,
  heard: null,
  count: 0,
  flatSince: null,
  flatCount: 0,
  flatUsual: 0,
  noise: 0.002,
  usualNoise: 0.002,
  spikes: [],
  step: null,
  low: null,
  lowTime: 0,
  climb: null,
  fall: 0,
  fallTime: null,
  fallLight: null,
  usualRise: 0,
  rises: 0,
  age: 0,
  ageSpread: 0,
  isStray: false,
  pace: newPace,
}

/** Readings that are kept. */
export const KEPT = 24

/** A smaller jump is no step: one shot of the rehearsals, and thirteen times the noise of a probe. Unit: m³/m³. */
export const MIN_STEP = 0.02
