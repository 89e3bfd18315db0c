import type { ZoneWater } from '../scenario/zone-water.js'

/** The course of a rehearsal, one entry a step; all lists have the same length. Water is counted from the start, in L a container. */
export interface RehearsalCourse {
  /** Universal time. Unit: s. */
  readonly time: Float64Array
  /** True mean water content. Unit: m³/m³. */
  readonly waterContent: Float64Array
  /** True water content at the first probe. Unit: m³/m³. */
  readonly atProbe: Float64Array
  /** Newest number from each probe, believed or not; NaN where it sent none or no number. */
  readonly readings: readonly Float64Array[]
  /** Through the valve. Unit: L. */
  readonly given: Float64Array
  /** Out of the containers. Unit: L. */
  readonly drained: Float64Array
  /** By the plants. Unit: L. */
  readonly used: Float64Array
  /** 1 while the controller wants the valve open. Unit: 1. */
  readonly wanted: Uint8Array
  /** Time from one entry to the next. Unit: s. */
  readonly step: number
}

export interface Recorder {
  readonly course: RehearsalCourse
  readonly record: (
    time: number,
    mean: number,
    waterContents: Float64Array,
    shown: Float64Array,
    water: ZoneWater,
    wanted: boolean,
  ) => void
}

export function recorderOf(entries: number, probes: number, step: number, start: number): Recorder {
  const row = () => new Float64Array(entries)
  const course = {
    time: row(),
    waterContent: row(),
    atProbe: row(),
    readings: Array.from({ length: probes }, row),
    given: row(),
    drained: row(),
    used: row(),
    wanted: new Uint8Array(entries),
    step,
  }
  let at = 0
  return {
    course,
    record: (time, mean, waterContents, shown, water, wanted) => {
      if (at >= entries) return
      course.time[at] = start + time
      course.waterContent[at] = mean
      course.atProbe[at] = waterContents[0]!
      for (let i = 0; i < probes; i++) course.readings[i]![at] = shown[i]!
      course.given[at] = water.given
      course.drained[at] = water.drained
      course.used[at] = water.used
      course.wanted[at] = wanted ? 1 : 0
      at++
    },
  }
}
