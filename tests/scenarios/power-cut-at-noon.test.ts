import {
  bucketShot,
  hours,
  inHours,
  inMinutes,
  litres,
  litresPerHour,
  motorStartLimitsNema,
  percent,
  pumpStarts,
  shotSeries,
  timeToLevel,
  waterContent,
  waterContentAfterUse,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Source of facts and numbers: reference scenario, recomputed (an invented but plausible outage).
 * The power fails for four and a half hours at noon, while every plant takes 180 mL an hour. Stone wool and coir hang on the same pump,
 * whose motor may start only so often. After a cut look at the clock and at the last event before anything catches up by itself, and keep
 * hands off wet pump gear that is live.
 */
describe('a power cut at noon, and the way back', () => {
  const use = litresPerHour(0.18)
  const wool = { now: 0.55, lower: 0.45, stop: 0.2, volume: litres(3.75), full: 0.6 }
  const coir = { now: 0.46, lower: 0.38, stop: 0.25, volume: litres(10), full: 0.52 }
  const hoursTo = ({ now, volume }: typeof wool, level: number) =>
    inHours(timeToLevel({ waterContent: waterContent(now), level: waterContent(level), substrateVolume: volume, use }))
  const after = waterContentAfterUse({
    waterContent: waterContent(wool.now),
    substrateVolume: wool.volume,
    use,
    time: hours(4.5),
  })
  const series = shotSeries({
    waterContent: after,
    target: waterContent(wool.full),
    substrateVolume: wool.volume,
    shot: litres(0.12),
    drainFraction: percent(10),
  })
  const pump = pumpStarts({ ...motorStartLimitsNema({ horsepower: 1, poles: 2 }), inertia: 0.1 })

  it('endangers the stone wool first: 2 h to its lower limit, 7 h to wilting; coir has twice and more', () => {
    expect(hoursTo(wool, wool.lower)).toBeCloseTo(2.08333, 3)
    expect(hoursTo(wool, wool.stop)).toBeCloseTo(7.29167, 3)
    expect(hoursTo(coir, coir.lower)).toBeCloseTo(4.44444, 3)
    expect(hoursTo(coir, coir.stop)).toBeCloseTo(11.6667, 3)
  })
  it('leaves it at 0.334, and ten shots of at most 120 mL fill it again', () => {
    expect(after).toBeCloseTo(0.334, 9)
    expect(Math.abs(series.total - 1.10833)).toBeLessThanOrEqual(0.000111)
    expect(series.shots).toBe(10)
    expect(series.lastShot).toBeLessThan(0.12)
  })
  it('is paced by the motor: twelve starts an hour, 45 min for ten shots', () => {
    expect(pump.startsPerHour).toBeCloseTo(12, 9)
    expect(inMinutes(pump.minPeriod)).toBeCloseTo(5, 9)
    expect(pump.minRest).toBe(75)
    expect((series.shots - 1) * inMinutes(pump.minPeriod)).toBeCloseTo(45, 9)
  })
  it('loses half of one big pour of 2 L', () => {
    const poured = bucketShot({
      waterContent: after,
      containerCapacity: waterContent(wool.full),
      substrateVolume: wool.volume,
      volume: litres(2),
    })
    expect(Math.abs(poured.drainFraction - 0.50125)).toBeLessThanOrEqual(5.01e-5)
  })
})
