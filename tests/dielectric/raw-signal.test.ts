import {
  apparentPermittivityLossy,
  type Frequency,
  fitScaledFrequency,
  type Length,
  type MeasuredEC,
  type Permittivity,
  permittivityFromApparentLength,
  permittivityFromTravelTime,
  permittivityOfRefractiveIndex,
  rawReading,
  refractiveIndex,
  scaledFrequency,
  scaledFrequencyPaltineanuStarr1997,
  travelTimeFromPermittivity,
  type WaterContent,
  waterContentPaltineanuStarr1997,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

// Rows give lengths in m and conductivity in S/m.
checkPublished('dielectric', 'tdr.permittivity', ({ travel_time, rod_length }) => ({
  eps: permittivityFromTravelTime({ travelTime: travel_time, rodLength: (rod_length * 100) as Length }),
}))
checkPublished('dielectric', 'tdr.travel_time', ({ eps, rod_length }) => ({
  travel_time: travelTimeFromPermittivity({ apparent: eps, rodLength: (rod_length * 100) as Length }),
}))
checkPublished('dielectric', 'tdr.apparent_length', ({ apparent_length, rod_length, v_p }) => ({
  eps: permittivityFromApparentLength({
    apparentLength: (apparent_length * 100) as Length,
    rodLength: (rod_length * 100) as Length,
    propagationVelocity: v_p,
  }),
}))
checkPublished('dielectric', 'tdr.lossy', ({ eps_real, eps_imag, sigma_dc, frequency }) => {
  const { apparent, lossTangent } = apparentPermittivityLossy({
    real: eps_real,
    loss: eps_imag,
    conductivity: (sigma_dc * 10) as MeasuredEC,
    frequency,
  })
  return { loss_tangent: lossTangent, eps_apparent: apparent }
})
checkPublished('dielectric', 'raw.refractive_index', ({ eps_real, eps_imag }) => {
  const { index, extinction } = refractiveIndex({ real: eps_real, loss: eps_imag })
  return { n: index, kappa: extinction }
})
checkPublished('dielectric', 'raw.scaled_frequency', ({ f_air, f_medium, f_water }) => ({
  sf: scaledFrequency({ air: f_air, medium: f_medium, water: f_water }),
}))
checkPublished('dielectric', 'raw.scaled_frequency.theta', ({ sf, a, b }) => ({
  theta: waterContentPaltineanuStarr1997({ scaled: sf, factor: a, exponent: b }),
}))
checkPublished('dielectric', 'raw.scaled_frequency.fit', ({ sf, theta }) => {
  const { factor, exponent } = fitScaledFrequency({ scaled: sf, waterContents: theta })
  return { a: factor, b: exponent }
})

describe('travel time', () => {
  itIsUndone('it', { e: [1, 90], rodLength: [1, 100] }, 'e', ({ e, rodLength }) => {
    const rods = { rodLength: rodLength as Length, apparent: e as Permittivity }
    return permittivityFromTravelTime({ ...rods, travelTime: travelTimeFromPermittivity(rods) })
  })
  itRises('it', 1, 90, (e) => travelTimeFromPermittivity({ apparent: e as Permittivity, rodLength: 15 as Length }))
  it('refuses a pulse that is faster than light', () => {
    expectDomainError(() => permittivityFromTravelTime({ travelTime: 0.5e-9 as never, rodLength: 15 as Length }), {
      quantity: 'apparent permittivity',
      min: 1,
    })
  })
})

describe('refractive index', () => {
  itIsUndone(
    'its real part',
    { index: [0.5, 10], extinction: [0, 10] },
    'index',
    (x) => refractiveIndex(permittivityOfRefractiveIndex(x)).index,
    0,
    ({ index, extinction }) => index > extinction,
  )
  itIsUndone(
    'the loss',
    { real: [1e-3, 100], loss: [0, 1000] },
    'loss',
    (x) => permittivityOfRefractiveIndex(refractiveIndex(x)).loss,
  )
  it('squares to the permittivity at whole numbers (independent oracle)', () => {
    // (5 - 2i)² = 21 - 20i
    expect(refractiveIndex({ real: 21, loss: 20 })).toEqual({ index: 5, extinction: 2 })
  })
})

describe('a medium that conducts', () => {
  const medium = { real: 30, loss: 2, conductivity: 1 as MeasuredEC, frequency: 70e6 as Frequency }
  it('is the square of the refractive index (independent oracle: the phase velocity)', () => {
    const { apparent, lossTangent } = apparentPermittivityLossy(medium)
    expect(refractiveIndex({ real: 30, loss: 30 * lossTangent }).index ** 2).toBeCloseTo(apparent, 10)
  })
  it('reads its real part when it loses nothing', () => {
    expect(apparentPermittivityLossy({ ...medium, loss: 0, conductivity: 0 as MeasuredEC }).apparent).toBe(30)
  })
  itRises(
    'its reading',
    0,
    10,
    (ec) => apparentPermittivityLossy({ ...medium, conductivity: ec as MeasuredEC }).apparent,
  )
})

describe('scaled frequency', () => {
  itIsUndone(
    'its power law',
    { scaled: [0, 2], factor: [0.1, 1], exponent: [0.5, 4] },
    'scaled',
    (x) => scaledFrequencyPaltineanuStarr1997({ ...x, waterContent: waterContentPaltineanuStarr1997(x) }),
    1,
    (x) => (x.scaled === 0 || x.scaled > 1e-3) && x.factor * x.scaled ** x.exponent < 1,
  )
  it('is the same for counts that rise and that fall with water', () => {
    const falling = scaledFrequency({ air: rawReading(150), medium: rawReading(120), water: rawReading(100) })
    const rising = scaledFrequency({ air: rawReading(0), medium: rawReading(300), water: rawReading(500) })
    expect(falling).toBe(0.6)
    expect(rising).toBe(0.6)
  })
  it('refuses air and water that read the same', () => {
    expectInputError(
      () => scaledFrequency({ air: rawReading(1), medium: rawReading(1), water: rawReading(1) }),
      'air, water',
    )
  })
  it('fits exactly what lies on a power law (independent oracle)', () => {
    const scaled = [0.25, 0.5, 1]
    // 0.5 S²: 1/32, 1/8, 1/2
    const fit = fitScaledFrequency({ scaled, waterContents: [0.03125, 0.125, 0.5] as WaterContent[] })
    expect(fit.factor).toBeCloseTo(0.5, 14)
    expect(fit.exponent).toBeCloseTo(2, 14)
  })
  it('refuses samples that fix no curve', () => {
    expectInputError(
      () => fitScaledFrequency({ scaled: [0.5], waterContents: [0.1] as WaterContent[] }),
      'scaled, waterContents',
    )
    expectInputError(() => fitScaledFrequency({ scaled: [0.5, 0.6], waterContents: [0.1] as WaterContent[] }), 'scaled')
    expectInputError(
      () => fitScaledFrequency({ scaled: [0.5, 0.5], waterContents: [0.1, 0.2] as WaterContent[] }),
      'scaled',
    )
  })
})
