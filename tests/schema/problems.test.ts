import type { TidyReading } from 'porewater/schema'
import {
  DocumentError,
  documentJsonSchema,
  parseDocument,
  readDocument,
  readingsFromRecord,
  readingsFromSenml,
  readingsFromTidyCsv,
  recordsFromReadings,
  senmlFromReadings,
  seriesFromCsv,
} from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { pathText, shownValue } from '../../src/schema/document-error.js'

const refused = (call: () => unknown): DocumentError => {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return error as DocumentError
  }
  throw new Error('nothing was refused')
}
const problems = (call: () => unknown) => refused(call).problems

const emitters = { version: 1, emitters: 2, emitterFlow: 2, lineFill: 8 }
const probe = { version: 1, name: 'A1', measures: 'RawReading' }
const calibration = {
  version: 1,
  method: 'line, invented',
  form: 'line',
  exponent: 1,
  coefficients: [-0.265, 0.00095],
  knots: [],
  span: { min: 300, max: 1100, driest: 0.02, wettest: 0.78 },
  samples: [{ reading: 300, waterContent: 0.02 }],
  findings: [],
}
const record = { version: 1, source: 'A1', kind: 'WaterContent', time: [0, 300], value: [0.5, null] }

describe('a problem of a document', () => {
  it('says where, what stood there, what should, and what to do, whatever is wrong', () => {
    expect(problems(() => readDocument('emitters', { ...emitters, lineFill: undefined }))).toMatchObject([
      { path: 'lineFill', value: '', problem: 'is missing', hint: 'add it' },
    ])
    const units = 'L/h, L/min, mL/min, m³/h, US gal/h, US gal/min, mL/h, L/s, m³/s'
    expect(problems(() => readDocument('emitters', { ...emitters, emitterFlow: true }))).toEqual([
      {
        path: 'emitterFlow',
        value: 'true',
        problem: 'does not fit',
        expected: `Flow, a number of L/h or text with one of ${units}, in (0, ∞) L/h`,
        hint: 'replace it by what is expected',
      },
    ])
    expect(problems(() => readDocument('emitters', { ...emitters, emitters: 'two' }))).toEqual([
      {
        path: 'emitters',
        value: '"two"',
        problem: 'does not fit',
        expected: 'a number in (0, 100000]',
        hint: 'replace it by what is expected',
      },
    ])
    expect(problems(() => readDocument('emitters', { ...emitters, lineFill: 86401 }))).toMatchObject([
      { path: 'lineFill', value: '86401', problem: '86401 is outside [0, 86400] s' },
    ])
    expect(problems(() => readDocument('emitters', { ...emitters, colour: ['green'] }))).toEqual([
      {
        path: 'colour',
        value: 'a list of 1',
        problem: 'has a key that is not known here',
        expected: 'one of version, name, emitters, emitterFlow, lineFill',
        hint: 'correct its spelling, remove it, or read with unknownKeys: "keep"',
      },
    ])
    expect(problems(() => readDocument('emitters', 5))).toMatchObject([
      {
        path: '',
        value: '5',
        problem: 'does not fit',
        expected: 'an object with version, name, emitters, emitterFlow, lineFill',
      },
    ])
  })
  it('says how long a text and a list may be', () => {
    const name = 'x'.repeat(200)
    expect(readDocument('emitters', { ...emitters, name }).name).toBe(name)
    expect(problems(() => readDocument('emitters', { ...emitters, name: `${name}y` }))).toMatchObject([
      { path: 'name', expected: 'at most 200 characters' },
    ])
    expect(
      problems(() => readDocument('calibration', { ...calibration, coefficients: [1, 2, 3, 4, 5] })),
    ).toMatchObject([{ path: 'coefficients', value: 'a list of 5', expected: 'at most 4 entries' }])
    const finding = { code: 'few-samples', level: 'note', samples: [1, 2] }
    expect(readDocument('calibration', { ...calibration, findings: [finding] }).findings).toEqual([finding])
    const three = { ...finding, samples: [1, 2, 3] }
    expect(problems(() => readDocument('calibration', { ...calibration, findings: [three] }))).toMatchObject([
      { path: 'findings[0].samples', expected: 'at most 2 entries' },
    ])
  })
  it('says which entry of a list of numbers is none, or is missing where none may be', () => {
    const inRecord = (more: object) => problems(() => readDocument('record', { ...record, ...more }))
    expect(inRecord({ time: [0, null] })).toMatchObject([{ path: 'time', problem: 'has at [1] a null' }])
    expect(inRecord({ time: ['0', 300] })).toMatchObject([{ path: 'time', problem: 'has at [0] a string' }])
    expect(inRecord({ value: [0.5, '0.6'] })).toMatchObject([{ path: 'value', problem: 'has at [1] a string' }])
    expect(inRecord({ value: [0.5, 2e12] })).toMatchObject([{ path: 'value', problem: 'has at [1] 2000000000000' }])
    expect(inRecord({ value: [0.5, undefined] })).toMatchObject([{ path: 'value', problem: 'has at [1] a undefined' }])
    expect(inRecord({ value: 0.5 })).toMatchObject([
      {
        path: 'value',
        expected: expect.stringMatching(/a list of at most 1000000 numbers.*null where one is missing/),
      },
    ])
    expect(inRecord({ time: 0 })[0]?.expected).not.toContain('null')
    const long = new Float64Array(1_000_001)
    expect(inRecord({ time: long, value: long })).toMatchObject([
      { path: 'time', problem: 'has 1000001 entries' },
      { path: 'value', problem: 'has 1000001 entries' },
    ])
    expect(inRecord({ quality: [1] })).toMatchObject([{ path: 'quality', problem: 'has 1 entries for 2 readings' }])
    expect(inRecord({ quality: [1, 0] })).toMatchObject([{ path: 'quality', problem: 'has at [1] the flag 0' }])
    expect(inRecord({ value: [0.5, null, null] })).toMatchObject([
      { path: 'value', problem: 'has 3 entries for 2 times' },
    ])
  })
  it('has units in what is expected where a kind has some, and none where it has none', () => {
    const { properties } = documentJsonSchema('zone') as unknown as {
      properties: Record<string, { description: string }>
    }
    expect(properties.cropCoefficient?.description).toMatch(/; CropCoefficient, a number without unit(, in .*)?$/)
    const { properties: ofShot } = documentJsonSchema('shot') as unknown as typeof properties & {
      properties: Record<string, { description: string }>
    }
    expect((ofShot as Record<string, { description: string }>).waterContent?.description).toMatch(
      /WaterContent, a number of m³\/m³ or text with one of /,
    )
  })
  it('stands at the part that disagrees, or at the whole', () => {
    expect(problems(() => readDocument('probe', { ...probe, min: 5, max: 5 }))).toMatchObject([
      { path: 'min', value: '5', problem: 'is not below the highest reading' },
    ])
    for (const alone of [{ min: 5 }, { max: -5 }, { min: 4.9, max: 5 }])
      expect(readDocument('probe', { ...probe, ...alone })).toMatchObject(alone)
    const plan = {
      version: 1,
      shots: [],
      time: [0],
      waterContent: [0.5],
      drain: [0, 0],
      applied: 0,
      drained: 0,
      taken: 0,
      drainFraction: 0,
      shotDrainFraction: 0,
      overnightDryDown: 0,
      findings: [],
      caution: 'advice',
    }
    expect(problems(() => readDocument('plan', plan))).toEqual([
      {
        path: '',
        value: '',
        problem: 'have other lengths than time',
        expected: 'one entry a step',
        hint: 'give one entry for each step',
      },
    ])
    expect(refused(() => readDocument('plan', plan)).argument).toBe('plan document')
    expect(refused(() => readDocument('probe', { ...probe, min: 5, max: 5 })).argument).toBe('probe document, min')
  })
  it('is one of numbers beyond 1e12, which is the last that is taken', () => {
    expect(readDocument('probe', { ...probe, min: -1e12, max: 1e12 })).toMatchObject({ min: -1e12, max: 1e12 })
    for (const max of [1.0001e12, Number.MAX_VALUE])
      expect(problems(() => readDocument('probe', { ...probe, max }))).toMatchObject([{ path: 'max' }])
    expect(readDocument('emitters', { ...emitters, emitterFlow: 1e12 }).emitterFlow).toBe(1e12)
    expect(problems(() => readDocument('emitters', { ...emitters, emitterFlow: 1.0001e12 }))).toMatchObject([
      { path: 'emitterFlow' },
    ])
  })
  it('shows values as a few characters', () => {
    expect([undefined, null, 5, true, 'a"b', [1, 2], {}, () => 1, Symbol('x'), 10n].map(shownValue)).toEqual([
      '',
      'null',
      '5',
      'true',
      '"a\\"b"',
      'a list of 2',
      'an object',
      'a function',
      'a symbol',
      'a bigint',
    ])
    const text = 'x'.repeat(60)
    expect(shownValue(text)).toBe(`"${text}"`)
    expect(shownValue(`${text}y`)).toBe(`"${text}..."`)
    expect(pathText(['shots', 2, 'time'])).toBe('shots[2].time')
    expect(pathText([0, 'a'])).toBe('[0].a')
    expect(pathText(['x'.repeat(70)])).toBe('x'.repeat(60))
    expect(pathText([])).toBe('')
  })
})

describe('what no document can hold', () => {
  const keep = { unknownKeys: 'keep' } as const
  const withMore = (more: unknown) => readDocument('emitters', { ...emitters, more }, keep)
  /** So many lists in each other. */
  const nested = (levels: number): unknown => (levels === 0 ? 1 : [nested(levels - 1)])
  it('is deeper than sixteen levels', () => {
    expect(withMore(nested(15))).toMatchObject({ emitters: 2 })
    expect(problems(() => withMore(nested(16)))).toMatchObject([
      { path: `more${'[0]'.repeat(15)}`, value: '', problem: 'is nested too deeply', expected: 'at most 16 levels' },
    ])
    const text = (levels: number) => `{"more":${'['.repeat(levels)}${']'.repeat(levels)}}`
    expect(problems(() => parseDocument('emitters', text(16)))).toMatchObject([{ problem: 'is nested too deeply' }])
    expect(problems(() => parseDocument('emitters', text(15))).map(({ problem }) => problem)).not.toContain(
      'is nested too deeply',
    )
    let wordy: unknown = 1
    for (let i = 0; i < 17; i++) wordy = { ['k'.repeat(60)]: wordy }
    expect(problems(() => withMore(wordy))[0]?.path).toHaveLength(200)
  })
  it('is a key of more than 200 characters, or a text of more than 2000, wherever it stands', () => {
    expect(withMore({ ['k'.repeat(200)]: 1 })).toMatchObject({ emitters: 2 })
    expect(problems(() => withMore({ ['k'.repeat(201)]: 1 }))).toMatchObject([
      { path: 'more', problem: 'has a key of 201 characters', expected: 'keys of at most 200' },
    ])
    const text = 't'.repeat(2000)
    for (const held of [text, [text], [0, text], { a: text }]) expect(withMore(held)).toMatchObject({ emitters: 2 })
    for (const held of [`${text}u`, [`${text}u`], [0, null, `${text}u`], { a: `${text}u` }, [{ a: `${text}u` }]])
      expect(problems(() => withMore(held))).toMatchObject([
        { problem: 'has 2001 characters', expected: 'at most 2000 characters', hint: 'shorten the text' },
      ])
  })
  it('is a function, a symbol or a big whole number, and a key that reaches into prototypes, in a list too', () => {
    for (const [held, kind] of [
      [() => 1, 'function'],
      [Symbol('x'), 'symbol'],
      [10n, 'bigint'],
    ] as const)
      for (const at of [held, [held], [1, held], { a: held }])
        expect(problems(() => withMore(at))).toMatchObject([
          { problem: `is a ${kind}`, hint: 'convert it to JSON first' },
        ])
    const reaching = JSON.parse('[1, null, {"constructor": 1}]') as unknown
    expect(problems(() => withMore(reaching))).toMatchObject([{ path: 'more[2]', problem: 'has a key "constructor"' }])
    expect(problems(() => withMore([new Date(0)]))).toMatchObject([{ path: 'more[0]', problem: 'is not plain data' }])
    expect(withMore([null, true, 'a', 1, undefined, Object.create(null)])).toMatchObject({ emitters: 2 })
  })
  it('is more than five million values, in lists of numbers and in all of it together', () => {
    expect(problems(() => withMore(new Float64Array(5_000_001)))).toMatchObject([
      { path: 'more', problem: 'has more than 5000000 values' },
    ])
    const half = new Uint8Array(2_500_000)
    expect(problems(() => withMore([half, half]))).toMatchObject([{ problem: 'has more than 5000000 values' }])
    expect(withMore(half)).toMatchObject({ emitters: 2 })
  })
  it('is a key that stands twice in one object, not one that stands in two', () => {
    const text = (more: string) => JSON.stringify(emitters).replace('{', `{${more},`)
    for (const more of ['"a":{"b":1},"c":{"b":2}', '"a":[{"b":1},{"b":2}]', '"a":"b\\":","b":1', '"a":{"a":{"a":1}}'])
      expect(parseDocument('emitters', text(more), keep)).toMatchObject({ emitters: 2 })
    for (const more of ['"a":{"b":1},"a":2', '"a":[{"b":1,"b":2}]', '"a":[1],"a" :2', '"a\\u0062":1,"ab":2'])
      expect(problems(() => parseDocument('emitters', text(more), keep))).toMatchObject([
        { value: '', problem: 'stands twice in one object', expected: 'each key once', hint: 'remove one of the two' },
      ])
  })
})

describe('a problem of a table', () => {
  const series = (text: string, columns = ['a']) =>
    seriesFromCsv(text, {
      time: 'time',
      columns: Object.fromEntries(columns.map((column) => [column, { column }])),
    })
  const rows = Array.from({ length: 30 }, (_, i) => `2026-05-19T07:${10 + i}Z,0.5${10 + i}`)
  const table = (more: readonly string[], end = '\n') => ['time,a', ...rows, ...more].join('\n') + end
  it('is a column that is not there, or stands twice, also as the first', () => {
    expect(problems(() => series('a,time,b\n1,2026-05-19T07:00Z,2\n', ['c']))).toMatchObject([
      { path: 'line 1', value: '', problem: 'there is no column "c"; the table has a, time, b', expected: '' },
    ])
    expect(problems(() => series('a,time,a\n1,2026-05-19T07:00Z,2\n'))).toMatchObject([
      { problem: 'two columns are called "a"; the table has a, time, a' },
    ])
    const long = 'c'.repeat(70)
    expect(problems(() => series('a,time,b\n1,2026-05-19T07:00Z,2\n', [long]))[0]?.problem).toContain(
      `"${'c'.repeat(60)}"`,
    )
    const wide = Array.from({ length: 40 }, (_, i) => `column${i}`.padEnd(30, 'x')).join(',')
    const told = problems(() => series(`${wide}\n${'1,'.repeat(39)}1\n`, ['c']))[0]!.problem
    expect(told).toHaveLength('there is no column "time"; the table has '.length + 400)
  })
  it('counts the fields of a row, and names those of the header', () => {
    const hint = 'complete the line or remove it, or set the separator'
    const expected = '2 fields: time, a'
    expect(series(table(['2026-05-19T07:50Z', '2026-05-19T07:51Z,1,2', '2026-05-19T07:52Z,"0.5'])).problems).toEqual([
      { path: 'line 32', value: '', problem: 'has 1 field', expected, hint },
      {
        path: 'line 33',
        value: '',
        problem: 'has 3 fields',
        expected,
        hint: 'remove it, or set the separator; numbers with a decimal comma need quotes, or semicolons between the fields',
      },
      {
        path: 'line 34',
        value: '',
        problem: 'has a quote that never closes',
        expected,
        hint: 'close it, or double it inside quotes',
      },
    ])
    expect(series(table(['2026-05-19T07:50Z,0.5'], '')).problems).toEqual([
      {
        path: 'line 32',
        value: '',
        problem: 'ends the table within a field, shorter than all others',
        expected,
        hint,
      },
    ])
    // The same with an end of its line is whole.
    expect(series(table(['2026-05-19T07:50Z,0.5'])).problems).toEqual([])
  })
  it('is told a hundred times at most, and counted always', () => {
    const many = Array.from({ length: 150 }, (_, i) => `2026-05-19T07:10Z,${i},x`)
    const filled = Array.from(
      { length: 200 },
      (_, i) => `2026-05-20T07:10:${String(i % 60).padStart(2, '0')}.${i}Z,0.5`,
    )
    const read = series(table([...filled, ...many]))
    expect([read.problems.length, read.refused]).toEqual([100, 150])
    const tidy = readingsFromTidyCsv(`time,source,quantity,value,unit\r\n${'soon,A,Volume,1,L\r\n'.repeat(150)}`)
    expect([tidy.problems.length, tidy.refused, tidy.refusedRows.length]).toEqual([100, 150, 150])
    expect(tidy.problems[99]).toMatchObject({ path: 'row 101' })
    const pack = Array.from({ length: 150 }, () => ({ n: 'a', u: 'Cel', v: 0.5, t: 1.7e9 }))
    expect(problems(() => readingsFromSenml(pack, { a: 'WaterContent' }))).toHaveLength(100)
    const odd = Array.from({ length: 150 }, () => ({ time: 1.7e9, source: 'a b', kind: 'WaterContent', value: 0.5 }))
    expect(problems(() => senmlFromReadings(odd as unknown as TidyReading[]))).toHaveLength(100)
    const nameless = odd.map((one) => ({ ...one, source: '' }))
    expect(problems(() => recordsFromReadings(nameless as unknown as TidyReading[]))).toHaveLength(100)
  })
})

describe('single readings of a record', () => {
  it('carry the flag of each, where the record has some', () => {
    const flagged = readDocument('record', { ...record, quality: [1, 9] })
    expect(readingsFromRecord(flagged).map(({ quality }) => quality)).toEqual([1, 9])
    const plain = readingsFromRecord(readDocument('record', record))
    expect(plain).toEqual([
      { time: 0, source: 'A1', kind: 'WaterContent', value: 0.5 },
      { time: 300, source: 'A1', kind: 'WaterContent', value: Number.NaN },
    ])
    expect(plain.some((reading) => 'quality' in reading)).toBe(false)
  })
})
