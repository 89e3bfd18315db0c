import fc from 'fast-check'
import * as core from 'porewater'
import {
  calibrateTwoPoint,
  type DayPlanRequest,
  fitCalibration,
  instant,
  planDay,
  rawReading,
  restoreCalibration,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import {
  containerFromDocument,
  DocumentError,
  type DocumentName,
  type DocumentTypes,
  documentFromMedium,
  documentJsonSchema,
  documentSchema,
  mediumFromDocument,
  parseDocument,
  readDocument,
  writeDocument,
} from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { textPattern } from '../../src/schema/field/text-pattern.js'
import { allSpellings } from '../../src/text/all-spellings.js'
import type { KindName } from '../../src/text/generated/kind-types.js'
import { KINDS } from '../../src/text/generated/kinds.js'
import { parseQuantity } from '../../src/text/parse.js'
import { between } from '../support/round-trip.js'

/** A whole document of each kind, invented. */
const WHOLE: { readonly [N in DocumentName]: unknown } = {
  medium: {
    version: 1,
    name: 'coir, invented',
    model: 'van-genuchten-1980',
    parameters: { residual: 0.12, saturated: 0.93, alpha: 0.1, n: 1.6 },
    porosity: 0.95,
    bulkDensity: 0.08,
    saturatedConductivity: 40,
  },
  container: { version: 1, shape: 'stack', parts: [{ shape: 'box', length: 100, width: 15, height: 7.5 }] },
  probe: {
    version: 1,
    name: 'A1',
    measures: 'RawReading',
    zone: '3',
    heightAboveBottom: 4,
    interval: 300,
    min: 200,
    max: 1300,
  },
  calibration: {
    version: 1,
    method: 'line, invented',
    form: 'line',
    exponent: 1,
    coefficients: [-0.265, 0.00095],
    knots: [],
    span: { min: 300, max: 1100, driest: 0.02, wettest: 0.78 },
    porosity: 0.95,
    samples: [{ reading: 300, waterContent: 0.02 }],
    findings: [],
  },
  limits: {
    version: 1,
    refillPoint: 0.5,
    fullPoint: 0.62,
    drainFraction: 0.2,
    minRunTime: 60,
    maxRunTime: 900,
    minRest: 900,
    maxPerDay: 8,
  },
  emitters: { version: 1, emitters: 2, emitterFlow: 2, lineFill: 8 },
  reading: { version: 1, time: 1779148800, source: 'A1', kind: 'WaterContent', value: 0.55, quality: 1 },
  record: {
    version: 1,
    source: 'A1',
    kind: 'WaterContent',
    time: [0, 300, 600],
    value: [0.5, null, 0.51],
    quality: [1, 9, 1],
  },
  shot: {
    version: 1,
    time: 1779148800,
    volume: 0.3,
    perEmitter: 0.15,
    runTime: 278,
    reason: 'refill-point',
    waterContent: 0.58,
  },
  'plan-request': {
    version: 1,
    start: '2026-05-19T00:00:00Z',
    step: '10 min',
    demand: new Array(144).fill(0.02),
    container: {
      substrateVolume: '14 L',
      containerCapacity: '62 %',
      minWaterContent: 0.15,
      bypass: 0.1,
      drainLag: '10 min',
    },
    waterContent: 0.6,
    refillPoint: 0.59,
    fullPoint: 0.62,
    drainFraction: '20 %',
    firstShot: '2026-05-19T07:00:00Z',
    lastShot: '2026-05-19T17:00:00Z',
    emitters: 2,
    emitterFlow: '2 L/h',
    lineFill: '8 s',
    minRunTime: '2 min',
    maxRunTime: '15 min',
    minRest: '15 min',
    maxPerDay: '8 L',
    trigger: { by: 'level' },
  },
  plan: {
    version: 1,
    shots: [
      { time: 1779148800, volume: 0.3, perEmitter: 0.15, runTime: 278, reason: 'refill-point', waterContent: 0.58 },
    ],
    time: [1779149400, 1779150000],
    waterContent: [0.6, 0.61],
    drain: [0, 0.01],
    applied: 0.3,
    drained: 0.01,
    taken: 0.04,
    drainFraction: 0.03,
    shotDrainFraction: 0.2,
    overnightDryDown: 0.01,
    findings: [{ code: 'runs-dry', level: 'danger', about: 'waterContent', reached: 0.1, wanted: 0.15, unit: 'm³/m³' }],
    caution: 'advice',
  },
  zone: {
    version: 1,
    name: 'bench 4, invented',
    container: { substrateVolume: '14 L', height: '12 cm', plants: 2 },
    medium: {
      name: 'coir, invented',
      bulkDensity: 0.09,
      particleDensity: 0.78,
      residual: 0.12,
      saturated: '86 %',
      alpha: 0.26,
      n: 1.55,
    },
    plantDensity: 2.5,
    cropCoefficient: 1.05,
    emitters: { count: 2, flow: '2 L/h', lineFill: '8 s' },
    probes: [
      {
        name: 'A',
        samples: { dry: { reading: 438, waterContent: 0.04 }, saturated: { reading: 1185, waterContent: 0.86 } },
      },
      { name: 'B', weight: 2 },
    ],
    place: { latitude: 47.5, elevation: 420, clock: [{ from: '2026-03-29T01:00:00Z', ahead: '2 h' }] },
    lamps: { on: '4 h', off: '20 h', irradiance: 90 },
    readingStep: '5 min',
    wateringLog: 'openings',
    limits: {
      maxPerDay: '8 L',
      minRunTime: '2 min',
      maxRunTime: '20 min',
      minRest: '20 min',
      drainFraction: '25 %',
      allowedFall: 0.03,
      lowerLimit: 0.12,
      minBelievable: 0.05,
      maxBelievable: 0.86,
      minRise: 0.006,
      firstShotAfterLight: '1.5 h',
      lastShotBeforeDark: '4 h',
    },
  },
}
const NAMES = Object.keys(WHOLE) as DocumentName[]

function problemsOf(call: () => unknown) {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    expect(core.isPorewaterError(error)).toBe(true)
    const { problems } = error as DocumentError
    for (const one of problems) {
      expect(one.problem).toMatch(/\w/)
      expect(one.hint).toMatch(/\w/)
    }
    return problems
  }
  throw new Error('nothing was refused')
}

describe.each(NAMES)('a %s document', (name) => {
  it('is read, written and read again without loss', () => {
    const read = readDocument(name, WHOLE[name])
    const written = writeDocument(name, read)
    expect(readDocument(name, JSON.parse(JSON.stringify(written)))).toEqual(read)
    expect(writeDocument(name, readDocument(name, written))).toEqual(written)
  })
  it('needs every key that is not optional, and says which is missing', () => {
    const whole = WHOLE[name] as Record<string, unknown>
    const { required } = jsonObject(name, whole)
    for (const key of required) {
      const { [key]: _, ...rest } = whole
      expect(
        problemsOf(() => readDocument(name, rest)).map((one) => one.path),
        key,
      ).toContain(key)
    }
    for (const key of Object.keys(whole).filter((one) => !required.includes(one))) {
      const { [key]: _, ...rest } = whole
      expect(() => readDocument(name, rest), key).not.toThrow()
    }
  })
  it('refuses unknown keys by name, or keeps them', () => {
    const more = { ...WHOLE[name]!, colour: 'green' }
    expect(problemsOf(() => readDocument(name, more))).toMatchObject([{ path: 'colour', value: '"green"' }])
    expect(readDocument(name, more, { unknownKeys: 'keep' })).toMatchObject({ colour: 'green' })
    expect(
      writeDocument(name, readDocument(name, more, { unknownKeys: 'keep' }), { unknownKeys: 'keep' }),
    ).toMatchObject({
      colour: 'green',
    })
  })
  it('refuses a word that says neither, wherever it is asked for', () => {
    const wrong = { unknownKeys: 'lihgt' as 'keep' }
    for (const call of [
      () => readDocument(name, WHOLE[name], wrong),
      () => parseDocument(name, JSON.stringify(WHOLE[name]), wrong),
      () => documentSchema(name, wrong),
      () => documentJsonSchema(name, wrong),
    ])
      expect(call).toThrow('give one of refuse, keep')
  })
  it('states its version, and refuses none and newer ones', () => {
    const { version: _, ...rest } = WHOLE[name] as Record<string, unknown>
    expect(problemsOf(() => readDocument(name, rest))).toMatchObject([{ path: 'version', problem: 'is missing' }])
    for (const version of [2, 0, 1.5, '1', null])
      expect(problemsOf(() => readDocument(name, { ...rest, version }))).toMatchObject([{ path: 'version' }])
    expect(writeDocument(name, rest as DocumentTypes[typeof name])).toMatchObject({ version: 1 })
  })
  it('has a JSON Schema that names its keys', () => {
    const schema = documentJsonSchema(name)
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', title: name })
    const object = jsonObject(name, WHOLE[name] as Record<string, unknown>)
    expect(Object.keys(object.properties)).toEqual(expect.arrayContaining(Object.keys(WHOLE[name]!)))
    expect(object.additionalProperties).toBe(false)
  })
  it('is refused for what is no object', () => {
    for (const data of [null, undefined, 1, 'text', [], true, new Date(0), new Map(), () => 1, Symbol('x'), 1n])
      problemsOf(() => readDocument(name, data))
  })
})

/** The branch of a JSON Schema that describes this document. */
function jsonObject(name: DocumentName, whole: Record<string, unknown>) {
  interface JsonObject {
    readonly required: readonly string[]
    readonly properties: Readonly<Record<string, { readonly const?: unknown }>>
    readonly additionalProperties?: boolean
  }
  const schema = documentJsonSchema(name) as unknown as JsonObject & { readonly oneOf?: readonly JsonObject[] }
  const branch = schema.oneOf?.find((one) =>
    Object.entries(one.properties).every(([key, { const: fixed }]) => fixed === undefined || whole[key] === fixed),
  )
  return branch ?? schema
}

describe('what a document becomes', () => {
  it('gives the medium that was stored, for every retention model', () => {
    const models: core.RetentionModel[] = [
      vanGenuchten1980({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        alpha: core.perCentimetre(0.1),
        n: 1.7,
      }),
      core.vanGenuchtenBurdine1980({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        alpha: core.perCentimetre(0.1),
        n: 2.7,
      }),
      core.brooksCorey1964({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        airEntry: core.centimetresOfSuction(4),
        lambda: 0.6,
      }),
      core.campbell1974({ saturated: waterContent(0.9), airEntry: core.centimetresOfSuction(4), b: 3 }),
      core.kosugi1996({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        medianSuction: core.centimetresOfSuction(20),
        sigma: 1.2,
      }),
      core.logLogisticRetention({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        halfSuction: core.centimetresOfSuction(20),
        slope: 1.4,
      }),
      core.milksFontenoLarson1989({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        alpha: core.perCentimetre(0.1),
        n: 1.7,
        m: 0.5,
      }),
      core.fredlundXing1994({
        saturated: waterContent(0.9),
        scaleSuction: core.centimetresOfSuction(8),
        n: 1.7,
        m: 0.8,
        residualSuction: core.centimetresOfSuction(15000),
      }),
      core.durner1994({
        residual: waterContent(0.1),
        saturated: waterContent(0.9),
        coarseShare: core.fraction(0.6),
        coarse: { alpha: core.perCentimetre(0.5), n: 2.2 },
        fine: { alpha: core.perCentimetre(0.02), n: 1.4 },
      }),
    ]
    expect(new Set(models.map((one) => one.kind)).size).toBe(core.allRetentionForms.length)
    for (const model of models) {
      const again = mediumFromDocument(readDocument('medium', writeDocument('medium', documentFromMedium(model))))
      expect(again.kind).toBe(model.kind)
      for (const suction of [0, 1, 10, 100, 1000].map(core.centimetresOfSuction))
        expect(again.waterContent(suction), model.kind).toBe(model.waterContent(suction))
    }
  })
  it('gives every container with the volume of its shape', () => {
    const volumes = (document: object) =>
      containerFromDocument(readDocument('container', { version: 1, ...document })).volume
    expect(volumes({ shape: 'box', length: '1 m', width: '6 in', height: '75 mm' })).toBeCloseTo(11.43, 10)
    expect(volumes({ shape: 'cylinder', diameter: 20, height: 25 })).toBeCloseTo((Math.PI * 100 * 25) / 1000, 10)
    expect(volumes({ shape: 'frustum', bottomDiameter: 20, topDiameter: 20, height: 25 })).toBeCloseTo(
      (Math.PI * 100 * 25) / 1000,
      10,
    )
    expect(
      volumes({ shape: 'tapered-box', bottomLength: 10, bottomWidth: 10, topLength: 10, topWidth: 10, height: 10 }),
    ).toBeCloseTo(1, 10)
    expect(volumes({ shape: 'rounded-square', bottomSide: 10, topSide: 10, cornerRadius: 0, height: 10 })).toBeCloseTo(
      1,
      10,
    )
    expect(volumes({ shape: 'measured', heights: [0, '10 cm'], areas: ['100 cm²', 0.01] })).toBeCloseTo(1, 10)
    const box = { shape: 'box', length: 10, width: 10, height: 10 }
    expect(volumes({ shape: 'stack', parts: [box, box] })).toBeCloseTo(2, 10)
  })
  it('gives a calibration and a plan that came from this package', () => {
    const calibration = calibrateTwoPoint({
      dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
      saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
    })
    expect(readDocument('calibration', writeDocument('calibration', calibration))).toEqual(calibration)
    const samples = [300, 500, 700, 900, 1100, 1200].map((reading, i) => ({
      reading: rawReading(reading),
      waterContent: waterContent([0.05, 0.2, 0.38, 0.52, 0.7, 0.75][i]!),
    }))
    for (const form of ['line', 'square-root', 'power', 'quadratic', 'cubic', 'monotone-cubic'] as const) {
      const more = form === 'power' ? { exponent: 0.7 } : {}
      const fitted = core.fitCalibration({ samples, form, ...more })
      expect(
        readDocument('calibration', JSON.parse(JSON.stringify(writeDocument('calibration', fitted)))),
        form,
      ).toEqual(fitted)
    }
    const request: DayPlanRequest = readDocument('plan-request', WHOLE['plan-request'])
    expect(request.start).toBe(instant(Date.UTC(2026, 4, 19) / 1000))
    const plan = planDay(request)
    expect(plan.shots.length).toBeGreaterThan(0)
    const { version, ...again } = readDocument('plan', JSON.parse(JSON.stringify(writeDocument('plan', plan))))
    expect(version).toBe(1)
    expect(again).toEqual(plan)
    for (const shot of plan.shots)
      expect(readDocument('shot', writeDocument('shot', shot))).toEqual({ version: 1, ...shot })
  })
  it('builds into a schema of the user', () => {
    const result = documentSchema('emitters').safeParse({ version: 1, emitters: 1, emitterFlow: '1 gph', lineFill: 0 })
    // 1 US gal = 3.785411784 L: NIST Special Publication 811 (2008), Appendix B.8.
    expect(result.data?.emitterFlow).toBeCloseTo(3.785411784, 12)
  })
})

describe('numbers and text with a unit', () => {
  const emitters = (emitterFlow: unknown) =>
    readDocument('emitters', { version: 1, emitters: 1, emitterFlow, lineFill: 0 })
  it('mean the same to 1e-12', () => {
    fc.assert(
      fc.property(between(1e-6, 1e6), (flow) => {
        const number = emitters(flow).emitterFlow
        expect(number).toBe(flow)
        expect(Math.abs(emitters(`${flow} L/h`).emitterFlow - flow)).toBeLessThanOrEqual(1e-12 * flow)
        expect(Math.abs(emitters(`${flow / 60} L/min`).emitterFlow - flow)).toBeLessThanOrEqual(1e-12 * flow)
      }),
    )
  })
  it('a suction as a number is centimetres of water, as in the rest of the package', () => {
    const medium = (airEntry: unknown) =>
      readDocument('medium', { version: 1, model: 'campbell-1974', parameters: { saturated: 0.9, airEntry, b: 3 } })
        .parameters.airEntry
    expect(medium(4)).toBe(4)
    expect(medium('0.980665 kPa')).toBeCloseTo(10, 12)
    expect(medium('pF 1')).toBeCloseTo(10, 12)
  })
  it('a wrong dimension names path, value, unit and what to do', () => {
    expect(problemsOf(() => emitters('3 ft'))).toEqual([
      {
        path: 'emitterFlow',
        value: '"3 ft"',
        problem: expect.stringContaining('has the unit "ft"'),
        expected: expect.stringContaining('number of L/h'),
        hint: expect.stringContaining('US gal/h'),
      },
    ])
  })
  it('every problem of a document is told at once', () => {
    const paths = problemsOf(() =>
      readDocument('emitters', { version: 1, emitters: 0, emitterFlow: -1, lineFill: true, x: 0 }),
    ).map((one) => one.path)
    expect(paths.sort()).toEqual(['emitterFlow', 'emitters', 'lineFill', 'x'])
  })
  it('what disagrees is refused where it disagrees', () => {
    const limits = WHOLE.limits as object
    expect(problemsOf(() => readDocument('limits', { ...limits, refillPoint: 0.7 }))).toMatchObject([
      { path: 'refillPoint', value: '0.7' },
    ])
    expect(problemsOf(() => readDocument('limits', { ...limits, minRunTime: 901 }))).toMatchObject([
      { path: 'minRunTime' },
    ])
    const request = WHOLE['plan-request']!
    expect(problemsOf(() => readDocument('plan-request', { ...request, fullPoint: 0.7 }))).toMatchObject([
      { path: 'fullPoint' },
    ])
    expect(problemsOf(() => readDocument('plan-request', { ...request, demand: [0.02, -1] }))).toMatchObject([
      { path: 'demand' },
    ])
    expect(problemsOf(() => readDocument('plan', { ...(WHOLE.plan as object), drain: [0] }))).toHaveLength(1)
    const record = WHOLE.record as object
    expect(problemsOf(() => readDocument('record', { ...record, value: [0.5, null, 1.2] }))).toMatchObject([
      { path: 'value', problem: expect.stringContaining('[2] 1.2') },
    ])
    expect(problemsOf(() => readDocument('record', { ...record, quality: [1, 9, 5] }))).toMatchObject([
      { path: 'quality' },
    ])
    expect(problemsOf(() => readDocument('record', { ...record, time: [0, 1] }))).toHaveLength(1)
    expect(problemsOf(() => readDocument('probe', { ...(WHOLE.probe as object), min: 2000 }))).toMatchObject([
      { path: 'min' },
    ])
    const root = {
      ...(WHOLE.calibration as object),
      form: 'square-root',
      exponent: 0.5,
      span: { min: -1, max: 3, driest: 0, wettest: 1 },
    }
    expect(problemsOf(() => readDocument('calibration', root))).toMatchObject([{ path: 'span.min', value: '-1' }])
    expect(
      problemsOf(() => readDocument('calibration', { ...(WHOLE.calibration as object), exponent: 2 })),
    ).toMatchObject([{ path: 'exponent', value: '2' }])
    const swapped = {
      version: 1,
      model: 'kosugi-1996',
      parameters: { residual: 0.9, saturated: 0.5, medianSuction: 9, sigma: 1 },
    }
    expect(problemsOf(() => readDocument('medium', swapped))).toHaveLength(1)
  })
  it('a reading may be missing, in any unit of its kind, or raw', () => {
    const reading = (more: object) => readDocument('reading', { ...(WHOLE.reading as object), ...more }).value
    expect(reading({ value: null })).toBeNaN()
    expect(reading({ value: '55 %' })).toBeCloseTo(0.55, 12)
    expect(reading({ kind: 'Temperature', value: '68 °F' })).toBeCloseTo(20, 10)
    expect(reading({ kind: 'RawReading', value: 640 })).toBe(640)
    expect(problemsOf(() => reading({ kind: 'RawReading', value: '640 mV' }))).toMatchObject([{ path: 'value' }])
    expect(problemsOf(() => reading({ source: '=1+1' }))).toMatchObject([{ path: 'source' }])
  })
})

describe('a moment', () => {
  const at = (time: unknown) => readDocument('reading', { ...(WHOLE.reading as object), time }).time
  it('is read from ISO 8601 with its zone', () => {
    // RFC 3339 section 5.8: its first three examples and what they say they mean.
    expect(at('1985-04-12T23:20:50.52Z')).toBe(Date.UTC(1985, 3, 12, 23, 20, 50, 520) / 1000)
    expect(at('1996-12-19T16:39:57-08:00')).toBe(at('1996-12-20T00:39:57Z'))
    expect(at('0001-01-01T00:00:00Z')).toBe(-62135596800)
    expect(at('9999-12-31T23:59:59Z')).toBe(253402300799)
    expect(at('1937-01-01T12:00:27.87+00:20')).toBeCloseTo(Date.UTC(1937, 0, 1, 11, 40, 27, 870) / 1000, 6)
  })
  it('is refused without a zone and for days that are none', () => {
    for (const text of [
      '2026-05-19T06:30:00',
      '2026-02-30T00:00:00Z',
      '2026-13-01T00:00:00Z',
      '2026-05-19',
      '19/05/2026',
      'now',
      '2026-05-19T24:00:00Z',
      '2026-05-19T00:00:00+15:00',
    ])
      expect(
        problemsOf(() => at(text)),
        text,
      ).toMatchObject([{ path: 'time', value: JSON.stringify(text) }])
    // A number of milliseconds is not a moment of ours.
    expect(problemsOf(() => at(1779148800000))).toMatchObject([{ path: 'time' }])
  })
})

describe('parseDocument', () => {
  it('reads what JSON.stringify wrote', () => {
    for (const name of NAMES)
      expect(parseDocument(name, JSON.stringify(WHOLE[name]))).toEqual(readDocument(name, WHOLE[name]))
  })
  it('refuses a key that stands twice in one object, however it is spelled', () => {
    const twice = '{"version":1,"emitters":2,"emitterFlow":2,"lineFill":8,'
    for (const again of ['"lineFill":9}', '"lineFill" : 8}', '"line\\u0046ill":9}'])
      expect(
        problemsOf(() => parseDocument('emitters', twice + again)),
        again,
      ).toMatchObject([{ path: 'lineFill', problem: 'stands twice in one object' }])
    const box = '{"shape":"box","length":10,"width":10,"height":10}'
    expect(() => parseDocument('container', `{"version":1,"shape":"stack","parts":[${box},${box}]}`)).not.toThrow()
    // A value that looks like a key is none.
    expect(parseDocument('emitters', `${twice.replace('{', '{"name":"lineFill\\":",')}`.replace(/,$/, '}')).name).toBe(
      'lineFill":',
    )
  })
  it('refuses what is not JSON', () => {
    for (const text of ['', '{', '{"version":1,}', 'NaN', 'undefined', '\u0000'])
      expect(problemsOf(() => parseDocument('emitters', text))).toMatchObject([{ problem: 'is not JSON' }])
  })
  it('never throws anything but its own refusals', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NAMES),
        fc.anything({
          maxDepth: 4,
          withNullPrototype: true,
          withBigInt: true,
          withDate: true,
          withMap: true,
          withTypedArray: true,
        }),
        (name, data) => {
          problemsOf(() => readDocument(name, data))
          const key = Object.keys(WHOLE[name]!)
          problemsOf(() =>
            readDocument(name, Object.fromEntries(key.map((one) => [one, one === 'version' ? 1 : { a: data }]))),
          )
        },
      ),
      { numRuns: 300 },
    )
  })
})

describe('JSON Schema refuses what the library refuses', () => {
  const pattern = (kind: KindName) => new RegExp(textPattern(kind))
  const spellings = [
    ...new Set([
      ...Object.values(KINDS).flatMap(({ units }) => units.flatMap(({ shown, ucum }) => [shown, ucum])),
      ...Object.keys(allSpellings().letters),
      ...Object.keys(allSpellings().words).flatMap((word) => [word, word.toUpperCase(), `${word}s`]),
      'Liters',
      'CENTIMETERS',
    ]),
  ]
  it('of a calibration agrees with restoreCalibration on every number put out of place', () => {
    const isTaken = (work: () => unknown) => {
      try {
        work()
        return true
      } catch {
        return false
      }
    }
    const refused: string[] = []
    const samples = [300, 500, 700, 900, 1100].map((reading, i) => ({
      reading: rawReading(reading),
      waterContent: waterContent(0.05 + 0.02 * i * (i + 3)),
    }))
    const fitted = (['quadratic', 'monotone-cubic'] as const).map((form) => fitCalibration({ samples, form }))
    const visit = (whole: string, node: object, path: readonly string[]): void => {
      for (const [key, part] of Object.entries(node)) {
        if (typeof part === 'object' && part !== null) visit(whole, part, [...path, key])
        if (typeof part !== 'number') continue
        for (const odd of [-1, 0, 0.3, 1, 1.5, 11, 1e9, null, 'x']) {
          const other = JSON.parse(whole) as Record<string, unknown>
          let place = other
          for (const step of path) place = place[step] as Record<string, unknown>
          place[key] = odd
          const told = isTaken(() => restoreCalibration(other))
          if (!told) refused.push([...path, key].join('.'))
          expect({
            path: [...path, key].join('.'),
            odd,
            told: isTaken(() => readDocument('calibration', other)),
          }).toEqual({ path: [...path, key].join('.'), odd, told })
        }
      }
    }
    for (const one of [WHOLE.calibration, ...fitted])
      visit(JSON.stringify(one), JSON.parse(JSON.stringify(one)) as object, [])
    expect(new Set(refused).size).toBeGreaterThan(10)
  })
  it('has whole numbers as integers: no 2.5 samples of a calibration', () => {
    const schema = JSON.stringify(documentJsonSchema('calibration'))
    expect(schema).toContain('[0, 1000000]","type":"integer","minimum":0,"maximum":1000000}')
  })
  it('takes a mean number of emitters, as a plan does, and no other than a plan', () => {
    const range = { type: 'number', exclusiveMinimum: 0, maximum: 100_000 }
    for (const name of ['emitters', 'plan-request'] as const)
      expect(documentJsonSchema(name)).toMatchObject({ properties: { emitters: range } })
    expect(JSON.stringify(documentJsonSchema('zone'))).toContain(
      '"count":{"description":"emitters; a number in (0, 100000]"',
    )
    const read = (emitters: number) =>
      problemsOf(() => readDocument('emitters', { ...(WHOLE.emitters as object), emitters }))
    expect(readDocument('emitters', { ...(WHOLE.emitters as object), emitters: 2.5 }).emitters).toBe(2.5)
    for (const wrong of [0, 100_001]) expect(read(wrong)).toMatchObject([{ path: 'emitters', hint: 'give emitters' }])
  })
  it('says of a zone what its checks say: range and remedy at the number itself', () => {
    const zone = WHOLE.zone as { container: object; limits: object }
    expect(documentJsonSchema('zone')).toMatchObject({
      properties: {
        container: { properties: { height: { exclusiveMinimum: 0, maximum: 1000 } } },
        limits: { properties: { maxRunTime: { exclusiveMinimum: 0, maximum: 7200 } } },
      },
    })
    const wrong = {
      ...zone,
      container: { ...zone.container, height: '20 m' },
      limits: { ...zone.limits, maxRunTime: '3 h', maxPerDay: 0 },
    }
    const found = problemsOf(() => readDocument('zone', wrong)).map(({ path, hint }) => [path, hint])
    expect(found).toEqual([
      ['container.height', 'measure the filled height'],
      ['limits.maxPerDay', 'every zone needs a finite limit that no plan may pass'],
      ['limits.maxRunTime', 'give 2 h or less'],
    ])
  })
  it('has text of a quantity with its units: a volume is not 3 ft', () => {
    for (const text of ['3 L', '1 500 mL', '.5 US gal', '150ml', '2 LITRES', '-1 L'])
      expect(pattern('Volume').test(text), text).toBe(true)
    for (const text of ['3 ft', '3', 'L', '3 L L', '1,5 L', 'three L'])
      expect(pattern('Volume').test(text), text).toBe(false)
    expect(pattern('Duration').test('1 h 30 min')).toBe(true)
    expect(pattern('SuctionHead').test('pF 2')).toBe(true)
    expect(JSON.stringify(documentJsonSchema('container'))).toContain(
      JSON.stringify(textPattern('Length')).slice(1, -1),
    )
  })
  it.each(Object.keys(KINDS) as KindName[])(
    'takes every spelling of a unit of %s, and no other where units are simple',
    (kind) => {
      const listed = !textPattern(kind).endsWith('.*$')
      const wrong = spellings.filter((unit) => {
        const text = unit === '1' ? '3' : `3 ${unit}`
        const read = core.attempt(() => parseQuantity(text, kind))
        const accepted = read.ok || read.error.code === 'outside-domain'
        const says = pattern(kind).test(text)
        return accepted ? !says : says && listed
      })
      expect(wrong).toEqual([])
    },
  )
})
