import { documentJsonSchema, readDocument, seriesFromCsv } from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import { orderedTimes } from '../../src/schema/csv/table-times.js'
import { DocumentError } from '../../src/schema/document-error.js'
import { checked } from '../../src/schema/field/field.js'
import { readingValue } from '../../src/schema/tidy-reading.js'

const OPTIONS = { time: 'time', columns: { A: { column: 'a', kind: 'WaterContent' }, B: { column: 'b' } } }
const series = (text: string, more: object = {}) => seriesFromCsv(text, { ...OPTIONS, ...more } as never)
const refusal = (call: () => unknown): DocumentError => {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return error as DocumentError
  }
  throw new Error('nothing was refused')
}
const MAY_19_7H = Date.UTC(2026, 4, 19, 7) / 1000

describe('a last field that is cut', () => {
  const table = (last: (i: number) => string) =>
    ['time,a,b', ...Array.from({ length: 25 }, (_, i) => `2026-05-19T07:${10 + i}Z,0.5,${last(i)}`)].join('\n')
  it('is told by its length where all others are of one length and have no decimals', () => {
    const text = table((i) => `${1021 + i}`)
    expect(series(text)).toMatchObject({ refused: 0 })
    expect(series(text.slice(0, -2))).toMatchObject({ refused: 1, problems: [{ path: 'line 26' }] })
  })
  it('is told by its decimals where the others are of many lengths, words for nothing left out', () => {
    const text = table((i) => (i % 9 === 4 ? 'NA' : `${7 + i}.25`))
    expect(series(text, { missing: ['NA'] })).toMatchObject({ refused: 0 })
    expect(series(text.slice(0, -1), { missing: ['NA'] })).toMatchObject({ refused: 1 })
  })
})

describe('the head of a table', () => {
  it('may say what separates the fields, as a spreadsheet writes it, and is then no row', () => {
    const rows = 'time;a;b\r\n2026-05-19T07:00Z;0,5;3\r\n2026-05-19T07:05Z;0,6;4\r\n'
    for (const said of ['sep=;', '"sep=;"', '\ufeffsep=;']) {
      const { time, columns } = series(`${said}\r\n${rows}`)
      expect([...time]).toEqual([MAY_19_7H, MAY_19_7H + 300])
      expect([...columns.A!]).toEqual([0.5, 0.6])
    }
  })
  it('is parted by commas where other marks would part it as well', () => {
    const { columns } = series('time,a,b;c\n2026-05-19T07:00Z,0.5,1;2\n', { columns: { A: OPTIONS.columns.A } })
    expect([...columns.A!]).toEqual([0.5])
  })
  it('is told in part where two columns are called alike at length', () => {
    const name = 'x'.repeat(99)
    const { message } = refusal(() =>
      series(`time,${name},${name}\n2026-05-19T07:00Z,0.5,1\n`, { columns: { A: { column: name } } }),
    )
    expect(message).toContain(`two columns are called "${'x'.repeat(60)}"`)
  })
})

describe('times of a table', () => {
  it('are read with the year first and strokes', () => {
    const { time } = series('time,a,b\n2026/05/19 07:00:30,0.5,1\n2026/5/19 07:05,0.6,2\n', {
      clock: [{ from: 0, ahead: 7200 }],
    })
    expect([...time]).toEqual([MAY_19_7H - 7200 + 30, MAY_19_7H - 7200 + 300])
  })
  it('are those of universal time where no clock is told', () => {
    expect(orderedTimes([{ local: 500 }, { local: 800 }], [])).toEqual({
      time: Float64Array.of(500, 800),
      order: 'rising',
    })
  })
})

describe('a document', () => {
  it('has lists in its schema whose numbers have the range of their kind, and null where one may be missing', () => {
    const { properties } = documentJsonSchema('record') as never as { properties: Record<string, object> }
    // From the first second of the year 1 to the last of 9999.
    const [minimum, maximum] = ['0001-01-01T00:00:00Z', '9999-12-31T23:59:59Z'].map((text) => Date.parse(text) / 1000)
    expect(properties.time).toMatchObject({ type: 'array', items: { type: 'number', minimum, maximum } })
    expect(properties.value).toMatchObject({ type: 'array', items: { anyOf: [{ type: 'number' }, { type: 'null' }] } })
  })
  it('says of a reading what may stand there', () => {
    const reading = { version: 1, time: 1, source: 'A1', kind: 'WaterContent', value: true }
    expect(refusal(() => readDocument('reading', reading)).problems).toMatchObject([
      { path: 'value', value: 'true', expected: 'a number, text with a unit, or null where it is missing' },
    ])
  })
  it('does not take a fault of ours for one of its own', () => {
    const ours = new TypeError('not a problem of the document')
    const issues: unknown[] = []
    const context = { addIssue: (issue: unknown) => issues.push(issue) } as never
    const raise = () => {
      throw ours
    }
    expect(() => checked(context, 'a number', raise)).toThrow(ours)
    expect(issues).toEqual([])
  })
  it('repeats no long text for a number', () => {
    expect(() => readingValue('y'.repeat(99), 'RawReading')).toThrow(`"${'y'.repeat(60)}" is text`)
  })
})
