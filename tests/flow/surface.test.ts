import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  days,
  fraction,
  gardner1958,
  hours,
  litres,
  maxEvaporationGardner1958,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

const NOTHING = litres(0)
const medium = vanGenuchten1980({
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.05),
  n: 1.6,
})
const square = (height: number) =>
  boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(height) })

describe('a surface that dries', () => {
  it('gives what the air asks for while it is wet, and less and less once the medium no longer keeps up', () => {
    const flow = containerFlowRichards1931({
      container: square(10),
      medium,
      saturatedConductivity: centimetresPerHour(5),
      base: 'closed',
    })
    let state = flow.startAt((height) => centimetresOfSuction(height + 5))
    // 8 mm a day on 100 cm² is 80 mL: an hour of it.
    const asked = 0.08 / 24
    const hourly = Array.from({ length: 240 }, () => {
      const [next, after] = flow.step(state, {
        duration: hours(1),
        applied: NOTHING,
        demand: NOTHING,
        evaporation: litres(asked),
      })
      state = next
      return after.evaporated
    })
    const last = hourly.findIndex((volume) => volume < asked * 0.999)
    expect(last).toBeGreaterThan(5)
    for (const volume of hourly.slice(0, last)) expect(volume).toBeCloseTo(asked, 8)
    for (let k = last + 1; k < hourly.length; k++) expect(hourly[k]).toBeLessThan(hourly[k - 1]! * (1 + 1e-6))
    expect(hourly.at(-1)).toBeLessThan(asked / 4)
  })
  it('gives in the falling stage as much as the root of time, while the drying has not come to the bottom', () => {
    // From a deep column whose surface is kept dry the water leaves like heat from a thick wall (Philip 1957; Gardner 1959, from memory):
    // four times the time gives twice the water. Weight is kept small beside suction: a start of 200 cm, an hour, a fine medium.
    const fine = vanGenuchten1980({
      residual: waterContent(0.1),
      saturated: waterContent(0.6),
      alpha: perCentimetre(0.01),
      n: 1.4,
    })
    const flow = containerFlowRichards1931({
      container: square(30),
      medium: fine,
      saturatedConductivity: centimetresPerHour(0.5),
      base: 'closed',
      nodes: 601,
      tolerance: 1e-5,
    })
    let state = flow.startAt(() => centimetresOfSuction(200))
    const [first, later] = [1, 3].map((time) => {
      // More than any medium gives: the surface is air-dry from the first moments.
      const [next, after] = flow.step(state, {
        duration: hours(time),
        applied: NOTHING,
        demand: NOTHING,
        evaporation: litres(time),
      })
      state = next
      return after.evaporated
    })
    const ratio = 1 + (later as number) / (first as number)
    expect(ratio).toBeGreaterThan(1.94)
    expect(ratio).toBeLessThan(2.06)
  })
  it('comes over a water table to the most that Gardner (1958) lets an exponential medium lift', () => {
    const column = { saturatedConductivity: centimetresPerHour(5), alpha: perCentimetre(0.12), depth: centimetres(30) }
    const flow = containerFlowRichards1931({
      container: square(30),
      medium: gardner1958({ residual: waterContent(0.1), saturated: waterContent(0.6), alpha: column.alpha }),
      saturatedConductivity: column.saturatedConductivity,
      base: centimetresOfSuction(0),
      nodes: 121,
      tolerance: 1e-5,
    })
    let state = flow.startAt((height) => centimetresOfSuction(height))
    let rate = 0
    for (let day = 0; day < 20; day++) {
      const [next, after] = flow.step(state, {
        duration: days(1),
        applied: NOTHING,
        demand: NOTHING,
        evaporation: litres(2.4),
      })
      state = next
      // Litres a day from 100 cm² as mm/h.
      rate = (after.evaporated * 100) / 24
    }
    expect(rate / maxEvaporationGardner1958(column)).toBeGreaterThan(0.97)
    expect(rate / maxEvaporationGardner1958(column)).toBeLessThan(1.03)
  })
})

describe('a surface that cannot take what it is given', () => {
  it('keeps what stands below the rim and lets the rest run off, to the last drop', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (rim, applied) => {
          const flow = containerFlowRichards1931({
            container: square(10),
            medium,
            saturatedConductivity: centimetresPerHour(5),
            base: 'closed',
            rim: centimetres(rim),
          })
          // Full to the surface and closed below: nothing can go in.
          const full = flow.startAt((height) => (centimetresOfSuction(0) - (10 - height)) as never)
          const [brimful, poured] = flow.step(full, {
            duration: minutes(10),
            applied: litres(applied),
            demand: NOTHING,
          })
          const [state, { standing, ranOff }] = flow.step(brimful, {
            duration: hours(1),
            applied: NOTHING,
            demand: NOTHING,
          })
          // A depth on 100 cm² in litres.
          const room = rim / 10
          expect(standing).toBeCloseTo(Math.min(applied, room), 4)
          expect(poured.ranOff + ranOff).toBeCloseTo(Math.max(0, applied - room), 4)
          expect(flow.waterContent(state)).toBeCloseTo(0.9, 4)
        },
      ),
      { numRuns: 20 },
    )
  })
  it('lets the share that runs past a dry medium drain at once, and no more', () => {
    const flow = containerFlowRichards1931({
      container: square(10),
      medium,
      saturatedConductivity: centimetresPerHour(50),
      bypass: fraction(0.2),
    })
    const dry = flow.startFrom(waterContent(0.4))
    const [, after] = flow.step(dry, { duration: minutes(5), applied: litres(0.1), demand: NOTHING })
    expect(after.drained).toBeCloseTo(0.02, 10)
    expect(after.bypassed).toBeCloseTo(0.02, 12)
    expect(after.entered).toBeCloseTo(0.08, 12)
  })
})
