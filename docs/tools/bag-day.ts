import {
  type DayPlanRequest,
  demandCourse,
  fraction,
  instant,
  litres,
  litresPerHour,
  minutes,
  percent,
  seconds,
  waterContent,
} from 'porewater'

export const midnight = 1779148800

/** Light of the 144 steps of a day from six in the morning on, 14 hours long; any unit. */
export const light = Array.from({ length: 144 }, (_, i) => Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 6 - 6)) / 14)))

/** A summer day of an invented bag of 14 L, full at 62 %, refilled at 59 %. */
export const bagDay: DayPlanRequest = {
  start: instant(midnight),
  step: minutes(10),
  demand: demandCourse({ total: litres(3.5), light, evenShare: fraction(0.15) }),
  container: {
    substrateVolume: litres(14),
    containerCapacity: waterContent(0.62),
    minWaterContent: waterContent(0.15),
    bypass: fraction(0.1),
    drainLag: minutes(10),
  },
  waterContent: waterContent(0.6),
  refillPoint: waterContent(0.59),
  fullPoint: waterContent(0.62),
  drainFraction: percent(25),
  firstShot: instant(midnight + 7 * 3600),
  lastShot: instant(midnight + 18 * 3600),
  emitters: 2,
  emitterFlow: litresPerHour(2),
  lineFill: seconds(8),
  minRunTime: minutes(2),
  maxRunTime: minutes(15),
  minRest: minutes(15),
  maxPerDay: litres(9),
  trigger: { by: 'level' },
}
