import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerFlowRichards1931,
  explainFlowFinding,
  type FlowStep,
  fitMediumToRecord,
  fraction,
  litres,
  type MediumFit,
  type MediumGuess,
  type MediumNumber,
  type MediumRecord,
  minutes,
  perCentimetre,
  probeReading,
  seconds,
  type Volume,
  vanGenuchten1980,
  type WaterContent,
  type WaterContentChange,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { cases, limits } from './method-of-lines-cases.js'

/** A small slab of an invented medium that is given three shots. */
const container = boxContainer({ length: centimetres(50), width: centimetres(15), height: centimetres(10) })
const truth: MediumGuess = {
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.1),
  n: 1.8,
  saturatedConductivity: centimetresPerHour(100),
}
const steps: FlowStep[] = Array.from({ length: 3 }, () =>
  [3, 4, 8, 15].map((time, k) => ({
    duration: minutes(time),
    applied: litres(k === 0 ? 0.3 : 0),
    demand: litres(0),
  })),
).flat()
const probe = { height: centimetres(6), sensedHeight: centimetres(4) }
const start = waterContent(0.75)
const rough = { nodes: 9, tolerance: 1e-3 }

function exact(medium: MediumGuess, start: WaterContent, during: readonly FlowStep[] = steps) {
  const flow = containerFlowRichards1931({
    container,
    medium: vanGenuchten1980(medium),
    saturatedConductivity: medium.saturatedConductivity,
    bypass: medium.bypass ?? fraction(0),
    ...rough,
  })
  let state = flow.startFrom(start)
  const drained: Volume[] = []
  const readings: WaterContent[] = []
  for (const step of during) {
    const [next, after] = flow.step(state, step)
    state = next
    drained.push(after.drained)
    readings.push(probeReading(flow.profile(state), probe))
  }
  return { drained, readings }
}

const told = (fit: MediumFit, name: MediumNumber) => {
  const number = fit.numbers.find((one) => one.name === name)
  if (number === undefined) throw new Error(`${name} was not sought`)
  return number
}
const { drained, readings } = exact(truth, start)
const guess: MediumGuess = { ...truth, alpha: perCentimetre(0.07), saturatedConductivity: centimetresPerHour(60) }
/** A record with errors drawn from a seed. */
function noisy(seed: number, drainError: number, readingError: number): MediumRecord {
  const { normal } = randomNumbers(seed)
  return {
    container,
    steps,
    start,
    guess,
    fit: ['alpha', 'saturatedConductivity'],
    ...rough,
    // Drains of nothing are left out: an error there would have to be cut off at zero.
    drain: {
      volumes: drained.map((volume) => (volume > 0.01 ? litres(volume + drainError * normal()) : undefined)),
      uncertainty: litres(drainError),
    },
    probe: {
      ...probe,
      waterContents: readings.map((reading) => waterContent(reading + readingError * normal())),
      uncertainty: readingError as WaterContentChange,
    },
  }
}

describe('a medium fitted to what drained and what a probe read', () => {
  // The records come from method-of-lines.py, another discretisation by BDF of scipy, in which nothing is shared with this package.
  it.each([0, 1, 9, 15])('is the one that another solver drained: case %i', (index) => {
    const given = cases[index]!
    const litresOf = (depth: number) => litres(depth / 10)
    const medium: MediumGuess = {
      residual: waterContent(given.residual),
      saturated: waterContent(given.saturated),
      alpha: perCentimetre(given.alpha),
      n: given.n,
      saturatedConductivity: centimetresPerHour(given.ks),
    }
    const column = {
      container: boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(given.height) }),
      roots: { limits },
    }
    const flow = containerFlowRichards1931({
      ...column,
      medium: vanGenuchten1980(medium),
      saturatedConductivity: medium.saturatedConductivity,
    })
    const fit = fitMediumToRecord({
      ...column,
      start: flow.waterContent(flow.startAt((z) => (z + given.start) as never)),
      steps: given.steps.map(([duration, depth]) => ({
        duration: seconds(duration),
        applied: litresOf(depth),
        demand: litresOf((given.use * duration) / 86400),
      })),
      drain: { volumes: given.rows.map((row) => litresOf(row.drained)), uncertainty: litres(0.0003) },
      probe: {
        height: centimetres(given.height / 2),
        sensedHeight: centimetres(given.height),
        waterContents: given.rows.map((row) => waterContent(row.waterContent)),
        uncertainty: 0.0005 as WaterContentChange,
      },
      guess: {
        ...medium,
        alpha: perCentimetre(given.alpha * 1.5),
        saturatedConductivity: centimetresPerHour(given.ks / 2),
      },
      fit: ['alpha', 'saturatedConductivity'],
    })
    expect(Math.abs(told(fit, 'alpha').value / given.alpha - 1)).toBeLessThan(0.01)
    expect(Math.abs(fit.saturatedConductivity / given.ks - 1)).toBeLessThan(0.03)
    expect(fit.readingError).toBeLessThan(1e-3)
  })
  it('is where the search of another library ends', () => {
    const record = noisy(5, 0.004, 0.004)
    const fit = fitMediumToRecord(record)
    const volumes = record.drain?.volumes ?? []
    const known = volumes.flatMap((volume, k) => (volume === undefined ? [] : [k]))
    const series = [
      ...known.map((k) => volumes[k]! / 0.004),
      ...(record.probe?.waterContents ?? []).map((reading) => (reading as number) / 0.004),
    ]
    const model = ([logAlpha = 0, logConductivity = 0]: number[]) => {
      const medium = {
        ...truth,
        alpha: perCentimetre(Math.exp(logAlpha)),
        saturatedConductivity: centimetresPerHour(Math.exp(logConductivity)),
      }
      const out = exact(medium, start)
      const values = [...known.map((k) => out.drained[k]! / 0.004), ...out.readings.map((r) => r / 0.004)]
      return (x: number) => values[x]!
    }
    const other = levenbergMarquardt({ x: series.map((_, i) => i), y: series }, model as never, {
      initialValues: [Math.log(0.07), Math.log(60)],
      gradientDifference: 0.01,
      centralDifference: true,
      maxIterations: 12,
      damping: 1e-3,
    })
    const squares = (place: number[]) => {
      const at = model(place)
      return series.reduce((sum, value, i) => sum + (value - at(i)) ** 2, 0)
    }
    const own = [Math.log(told(fit, 'alpha').value), Math.log(fit.saturatedConductivity)]
    expect(squares(own)).toBeLessThanOrEqual(squares(other.parameterValues) * (1 + 1e-4))
    expect(own[0]).toBeCloseTo(other.parameterValues[0]!, 2)
    expect(own[1]).toBeCloseTo(other.parameterValues[1]!, 2)
  })
  it('has the mean difference as the offset of a probe, with the interval of a mean', () => {
    // The offset moves all readings alike: what is left is the mean of a sample, and Student's interval around it.
    const { normal } = randomNumbers(3)
    const differences = readings.map(() => 0.03 + 0.004 * normal())
    const fit = fitMediumToRecord({
      container,
      steps,
      start,
      guess: truth,
      fit: ['probeOffset'],
      ...rough,
      probe: { ...probe, waterContents: readings.map((r, k) => waterContent(r + differences[k]!)) },
    })
    const count = differences.length
    const mean = differences.reduce((a, b) => a + b, 0) / count
    const sd = Math.sqrt(differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (count - 1))
    // Student's t for 11 degrees of freedom and 95 %: 2.201 in any table.
    const half = (2.201 * sd) / Math.sqrt(count)
    const { value, told: by } = told(fit, 'probeOffset')
    expect(value).toBeCloseTo(mean, 8)
    expect(by).toMatchObject({ known: true })
    if (!by.known) return
    expect(by.interval.min).toBeCloseTo(mean - half, 5)
    expect(by.interval.max).toBeCloseTo(mean + half, 5)
  })
  it('counts what is told of a start as one number measured', () => {
    const [usual, wide] = [fraction<never>(0.95), fraction<never>(0.99)].map((confidence) => {
      const { drain: _, ...record } = { ...noisy(7, 0.004, 0.004), guess: truth }
      const fit = fitMediumToRecord({ ...record, fit: ['saturatedConductivity', 'start'], confidence })
      const { told: by } = told(fit, 'saturatedConductivity')
      if (!by.known) throw new Error(by.reason)
      return Math.log(by.interval.max / by.interval.min)
    })
    // Twelve readings and the start for two numbers leave 11 degrees of freedom: Student's t is 2.201 and 3.106 in any table.
    expect(wide! / usual!).toBeCloseTo(3.106 / 2.201, 3)
  })
  it('has the share of the water that drains early as its bypass', () => {
    // A medium far below its capacity lets through nothing but what runs past.
    const dry = waterContent(0.4)
    const past = exact({ ...truth, bypass: fraction(0.15) }, dry)
    const fit = fitMediumToRecord({
      container,
      steps,
      start: dry,
      guess: truth,
      fit: ['bypass'],
      ...rough,
      drain: { volumes: past.drained },
    })
    expect(fit.bypass).toBeCloseTo(0.15, 6)
  })
  it('is told within its errors: they are as wide as what they miss', () => {
    const scores = Array.from({ length: 20 }, (_, seed) => {
      // From near by: how it is found from afar is asked above.
      const fit = fitMediumToRecord({ ...noisy(100 + seed, 0.004, 0.004), guess: truth })
      return (['alpha', 'saturatedConductivity'] as const).map((name) => {
        const { value, told: by } = told(fit, name)
        if (!by.known) throw new Error(`${name} is not told`)
        const half = Math.log(by.interval.max / by.interval.min) / 2
        return Math.log(value / truth[name]) / half
      })
    })
    for (const i of [0, 1]) {
      const missed = scores.filter((pair) => Math.abs(pair[i]!) > 1).length
      // Of 20 intervals of 95 %, five or more miss three times in a thousand such tests (binomial); half of one is 2.1 standard errors.
      expect(missed).toBeLessThanOrEqual(4)
      const square = scores.reduce((sum, pair) => sum + (2.1 * pair[i]!) ** 2, 0) / scores.length
      // Chi-squared of 20 over 20 lies between these but for two in a thousand (tables: 5.92 and 45.3).
      expect(square).toBeGreaterThan(0.29)
      expect(square).toBeLessThan(2.27)
    }
  }, 120_000)
  it('does not tell a conductivity from shots that all stay, but what is left of its range', () => {
    const dry = waterContent(0.4)
    const none = exact(truth, dry)
    const fit = fitMediumToRecord({
      container,
      steps,
      start: dry,
      guess: truth,
      fit: ['saturatedConductivity'],
      ...rough,
      drain: { volumes: none.drained },
    })
    const { told: by } = told(fit, 'saturatedConductivity')
    expect(by).toMatchObject({ known: false })
    if (by.known) return
    expect(by.range.max / by.range.min).toBeGreaterThan(1e4)
  })
  it('says that there is no bypass to be told where none shows, and how much there could be', () => {
    const { normal } = randomNumbers(8)
    const fit = fitMediumToRecord({
      container,
      steps,
      start,
      guess: truth,
      fit: ['bypass'],
      ...rough,
      drain: { volumes: drained.map((volume) => litres(Math.max(0, volume + 0.003 * normal()))) },
    })
    const { told: by } = told(fit, 'bypass')
    expect(by).toMatchObject({ known: false, range: { min: 0 } })
    if (!by.known) expect(by.range.max).toBeLessThan(0.1)
  })
  it('is the same medium when container, water and errors are all scaled', () => {
    const record = { ...noisy(12, 0.004, 0.004), guess: truth }
    const one = fitMediumToRecord(record)
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (scale) => {
        const times = (volume: Volume) => litres(volume * scale)
        const other = fitMediumToRecord({
          ...record,
          container: boxContainer({ length: centimetres(50 * scale), width: centimetres(15), height: centimetres(10) }),
          steps: steps.map((during) => ({ ...during, applied: times(during.applied) })),
          drain: {
            volumes: (record.drain?.volumes ?? []).map((volume) => volume && times(volume)),
            uncertainty: litres(0.004 * scale),
          },
        })
        expect(other.saturatedConductivity / one.saturatedConductivity).toBeCloseTo(1, 3)
        expect(told(other, 'alpha').value / told(one, 'alpha').value).toBeCloseTo(1, 3)
      }),
      { numRuns: 3 },
    )
  })
  it('finds the start as well, as far as the record knows better than who wrote it down', () => {
    const record = noisy(4, 0.002, 0.002)
    const off = { ...record, start: waterContent(0.77), startUncertainty: 0.02 as WaterContentChange, guess: truth }
    const fit = fitMediumToRecord({ ...off, fit: ['start'] })
    expect(told(fit, 'start').value).toBeCloseTo(0.75, 2)
    const strict = fitMediumToRecord({ ...off, fit: ['probeOffset'] })
    expect(strict.readingError).toBeGreaterThan(fit.readingError)
  })
  it('says when numbers move together, when differences come in runs, and when weights are off', () => {
    const both = fitMediumToRecord({ ...noisy(6, 0.002, 0.002), fit: ['alpha', 'n', 'saturatedConductivity'] })
    const pair = both.findings.find(({ code }) => code === 'numbers-move-together')
    expect(pair).toBeDefined()
    // A probe that drifts: the simulation is above it first and below it later.
    const drifting = fitMediumToRecord({
      ...noisy(7, 0.002, 0.0005),
      guess: truth,
      probe: {
        ...probe,
        waterContents: readings.map((reading, k) => waterContent(reading + 0.004 * (k - 5.5))),
        uncertainty: 0.0005 as WaterContentChange,
      },
      fit: ['probeOffset'],
    })
    const found = drifting.findings.map(({ code }) => code)
    expect(found).toContain('differences-in-runs')
    expect(found).toContain('weights-off')
    for (const finding of [...both.findings, ...drifting.findings])
      expect(explainFlowFinding(finding).message).toMatch(/^[a-z].*: .*[a-z]$/)
  })
  it('refuses series that do not match, nothing to find, and what nothing is known of', () => {
    const record = noisy(1, 0.004, 0.004)
    expectInputError(() => fitMediumToRecord({ ...record, drain: { volumes: [] } }), 'drain.volumes')
    expectInputError(() => fitMediumToRecord({ ...record, fit: [] }), 'fit')
    expectInputError(() => explainFlowFinding({ code: 'colour', level: 'note' } as never), 'finding')
    expectDomainError(() => fitMediumToRecord({ ...record, nodes: 500 }), { argument: 'nodes' })
    expectInputError(() => fitMediumToRecord({ ...record, fit: ['colour' as never] }), 'fit')
    const { start: _, probe: __, drain: ___, ...bare } = record
    expectInputError(() => fitMediumToRecord({ ...bare, fit: ['start'] }), 'fit')
    expectInputError(() => fitMediumToRecord({ ...bare, fit: ['probeOffset'] }), 'fit')
    expectInputError(() => fitMediumToRecord(bare), 'drain')
    expectDomainError(() => fitMediumToRecord({ ...record, confidence: 1 as never }), { argument: 'confidence' })
    expectDomainError(() => fitMediumToRecord({ ...record, startUncertainty: 0 as never }), {
      argument: 'startUncertainty',
    })
    expectDomainError(() => fitMediumToRecord({ ...record, drain: { volumes: steps.map(() => -1 as never) } }), {
      argument: 'drain.volumes',
    })
    expectDomainError(() => fitMediumToRecord({ ...record, guess: { ...guess, probeOffset: 1 as never } }), {
      argument: 'probeOffset',
    })
  })
})
