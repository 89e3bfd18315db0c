import {
  applyCalibration,
  calibrateTwoPoint,
  inMillilitres,
  inPercent,
  litres,
  litresPerHour,
  percent,
  rawReading,
  seconds,
  shotShare,
  sizeShot,
  waterContent,
  waterContentDifference,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Source of facts and numbers: reference scenario, recomputed (an invented but plausible slab).
 * A probe is new in a stone-wool slab of 11.25 L. A dry piece of the slab read 410 counts, a soaked one 1012, and the slab reads 782 now.
 * Three emitters of 2.1 L/h feed it, and the line takes 12 s to fill. It should come to 0.65 with 15 % of drain. Readers and valves work
 * among nutrient solution: extra-low voltage behind a residual-current device.
 */
describe('a first shot after the calibration of a probe', () => {
  const calibration = calibrateTwoPoint({
    dry: { reading: rawReading(410), waterContent: waterContent(0.03) },
    saturated: { reading: rawReading(1012), waterContent: waterContent(0.9) },
  })
  const now = applyCalibration(calibration, rawReading(782))
  const shot = sizeShot({
    substrateVolume: litres(11.25),
    rise: waterContentDifference(waterContent(0.65), now.waterContent),
    drainFraction: percent(15),
    emitterFlow: litresPerHour(2.1),
    emitters: 3,
    lineFill: seconds(12),
  })
  const within = (got: number, answer: number, tolerance: number) =>
    expect(Math.abs(got - answer)).toBeLessThanOrEqual(tolerance)

  it('finds 0.568 in the slab, between the two samples', () => {
    within(now.waterContent, 0.567608, 5.68e-5)
    expect(now.findings).toEqual([])
  })
  it('is 1.09 L, 9.7 % of the slab, 363 mL from each emitter', () => {
    within(shot.volume, 1.09048, 0.000109)
    within(inPercent(shotShare({ volume: shot.volume, substrateVolume: litres(11.25) })), 9.69318, 0.000969)
    within(inMillilitres(shot.perEmitter), 363.494, 0.0363)
  })
  it('opens the valve for 635 s, filling of the line and all, and should drain 164 mL', () => {
    within(shot.runTime, 635.133, 0.0635)
    within(shot.expectedDrain, 0.163572, 1.64e-5)
    expect(shot).toMatchObject({ boundBy: undefined, findings: [] })
  })
})
