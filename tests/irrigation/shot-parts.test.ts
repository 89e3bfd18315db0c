import fc from 'fast-check'
import {
  applicationRate,
  bucketShot,
  emittersNeeded,
  fraction,
  grossIrrigation,
  inchesOfDepth,
  inJoulesPerSquareCentimetre,
  inLitresPerMinute,
  inMetresOfWater,
  inMinutes,
  inPercent,
  joulesPerSquareCentimetre,
  kilopascals,
  litres,
  litresPerHour,
  megajoulesPerSquareMetre,
  metresOfWater,
  millimetresOfDepth,
  millimetresPerHour,
  minutes,
  seconds,
  shotFromShare,
  shotFromUse,
  shotSeries,
  shotShare,
  shotVolume,
  soakCycles,
  soakCyclesForInfiltration,
  squareMetres,
  usGallonsPerHour,
  waterContent,
  waterContentChange,
  zoneFlow,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

checkPublished('irrigation', 'shot.percent', ({ V, Vs }) => ({
  percent: inPercent(shotShare({ volume: litres(V), substrateVolume: litres(Vs) })),
}))
checkPublished('irrigation', 'shot.bucket', ({ theta, theta_cc, Vs, V }) => {
  const shot = bucketShot({
    waterContent: waterContent(theta),
    containerCapacity: waterContent(theta_cc),
    substrateVolume: litres(Vs),
    volume: litres(V),
  })
  return { theta_after: shot.waterContent, drain_volume: shot.drained, drain_fraction: shot.drainFraction }
})
checkPublished('irrigation', 'shot.series', ({ theta, theta_target, Vs, shot, DF }) => {
  const series = shotSeries({
    waterContent: waterContent(theta),
    target: waterContent(theta_target),
    substrateVolume: litres(Vs),
    shot: litres(shot),
    drainFraction: fraction(DF),
  })
  return { total_volume: series.total, shots: series.shots, last_shot: series.lastShot }
})
checkPublished('irrigation', 'cycle.soak', ({ total, max_on, soak }) => {
  const parts = soakCycles({ runTime: minutes(total), maxOn: minutes(max_on), soak: minutes(soak) })
  return { cycles: parts.cycles, on_each_min: inMinutes(parts.on), elapsed_min: inMinutes(parts.elapsed) }
})
checkPublished('irrigation', 'application.rate', ({ q, n, area }) => ({
  rate: applicationRate({ emitterFlow: litresPerHour(q), emitters: n, area: squareMetres(area) }),
}))
checkPublished('irrigation', 'zone.flow', ({ q, n }) => ({
  Q: inLitresPerMinute(zoneFlow({ emitterFlow: litresPerHour(q), emitters: n })),
}))
checkPublished('irrigation', 'gross.net', ({ net, Ea }) => ({
  gross: grossIrrigation({ net: millimetresOfDepth(net), efficiency: fraction(Ea) }),
}))
checkPublished('irrigation', 'unit.convert', ({ value, kind }) => {
  switch (kind) {
    case 'gph_to_L_h':
      return { value: usGallonsPerHour(value) }
    case 'kPa_to_m_head':
      return { value: inMetresOfWater(kilopascals(value)) }
    case 'MJ_m2_to_J_cm2':
      return { value: inJoulesPerSquareCentimetre(megajoulesPerSquareMetre(value)) }
    case 'inch_to_mm':
      return { value: inchesOfDepth(value) }
    default:
      // Parts per million on the 700 scale are defined as 700 for each dS/m.
      return { value: kind === 'dS_m_to_ppm_700' ? 700 * value : Number.NaN }
  }
})

const amounts = fc.double({ min: 0.001, max: 100, noNaN: true }).map(litres)
const shares = fc.double({ min: 0, max: 1, noNaN: true })
const drains = fc.double({ min: 0, max: 0.95, noNaN: true })

describe('a bucket', () => {
  it('keeps or drains all that is applied, and never more than it has room for', () => {
    fc.assert(
      fc.property(shares, fc.double({ min: 0.01, max: 1, noNaN: true }), amounts, amounts, (now, full, vs, volume) => {
        const shot = bucketShot({
          waterContent: waterContent(now),
          containerCapacity: waterContent(full),
          substrateVolume: vs,
          volume,
        })
        expect(Math.abs(shot.retained + shot.drained - volume)).toBeLessThanOrEqual(1e-12 * volume)
        expect(shot.waterContent).toBeLessThanOrEqual(Math.max(now, full) + 1e-12)
        expect(Math.abs((shot.waterContent - now) * vs - shot.retained)).toBeLessThanOrEqual(
          1e-12 * Math.max(vs, volume),
        )
        expect(shot.drainFraction).toBeGreaterThanOrEqual(0)
        expect(shot.drainFraction).toBeLessThanOrEqual(1)
      }),
    )
  })
  it('has no room above capacity, and needs no water to be asked', () => {
    const wet = { waterContent: waterContent(0.7), containerCapacity: waterContent(0.6), substrateVolume: litres(10) }
    expect(bucketShot({ ...wet, volume: litres(1) })).toMatchObject({ waterContent: 0.7, retained: 0, drained: 1 })
    expect(bucketShot({ ...wet, volume: litres(0) }).drainFraction).toBe(0)
  })
})

describe('shares of the substrate', () => {
  it('give the volume back', () => {
    fc.assert(
      fc.property(shares, amounts, (share, substrateVolume) => {
        const volume = shotFromShare({ substrateVolume, share: fraction(share) })
        expect(Math.abs(shotShare({ volume, substrateVolume }) - share)).toBeLessThanOrEqual(1e-12)
      }),
    )
  })
  it('are the rise of a shot that does not drain', () => {
    const substrateVolume = litres(11.25)
    const volume = shotVolume({ substrateVolume, rise: waterContentChange(0.03), drainFraction: fraction(0) })
    expect(shotShare({ volume, substrateVolume })).toBeCloseTo(0.03, 15)
  })
})

describe('a shot that replaces use', () => {
  it('is use and drain, and more drain never means less water', () => {
    fc.assert(
      fc.property(amounts, drains, drains, (use, a, b) => {
        const shot = shotFromUse({ use, drainFraction: fraction(a) })
        expect(Math.abs(shot * (1 - a) - use)).toBeLessThanOrEqual(1e-12 * use)
        expect(shotFromUse({ use, drainFraction: fraction(Math.max(a, b)) })).toBeGreaterThanOrEqual(shot)
      }),
    )
  })
})

describe('a series of shots', () => {
  it('adds up to the total, with no shot above the set size', () => {
    fc.assert(
      fc.property(shares, shares, amounts, amounts, drains, (content, target, substrateVolume, shot, drain) => {
        fc.pre(substrateVolume / shot < 1e5)
        const series = shotSeries({
          waterContent: waterContent(content),
          target: waterContent(target),
          substrateVolume,
          shot,
          drainFraction: fraction(drain),
        })
        const full = Math.max(0, series.shots - 1) * shot
        expect(Math.abs(full + series.lastShot - series.total)).toBeLessThanOrEqual(1e-9 * (series.total + shot))
        expect(series.lastShot).toBeLessThanOrEqual(shot * (1 + 1e-6))
        expect(series.shots === 0).toBe(series.total <= 1e-9 * shot)
      }),
    )
  })
})

describe('cycles with breaks', () => {
  it('give the whole run time and never open for longer than may be', () => {
    const times = fc.double({ min: 0, max: 5000, noNaN: true })
    fc.assert(
      fc.property(times, fc.double({ min: 1, max: 5000, noNaN: true }), times, (total, most, soak) => {
        const parts = soakCycles({ runTime: seconds(total), maxOn: seconds(most), soak: seconds(soak) })
        expect(parts.on * parts.cycles).toBeCloseTo(total, 6)
        expect(parts.on).toBeLessThanOrEqual(most * (1 + 1e-6))
        expect(parts.elapsed).toBeCloseTo(total + Math.max(0, parts.cycles - 1) * soak, 6)
      }),
    )
  })
  it('never let more water stand than may, and let it go in before the next', () => {
    const rates = fc.double({ min: 0.5, max: 200, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3600, noNaN: true }), rates, rates, rates, (total, rate, into, depth) => {
        const parts = soakCyclesForInfiltration({
          runTime: seconds(total),
          applicationRate: millimetresPerHour(rate),
          infiltrationRate: millimetresPerHour(into),
          ponding: millimetresOfDepth(depth / 50),
        })
        const standing = (Math.max(0, rate - into) * parts.on) / 3600
        expect(standing).toBeLessThanOrEqual((depth / 50) * (1 + 1e-6))
        if (parts.cycles > 1) expect((into * parts.soak) / 3600).toBeGreaterThanOrEqual(standing * (1 - 1e-6))
        if (rate <= into) expect(parts).toMatchObject({ cycles: 1, soak: 0, on: total })
      }),
    )
  })
  it('soak in for as long as the surface takes for what stands on it', () => {
    const parts = soakCyclesForInfiltration({
      runTime: seconds(720),
      applicationRate: millimetresPerHour(50),
      infiltrationRate: millimetresPerHour(20),
      ponding: millimetresOfDepth(2),
    })
    // 2 mm gather at 30 mm/h in a fifteenth of an hour, and go in at 20 mm/h in a tenth.
    expect(parts).toMatchObject({ cycles: 3, on: 240, soak: 360, elapsed: 1440 })
  })
})

describe('emitters', () => {
  it('are just enough for the time', () => {
    fc.assert(
      fc.property(amounts, fc.double({ min: 0.5, max: 8, noNaN: true }), (volume, q) => {
        const n = emittersNeeded({ volume, emitterFlow: litresPerHour(q), maxOn: minutes(10) })
        expect((n * q) / 6).toBeGreaterThanOrEqual(volume * (1 - 1e-6))
        if (n > 1) expect(((n - 1) * q) / 6).toBeLessThan(volume)
      }),
    )
  })
  it('agree with the depth in inches and gallons: 231/144 in/h for 1 gal/h on 1 ft²', () => {
    const rate = applicationRate({ emitterFlow: usGallonsPerHour(1), emitters: 1, area: squareMetres(0.09290304) })
    expect(rate / 25.4).toBeCloseTo(231 / 144, 12)
  })
})

describe('what has no meaning is refused', () => {
  it('names the quantity', () => {
    expectDomainError(() => shotFromUse({ use: litres(1), drainFraction: fraction(1) }), { argument: 'drainFraction' })
    expectDomainError(() => shotShare({ volume: litres(1), substrateVolume: litres(0) }), {
      argument: 'substrateVolume',
    })
    expectDomainError(() => grossIrrigation({ net: litres(1), efficiency: fraction(0) }), { quantity: 'efficiency' })
    expectDomainError(() => soakCycles({ runTime: minutes(3), maxOn: minutes(0), soak: minutes(0) }), {
      quantity: 'longest opening',
    })
    expect(joulesPerSquareCentimetre(1)).toBe(1)
    expect(metresOfWater(10)).toBeCloseTo(98.0665, 9)
  })
})
