import fc from 'fast-check'
import {
  adjustedDepletionFraction,
  basalCoefficientFromLeafArea,
  cropCoefficient,
  daysOfWater,
  decisiemensPerMetre,
  effectiveCover,
  evaporationCoefficient,
  evaporationReduction,
  exposedWettedShare,
  extractECFromLeaching,
  fieldLeachingRequirement,
  fraction,
  interceptedFraction,
  kilopascalsPerKelvin,
  layeredWater,
  leafAreaIndex,
  metres,
  metresPerSecond,
  millimetresOfDepth,
  millimetresPerDay,
  percent,
  type ReferenceET,
  readilyAvailableWater,
  rootZoneBalance,
  rootZoneDepletion,
  saltAndWaterStress,
  sparseBasalCoefficient,
  stomatalControlFactor,
  surfaceBalance,
  tabledCoverFao56,
  tabledSoilFao56,
  tabledWettedShareFao56,
  thinStandCoefficient,
  totalAvailableWater,
  totalEvaporableWater,
  waterContent,
  waterStressCoefficient,
  yieldUnderSalt,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const share = <T = never>(value: number) => fraction(value) as T
const mm = millimetresOfDepth
const kc = cropCoefficient
const ec = (value: number) => decisiemensPerMetre(value) as never

// Days of weather and water, dry ones and wet ones.
const surfaceDays = fc.array(
  fc.record({
    et: between(0.1, 12),
    rain: fc.oneof(fc.constant(0), between(0, 60)),
    water: fc.oneof(fc.constant(0), between(0, 60)),
    basal: between(0, 1.15),
    cover: between(0, 1),
    wetted: between(0.01, 1),
    drip: fc.boolean(),
  }),
  { minLength: 1, maxLength: 120 },
)

describe('the balance of the surface layer', () => {
  it('loses no water over any series (mass balance), and keeps within its bounds', () => {
    fc.assert(
      fc.property(surfaceDays, between(6, 40), between(0, 0.95), between(0, 1), (days, total, early, start) => {
        const startDepletion = start * total
        const got = surfaceBalance({
          totalEvaporable: mm(total),
          readilyEvaporable: mm(early * total),
          startDepletion: mm(startDepletion),
          days: days.map((day) => ({
            referenceET: millimetresPerDay(day.et),
            rain: mm(day.rain),
            irrigationOnWetted: mm(day.water),
            basalCoefficient: kc(day.basal),
            maxCoefficient: kc(1.2),
            cover: share(day.cover),
            wettedShare: share(day.wetted),
            drip: day.drip,
          })),
        })
        // Added up here for a square metre of the wetted ground: what came in, less what left, is the change of what is stored.
        let stored = -startDepletion
        got.forEach((result, i) => {
          const day = days[i]!
          const evaporated = result.evaporation / result.exposedWetted
          stored += day.rain + day.water - result.percolation - evaporated
          expect(Math.abs(-result.depletionAtEnd - stored)).toBeLessThan(1e-9)
          expect(result.depletionAtStart).toBeGreaterThanOrEqual(0)
          expect(result.depletionAtEnd).toBeLessThanOrEqual(total + 1e-9)
          expect(result.reduction).toBeGreaterThanOrEqual(0)
          expect(result.reduction).toBeLessThanOrEqual(1)
          expect(result.exposedWetted).toBeGreaterThanOrEqual(0.01)
          expect(result.exposedWetted).toBeLessThanOrEqual(1)
          expect(result.evaporation).toBeGreaterThanOrEqual(0)
          expect(result.cropCoefficient).toBeLessThanOrEqual(1.2 + 1e-12)
          expect(result.cropET).toBeCloseTo(day.basal * day.et + result.evaporation, 9)
        })
      }),
      { numRuns: 200 },
    )
  })
  it('evaporates less every day while nothing comes', () => {
    const got = surfaceBalance({
      totalEvaporable: mm(20),
      readilyEvaporable: mm(8),
      startDepletion: mm(0),
      days: Array.from({ length: 30 }, () => ({
        referenceET: millimetresPerDay<ReferenceET>(5),
        rain: mm(0),
        irrigationOnWetted: mm(0),
        basalCoefficient: kc(0.15),
        maxCoefficient: kc(1.2),
        cover: share(0.05),
        wettedShare: share(1),
      })),
    })
    got.slice(1).forEach((day, i) => {
      expect(day.evaporation).toBeLessThanOrEqual(got[i]?.evaporation as number)
    })
    expect(got.at(-1)?.depletionAtEnd).toBeGreaterThan(19.9)
  })
  it('refuses layers and days without meaning', () => {
    const day = {
      referenceET: millimetresPerDay<ReferenceET>(5),
      rain: mm(0),
      irrigationOnWetted: mm(0),
      basalCoefficient: kc(0.3),
      maxCoefficient: kc(1.2),
      cover: share(0.1),
      wettedShare: share(0.5),
    } as const
    const layer = { totalEvaporable: mm(20), readilyEvaporable: mm(8), days: [day] } as const
    expectInputError(() => surfaceBalance({ ...layer, readilyEvaporable: mm(20) }), 'readilyEvaporable')
    expectInputError(() => surfaceBalance({ ...layer, days: [{ ...day, maxCoefficient: kc(0.2) }] }), 'maxCoefficient')
    expectDomainError(() => surfaceBalance({ ...layer, days: [{ ...day, rain: Number.NaN as never }] }), { unit: 'mm' })
    expectDomainError(() => surfaceBalance({ ...layer, days: [{ ...day, wettedShare: 0 as never }] }), {})
    expectDomainError(() => surfaceBalance({ ...layer, days: [{ ...day, referenceET: 0 as never }] }), { unit: 'mm/d' })
    expect(surfaceBalance({ ...layer, days: [] })).toEqual([])
  })
})

const rootDays = fc.array(
  fc.record({
    et: between(0.1, 12),
    basal: between(0, 1.2),
    soil: between(0, 0.5),
    rain: fc.oneof(fc.constant(0), between(0, 80)),
    water: fc.oneof(fc.constant(0), between(0, 80)),
    rise: between(0, 2),
  }),
  { minLength: 1, maxLength: 120 },
)

describe('the balance of the root zone', () => {
  it('loses no water over any series (mass balance), and keeps within its bounds', () => {
    fc.assert(
      fc.property(rootDays, between(0.1, 0.8), between(0, 1), fc.boolean(), (days, p, start, adjust) => {
        const total = 10 * (0.32 - 0.12) * 80
        const got = rootZoneBalance({
          fieldCapacity: waterContent(0.32),
          wiltingPoint: waterContent(0.12),
          depletionFraction: share(p),
          adjustDepletionFraction: adjust,
          startDepletion: mm(start * total),
          days: days.map((day) => ({
            referenceET: millimetresPerDay(day.et),
            basalCoefficient: kc(day.basal),
            evaporationCoefficient: kc(day.soil),
            rain: mm(day.rain),
            irrigation: mm(day.water),
            capillaryRise: mm(day.rise),
            rootDepth: metres(0.8),
          })),
        })
        let stored = -start * total
        got.forEach((result, i) => {
          const day = days[i]!
          stored += day.rain + day.water + day.rise - result.percolation - result.cropET
          expect(Math.abs(-result.depletionAtEnd - stored)).toBeLessThan(1e-9)
          expect(result.depletionAtEnd).toBeLessThanOrEqual(total + 1e-9)
          expect(result.stress).toBeGreaterThanOrEqual(0)
          expect(result.stress).toBeLessThanOrEqual(1)
          expect(result.cropET).toBeLessThanOrEqual((day.basal + day.soil) * day.et + 1e-12)
          if (result.depletionAtStart <= result.readilyAvailable) expect(result.stress).toBe(1)
          expect(result.cropCoefficient * day.et).toBeCloseTo(result.cropET, 9)
        })
      }),
      { numRuns: 200 },
    )
  })
  it('never transpires more for less rain', () => {
    fc.assert(
      fc.property(between(0, 30), between(0, 30), (rain, more) => {
        const at = (first: number) =>
          rootZoneBalance({
            fieldCapacity: waterContent(0.3),
            wiltingPoint: waterContent(0.1),
            depletionFraction: share(0.4),
            startDepletion: mm(80),
            days: Array.from({ length: 20 }, (_, i) => ({
              referenceET: millimetresPerDay(6),
              basalCoefficient: kc(1.1),
              rain: mm(i === 0 ? first : 0),
              rootDepth: metres(0.6),
            })),
          }).reduce((sum, day) => sum + day.cropET, 0)
        expect(at(rain + more)).toBeGreaterThanOrEqual(at(rain) - 1e-9)
      }),
    )
  })
  it('refuses swapped water contents and missing numbers', () => {
    const day = {
      referenceET: millimetresPerDay<ReferenceET>(5),
      basalCoefficient: kc(1),
      rootDepth: metres(0.5),
    } as const
    const soil = {
      fieldCapacity: waterContent(0.3),
      wiltingPoint: waterContent(0.1),
      depletionFraction: share(0.4),
      startDepletion: mm(10),
      days: [day],
    } as const
    expectInputError(() => rootZoneBalance({ ...soil, wiltingPoint: waterContent(0.3) }), 'wiltingPoint')
    expectDomainError(() => rootZoneBalance({ ...soil, startDepletion: Number.NaN as never }), { unit: 'mm' })
    expectDomainError(() => rootZoneBalance({ ...soil, days: [{ ...day, rootDepth: 0 as never }] }), { unit: 'cm' })
    expectDomainError(() => rootZoneBalance({ ...soil, days: [{ ...day, irrigation: -1 as never }] }), { unit: 'mm' })
  })
})

describe('stress and drying', () => {
  it('keeps Ks and Kr between 0 and 1, falling with depletion, 1 up to the ready part and 0 at the whole', () => {
    fc.assert(
      fc.property(between(1, 300), between(0, 0.99), between(0, 400), between(0, 50), (total, p, dry, more) => {
        const ks = (depletion: number) =>
          waterStressCoefficient({ totalAvailable: mm(total), depletion: mm(depletion), depletionFraction: share(p) })
        const kr = (depletion: number) =>
          evaporationReduction({
            totalEvaporable: mm(total),
            readilyEvaporable: mm(p * total),
            depletion: mm(depletion),
          })
        for (const of of [ks, kr]) {
          expect(of(dry)).toBeGreaterThanOrEqual(0)
          expect(of(dry)).toBeLessThanOrEqual(1)
          expect(of(dry + more)).toBeLessThanOrEqual(of(dry))
          expect(of(total)).toBe(0)
          expect(of(0.999 * p * total)).toBe(1)
        }
        // The two are one line with other names.
        expect(ks(dry)).toBeCloseTo(kr(dry), 9)
      }),
    )
  })
  it('agrees with itself across available water, depletion and days', () => {
    fc.assert(
      fc.property(between(0.2, 0.5), between(0.01, 0.19), between(0.1, 2), between(0.1, 0.6), (fc1, wp, depth, p) => {
        const zone = { fieldCapacity: waterContent(fc1), wiltingPoint: waterContent(wp), rootDepth: metres(depth) }
        const total = totalAvailableWater(zone)
        expect(rootZoneDepletion({ ...zone, waterContent: waterContent(wp) })).toBeCloseTo(total, 9)
        const layer = { ...zone, waterContent: waterContent(wp), thickness: metres(depth / 2) }
        const both = layeredWater([layer, layer])
        expect(both.totalAvailable).toBeCloseTo(total, 9)
        expect(both.depletion).toBeCloseTo(total, 9)
        const ready = readilyAvailableWater({ totalAvailable: total, depletionFraction: share(p) })
        const days = daysOfWater({ available: ready, cropET: millimetresPerDay(4) })
        expect(days * 4).toBeCloseTo(p * total, 9)
      }),
    )
  })
  it('moves the depletion fraction against demand, within 0.1 and 0.8', () => {
    fc.assert(
      fc.property(between(0, 0.99), between(0, 60), between(0, 20), (tabled, demand, more) => {
        const at = (et: number) => adjustedDepletionFraction({ tabled: share(tabled), cropET: millimetresPerDay(et) })
        expect(at(demand)).toBeGreaterThanOrEqual(0.1)
        expect(at(demand)).toBeLessThanOrEqual(0.8)
        expect(at(demand + more)).toBeLessThanOrEqual(at(demand))
      }),
    )
  })
  it('refuses what has no meaning', () => {
    expectDomainError(
      () => waterStressCoefficient({ totalAvailable: mm(0), depletion: mm(0), depletionFraction: share(0.5) }),
      {
        unit: 'mm',
      },
    )
    expectDomainError(
      () => waterStressCoefficient({ totalAvailable: mm(9), depletion: mm(0), depletionFraction: 1 as never }),
      {},
    )
    expectInputError(
      () => evaporationReduction({ totalEvaporable: mm(9), readilyEvaporable: mm(9), depletion: mm(0) }),
      'readilyEvaporable',
    )
    expectInputError(() => layeredWater([]), 'layers')
    expectDomainError(() => daysOfWater({ available: mm(9), cropET: 0 as never }), { unit: 'mm/d' })
    expectInputError(
      () =>
        totalEvaporableWater({ fieldCapacity: waterContent(0.1), wiltingPoint: waterContent(0.3), depth: metres(0.1) }),
      'fieldCapacity',
    )
  })
})

describe('what evaporates from the ground', () => {
  it('keeps the exposed and wetted share between 0.01 and 1, less with more cover and under drippers', () => {
    fc.assert(
      fc.property(between(0, 1), between(0.001, 1), between(0, 0.3), (cover, wetted, more) => {
        const at = (c: number, drip = false) =>
          exposedWettedShare({ cover: share(Math.min(1, c)), wettedShare: share(wetted), drip })
        expect(at(cover)).toBeGreaterThanOrEqual(0.01)
        expect(at(cover)).toBeLessThanOrEqual(1)
        expect(at(cover + more)).toBeLessThanOrEqual(at(cover))
        expect(at(cover, true)).toBeLessThanOrEqual(at(cover))
      }),
    )
  })
  it('never lifts the sum of the coefficients above the highest', () => {
    fc.assert(
      fc.property(between(0, 1.2), between(0, 1), between(0.01, 1), (basal, reduction, exposed) => {
        const got = evaporationCoefficient({
          basalCoefficient: kc(basal),
          maxCoefficient: kc(1.2),
          reduction: share(reduction),
          exposedWetted: share(exposed),
        })
        expect(got).toBeGreaterThanOrEqual(0)
        expect(basal + got).toBeLessThanOrEqual(1.2 + 1e-12)
        expect(got).toBeLessThanOrEqual(exposed * 1.2 + 1e-12)
      }),
    )
    expectInputError(
      () => evaporationCoefficient({ basalCoefficient: kc(1.3), maxCoefficient: kc(1.2), exposedWetted: share(0.5) }),
      'maxCoefficient',
    )
  })
})

describe('salt', () => {
  const crop = { thresholdEC: ec(2.5), lossPerDecisiemens: 9.9 }
  it('costs nothing below the threshold, more above it, and never more than all', () => {
    fc.assert(
      fc.property(between(0, 20), between(0, 5), (salt, more) => {
        const at = (value: number) => yieldUnderSalt({ ...crop, extractEC: ec(value) })
        expect(at(salt)).toBeGreaterThanOrEqual(0)
        expect(at(salt + more)).toBeLessThanOrEqual(at(salt))
        if (salt <= 2.5) expect(at(salt)).toBe(1)
        else if (salt < 2.5 + 100 / 9.9 - 1e-9) expect(at(salt)).toBeLessThan(1)
        else if (salt > 2.5 + 100 / 9.9 + 1e-9) expect(at(salt)).toBe(0)
      }),
    )
  })
  it('and dryness together are the product of both alone', () => {
    fc.assert(
      fc.property(between(0, 15), between(20, 300), between(0.1, 0.9), between(0, 400), (salt, total, p, dry) => {
        const at = (value: number, depletion: number) =>
          saltAndWaterStress({
            ...crop,
            extractEC: ec(value),
            yieldResponse: 1.05,
            totalAvailable: mm(total),
            readilyAvailable: mm(p * total),
            depletion: mm(depletion),
          })
        expect(at(salt, dry)).toBeCloseTo(at(salt, 0) * at(0, dry), 12)
        const alone = waterStressCoefficient({
          totalAvailable: mm(total),
          depletion: mm(dry),
          depletionFraction: share(p),
        })
        expect(at(0, dry)).toBeCloseTo(alone, 9)
      }),
    )
  })
  it('leaching requirement and extract: what the one asks for the other confirms', () => {
    fc.assert(
      fc.property(between(0.1, 9), between(0.01, 0.9), (water, drained) => {
        const extract = extractECFromLeaching({ leachingFraction: share(drained), irrigationEC: ec(water) })
        // LR = ECw / (5 ECe - ECw) is the inverse of ECe = (1 + LF) / LF · ECw / 5 exactly.
        expect(fieldLeachingRequirement({ irrigationEC: ec(water), extractEC: extract })).toBeCloseTo(drained, 9)
      }),
    )
    expectInputError(() => fieldLeachingRequirement({ irrigationEC: ec(5), extractEC: ec(2) }), 'irrigationEC')
    expectDomainError(() => extractECFromLeaching({ leachingFraction: 0 as never, irrigationEC: ec(1) }), {})
    expectDomainError(() => yieldUnderSalt({ ...crop, extractEC: Number.NaN as never }), { unit: 'dS/m' })
  })
})

describe('sparse cover', () => {
  it('rises with cover from the lowest coefficient and never passes the dense stand', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 0.4), between(0.1, 6), (cover, more, height) => {
        const at = (c: number) =>
          sparseBasalCoefficient({
            cover: share(Math.min(1, c)),
            effectiveCover: share(Math.min(1, c)),
            height: metres(height),
            windSpeed: metresPerSecond(2),
            minHumidity: percent(45),
          })
        expect(at(cover).coefficient).toBeGreaterThanOrEqual(0.15 - 1e-12)
        expect(at(cover).coefficient).toBeLessThanOrEqual(at(cover).fullCover + 1e-12)
        expect(at(cover + more).coefficient).toBeGreaterThanOrEqual(at(cover).coefficient - 1e-12)
        const thin = (c: number) => thinStandCoefficient({ coefficient: kc(1.1), cover: share(Math.min(1, c)) })
        expect(thin(cover)).toBeGreaterThanOrEqual(0)
        expect(thin(cover + more)).toBeGreaterThanOrEqual(thin(cover))
        expect(thin(1)).toBeCloseTo(1.1, 12)
      }),
    )
  })
  it('from leaf area lies between bare soil and full cover, and agrees with the share of light that leaves catch', () => {
    fc.assert(
      fc.property(between(0.01, 10), between(0.3, 1.3), (leaves, full) => {
        const at = (leafArea: number) =>
          basalCoefficientFromLeafArea({ fullCoverCoefficient: kc(full), leafArea: leafAreaIndex(leafArea) })
        const caught = interceptedFraction({ leafArea: leafAreaIndex(leaves), extinction: 0.7 })
        expect(at(leaves)).toBeCloseTo(0.15 + (full - 0.15) * caught, 12)
        expect(at(leaves + 0.1)).toBeGreaterThanOrEqual(at(leaves))
        expect(at(leaves)).toBeLessThanOrEqual(full)
        // FAO-56, below Eq. 97: from a leaf area index of 3 on nearly that of full cover.
        if (leaves > 3) expect(at(leaves) / full).toBeGreaterThan(0.87)
      }),
    )
    expectDomainError(() => basalCoefficientFromLeafArea({ fullCoverCoefficient: kc(1), leafArea: 0 as never }), {})
  })
  it('shades more the lower the sun and the taller the rows', () => {
    fc.assert(
      fc.property(between(0, 1), between(0.1, 1.5), between(0, 5), (cover, sun, tall) => {
        const at = (elevation: number, heightOverWidth: number) =>
          effectiveCover({ cover: share(cover), sunElevation: elevation, heightOverWidth })
        expect(at(sun, tall)).toBeGreaterThanOrEqual(cover)
        expect(at(sun, tall)).toBeLessThanOrEqual(1)
        expect(at(sun * 0.9, tall)).toBeGreaterThanOrEqual(at(sun, tall))
        expect(at(sun, tall + 0.1)).toBeGreaterThanOrEqual(at(sun, tall))
        expect(effectiveCover({ cover: share(cover), sunElevation: Math.PI / 2 })).toBeCloseTo(cover, 9)
      }),
    )
  })
  it('of trees that hold their water is below one and falls with their resistance', () => {
    fc.assert(
      fc.property(between(0.05, 0.4), between(0.1, 10), between(100, 2000), (slope, wind, resistance) => {
        const at = (leafResistance: number) =>
          stomatalControlFactor({
            slope: kilopascalsPerKelvin(slope),
            psychrometricConstant: kilopascalsPerKelvin(0.066),
            windSpeed: metresPerSecond(wind),
            leafResistance,
          })
        expect(at(100)).toBeCloseTo(1, 12)
        expect(at(resistance)).toBeLessThanOrEqual(1 + 1e-12)
        expect(at(resistance + 10)).toBeLessThan(at(resistance))
      }),
    )
  })
  it('refuses covers that contradict each other', () => {
    expectInputError(
      () => thinStandCoefficient({ coefficient: kc(1), cover: share(0.8), denseCover: share(0.5) }),
      'cover',
    )
    expectDomainError(() => effectiveCover({ cover: share(0.5), sunElevation: 0 }), { unit: 'rad' })
    expectDomainError(() => thinStandCoefficient({ coefficient: kc(1), cover: share(0.5), exponent: 2 }), {})
  })
})

describe('tables of soil and ground', () => {
  // FAO-56 Table 19 and Eq. 73: TEW printed for 0.10 m lies within what the printed water contents allow.
  it.each(['sand', 'loamy sand', 'sandy loam', 'loam', 'silt loam', 'silt', 'silt clay loam', 'silty clay', 'clay'])(
    'agree with the equation of evaporable water: %s',
    (name) => {
      const soil = tabledSoilFao56(name)
      const most = totalEvaporableWater({
        fieldCapacity: soil.fieldCapacity[1],
        wiltingPoint: soil.wiltingPoint[0],
        depth: metres(0.1),
      })
      const least = totalEvaporableWater({
        fieldCapacity: soil.fieldCapacity[0],
        wiltingPoint: soil.wiltingPoint[1],
        depth: metres(0.1),
      })
      // Printed in whole millimetres.
      expect(soil.totalEvaporable[0]).toBeGreaterThanOrEqual(least - 0.5)
      expect(soil.totalEvaporable[1]).toBeLessThanOrEqual(most + 0.5)
      expect(soil.readilyEvaporable[1]).toBeLessThan(soil.totalEvaporable[1])
      // Difference of water contents: the two ends of a range belong to the same soil; 0.02 forgives rounding of both.
      soil.available.forEach((available, end) => {
        expect(available).toBeGreaterThanOrEqual(soil.fieldCapacity[0] - soil.wiltingPoint[1])
        expect(available).toBeLessThanOrEqual(soil.fieldCapacity[1] - soil.wiltingPoint[0])
        expect(soil.fieldCapacity[end as 0 | 1]).toBeGreaterThan(soil.wiltingPoint[end as 0 | 1])
      })
    },
  )
  it('give the shares that FAO-56 Tables 20 and 21 print', () => {
    expect(tabledWettedShareFao56('sprinkler')).toEqual([1, 1])
    expect(tabledWettedShareFao56('alternate-furrows')).toEqual([0.3, 0.5])
    expect(tabledCoverFao56('initial')).toEqual([0, 0.1])
    expect(tabledCoverFao56('mid-season')).toEqual([0.8, 1])
    expectInputError(() => tabledSoilFao56('moon dust'), 'soil')
    expectInputError(() => tabledWettedShareFao56('toString' as never), 'wetting')
    expectInputError(() => tabledCoverFao56('' as never), 'stage')
  })
})
