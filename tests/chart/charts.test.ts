import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import {
  calibrateTwoPoint,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  cylinderContainer,
  type DayPlanRequest,
  type DrainEC,
  fitCalibration,
  fitDryDown,
  fitExponentialDryDown,
  hours,
  instant,
  litres,
  perCentimetre,
  percent,
  planDay,
  rawReading,
  timeToRefill,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { chartCalibration, chartDay, chartDrain, chartDryDown, chartPlan, chartRetention } from 'porewater/chart'
import { describe, expect, it } from 'vitest'
import { bagDay, midnight } from '../../docs/tools/bag-day.js'
import { PLOTS } from '../../docs/tools/plots.js'
import { badNumbers, every, parseXml, type XmlElement } from './well-formed.js'

const HOSTILE = `<&"'>]]>`.repeat(20)
const description = (svg: XmlElement) => every(svg).find(({ name }) => name === 'desc')?.text ?? ''
const drawn = (text: string) => {
  const svg = parseXml(text)
  expect(badNumbers(svg)).toEqual([])
  expect(svg.attributes.role).toBe('img')
  expect(every(svg).filter(({ name }) => name === 'desc')).toHaveLength(1)
  return svg
}

describe('the pictures of the guides', () => {
  it.each(Object.keys(PLOTS))(
    '%s is well formed, has axis titles with units and a text alternative with numbers',
    (name) => {
      const text = PLOTS[name]?.() as string
      const svg = drawn(text)
      expect(description(svg)).toMatch(/\d/)
      expect(text).toMatch(/\((?:invented|measured)\)/)
      const titles = every(svg).filter(({ attributes }) => attributes.class === 'quiet')
      expect(titles.length).toBeGreaterThanOrEqual(2)
      expect(text).toMatch(/m³\/m³|dS\/m/)
      // The same picture each time: no clock, no chance.
      expect(PLOTS[name]?.()).toBe(text)
      // What is shown in the guide is what the script draws now.
      expect(readFileSync(new URL(`../../docs/guides/${name}`, import.meta.url), 'utf8')).toBe(`${text}\n`)
    },
  )
})

describe('a retention curve', () => {
  const medium = vanGenuchten1980({
    residual: waterContent(0.12),
    saturated: waterContent(0.93),
    alpha: perCentimetre(0.1),
    n: 1.6,
  })
  const container = cylinderContainer({ diameter: centimetres(20), height: centimetres(18) })
  it('tells the container capacity that the package gives', () => {
    const svg = drawn(chartRetention({ title: HOSTILE, curves: [{ name: HOSTILE, medium }], container }))
    expect(description(svg)).toContain(
      `container capacity ${containerCapacity({ container, medium }).toFixed(3)} m³/m³`,
    )
    // Air at rest by hydrostatics: at the bottom of a drained container there is none.
    expect(description(svg)).toContain('0.930 m³/m³ at the bottom')
  })
  it('draws several media, points without suction, and a container that has dried', () => {
    const sand = vanGenuchten1980({
      residual: waterContent(0.05),
      saturated: waterContent(0.4),
      alpha: perCentimetre(0.08),
      n: 3,
    })
    const svg = drawn(
      chartRetention({
        title: 'two',
        curves: [
          { name: 'coir', medium, points: [{ suction: centimetresOfSuction(0), waterContent: waterContent(0.92) }] },
          { name: 'sand', medium: sand },
        ],
        container,
        bottomSuction: centimetresOfSuction(40),
        porosity: percent(95),
      }),
    )
    expect(description(svg)).toMatch(/mean water content 0\.\d{3}/)
    expect(every(svg).filter(({ name }) => name === 'circle').length).toBeGreaterThanOrEqual(1)
  })
  it('refuses no curve and no range', () => {
    expect(() => chartRetention({ title: '', curves: [] })).toThrow(/at least one medium/)
    const suctions = [centimetresOfSuction(0), centimetresOfSuction(10)] as const
    expect(() => chartRetention({ title: '', curves: [{ name: '', medium }], suctions })).toThrow(/above zero/)
  })
})

describe('a dry-down', () => {
  const time = Array.from({ length: 30 }, (_, i) => 1779148800 + i * 600)
  const straight = time.map((_, i) => (i === 12 ? Number.NaN : 0.6 - 0.002 * i + (i % 2) * 0.0004))
  const draw = (content: number[], fit: Parameters<typeof chartDryDown>[0]['fit'], refill: number) =>
    drawn(
      chartDryDown({
        title: HOSTILE,
        time,
        waterContent: content,
        fit,
        refillPoint: waterContent(refill),
        hoursFromUtc: -7,
        maxStep: 900,
      }),
    )
  it('forecasts the time that the package gives', () => {
    const line = fitDryDown({ time, waterContent: straight })
    const refill = timeToRefill({ line, refillPoint: waterContent(0.52) })
    const svg = draw(straight, line, 0.52)
    expect(description(svg)).toContain('29 readings')
    expect(refill.known && description(svg)).toContain(refill.known ? `${(refill.time / 3600).toFixed(1)} h after` : '')
    expect(every(svg).some(({ text }) => /^refill point at \d\d:\d\d$/.test(text))).toBe(true)
  })
  it('says why there is no forecast', () => {
    const rising = straight.map((value) => 1.1 - value)
    expect(description(draw(rising, fitDryDown({ time, waterContent: rising }), 0.4))).toContain('does not fall')
    const bent = time.map((_, i) => 0.3 + 0.3 * Math.exp(-i / 6))
    const curve = fitExponentialDryDown({ time, waterContent: bent })
    expect(curve.known).toBe(true)
    // The curve nears 0.3 and its floor lies a third of its fall of 0.298 lower.
    expect(description(draw(bent, curve, 0.25))).toContain('nears 0.300 m³/m³')
    expect(description(draw(bent, curve, 0.25))).toContain('stay above 0.201 m³/m³')
    expect(description(draw(bent, curve, 0.25))).toContain('later levels often go below it')
    expect(description(draw(bent, curve, 0.19))).toContain('nine of ten such dry-downs did not reach')
    expect(description(draw(bent, curve, 0.301))).toMatch(/reaches the refill point \d+\.\d h after/)
    const unknown = fitExponentialDryDown({ time, waterContent: straight })
    expect(unknown.known).toBe(false)
    expect(description(draw(straight, unknown, 0.5))).toContain('there is no forecast')
  })
  it('shades what it is given as a band, from the last level to the refill point at its early and its late end', () => {
    const picture = (band: Parameters<typeof chartDryDown>[0]['band']) =>
      drawn(
        chartDryDown({
          title: 'band',
          time,
          waterContent: straight,
          fit: fitDryDown({ time, waterContent: straight }),
          refillPoint: waterContent(0.52),
          hoursFromUtc: 0,
          maxStep: 900,
          ...(band && { band }),
        }),
      )
    const corners = (band: Parameters<typeof picture>[0]) =>
      every(picture(band))
        .filter(({ attributes }) => attributes.class?.startsWith('region'))
        .map(({ attributes }) => (attributes.d?.match(/[\d.]+/g) ?? []).map(Number))
    expect(corners(undefined)).toEqual([])
    const [[x = 0, y = 0, early = 0, refill = 0, late = 0, end = 0] = []] = corners({
      earliest: hours(1),
      latest: hours(4),
    })
    expect((late - x) / (early - x)).toBeCloseTo(4, 2)
    expect(end).toBe(refill)
    expect(refill).toBeGreaterThan(y)
    // A late end beyond two days stays at the level as far as the picture goes.
    const [[, level, , , , open] = []] = corners({ earliest: hours(1) })
    expect(open).toBe(level)
  })
  it('does not stretch its axis to a forecast of years', () => {
    const slow = { slopePerHour: -1e-7, slopeError: 0, rSquared: 1, readings: 30, last: waterContent(0.6) }
    draw(straight, slow, 0.1)
  })
  it('refuses fewer than two readings', () => {
    const fit = fitDryDown({ time, waterContent: straight })
    const most = straight.map((value, i) => (i === 3 ? value : Number.NaN))
    expect(() => draw(most, fit, 0.5)).toThrow(/at least two/)
    expect(() => draw(straight.slice(1), fit, 0.5)).toThrow(/29 values for 30 times/)
  })
})

describe('a calibration', () => {
  const samples = [
    [300, 0.02],
    [520, 0.2],
    [760, 0.41],
    [905, 0.58],
    [1100, 0.78],
  ].map(([r, w]) => ({ reading: rawReading(r as number), waterContent: waterContent(w as number) }))
  it('shows each sample twice: on the curve and as a residual', () => {
    const calibration = fitCalibration({ samples, form: 'line', porosity: percent(92) })
    const svg = drawn(chartCalibration({ title: HOSTILE, calibration, readingTitle: HOSTILE }))
    const diamonds = every(svg).filter(({ name, attributes }) => name === 'path' && attributes.class === 'f3')
    // and once in the legend
    expect(diamonds).toHaveLength(2 * samples.length + 1)
    expect(description(svg)).toContain(`${calibration.statistics?.rmse.toFixed(4)} m³/m³`)
    expect(description(svg)).toContain('reading of 300 to 1100')
  })
  it('draws every form, two points and readings near zero', () => {
    const near = samples.map(({ reading, waterContent: content }) => ({
      reading: rawReading((reading - 300) / 20),
      waterContent: content,
    }))
    for (const form of ['line', 'square-root', 'quadratic', 'cubic', 'monotone-cubic'] as const) {
      drawn(
        chartCalibration({ title: form, calibration: fitCalibration({ samples, form }), readingTitle: 'reading, mV' }),
      )
    }
    drawn(
      chartCalibration({
        title: 'root',
        calibration: fitCalibration({ samples: near, form: 'square-root' }),
        readingTitle: 'V',
      }),
    )
    const [dry, , , , saturated] = samples as unknown as [
      (typeof samples)[number],
      unknown,
      unknown,
      unknown,
      (typeof samples)[number],
    ]
    const two = chartCalibration({
      title: 'two',
      calibration: calibrateTwoPoint({ dry, saturated }),
      readingTitle: 'mV',
    })
    expect(description(drawn(two))).toContain('which any curve meets')
  })
})

const request: DayPlanRequest = {
  ...bagDay,
  demand: new Array(144).fill(0.02),
  drainFraction: percent(20),
  lastShot: instant(midnight + 17 * 3600),
  maxPerDay: litres(8),
}

describe('a plan against its outcome', () => {
  const plan = planDay(request)
  const base = { title: HOSTILE, plan, hoursFromUtc: 2, maxStep: 900 }
  it('is a picture without an outcome too', () => {
    const svg = drawn(chartPlan(base))
    const bars = every(svg).filter(({ name, attributes }) => name === 'rect' && /bar1/.test(attributes.class ?? ''))
    expect(bars).toHaveLength(plan.shots.length)
    expect(description(svg)).toContain(`${plan.shots.length} shots planned, ${Math.round(plan.applied * 1000)} mL`)
  })
  it('tells how far the readings were from the plan', () => {
    const readings = {
      time: plan.time,
      waterContent: plan.waterContent.map((value, i) => (i === 40 ? Number.NaN : value - 0.013)),
    }
    const given = plan.shots.map(({ time }) => ({ time: time as number, millilitres: 100 }))
    const svg = drawn(chartPlan({ ...base, readings, given, request }))
    expect(description(svg)).toContain('at most −1.3 points')
    expect(description(svg)).toContain(`${given.length} shots given, ${100 * given.length} mL`)
  })
  it('takes readings from outside the plan, and none', () => {
    const time = [0, 1779148800 - 600, 1779148800 + 3000, 1779148800 + 9e6]
    drawn(chartPlan({ ...base, readings: { time, waterContent: [0.5, 0.6, Number.NaN, 0.6] } }))
    drawn(chartPlan({ ...base, readings: { time: [], waterContent: [] }, given: [] }))
    expect(() => chartPlan({ ...base, plan: { ...plan, time: [0] } })).toThrow(/at least two/)
  })
})

describe('drain and salt, and a day', () => {
  it('tell means and ends, and take missing days', () => {
    const days = [0.5, 1.5, 2.5, 6.5].map((day) => day * 86400)
    const svg = drawn(
      chartDrain({
        title: HOSTILE,
        time: days,
        drainFraction: [0.2, Number.NaN, 0.3, 0.1],
        feedEC: [2, 2.1, 2.2, 2.3],
        drainEC: [3, 3.5, Number.NaN, 4],
        wantedFraction: percent(25),
        maxDrainEC: 4.5 as DrainEC,
        hoursFromUtc: 5.5,
      }),
    )
    expect(description(svg)).toContain('on average 20.0 % drained, wanted 25 %')
    expect(description(svg)).toContain('EC of the drain 3.00 dS/m at first, 4.00 at last')
    // The line of the drain breaks at the missing day.
    const [path] = every(svg).filter(({ name, attributes }) => name === 'path' && attributes.class === 'line c1')
    expect(path?.attributes.d?.match(/M/g)).toHaveLength(2)
    expect(() =>
      chartDrain({ title: '', time: [], drainFraction: [], feedEC: [], drainEC: [], hoursFromUtc: 0 }),
    ).toThrow(/at least one/)
    drawn(
      chartDrain({
        title: 'one',
        time: [43200],
        drainFraction: [Number.NaN],
        feedEC: [Number.NaN],
        drainEC: [Number.NaN],
        hoursFromUtc: 0,
      }),
    )
  })
  it('are well formed for any readings', () => {
    const value = fc.oneof(fc.double({ min: -1, max: 2, noNaN: true }), fc.constantFrom(Number.NaN, Infinity, 1e308))
    fc.assert(
      fc.property(fc.array(value, { minLength: 2, maxLength: 30 }), fc.string({ unit: 'binary' }), (values, title) => {
        const time = values.map((_, i) => i * 600)
        drawn(
          chartDay({
            title,
            time,
            waterContent: [
              { name: title, value: values },
              { name: 'b', value: values },
            ],
            shots: [{ time: 900, millilitres: 100 }],
            hoursFromUtc: 0,
            maxStep: 650,
          }),
        )
      }),
      { numRuns: 60 },
    )
  })
})
