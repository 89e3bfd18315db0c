import { isPorewaterError } from 'porewater'
import { DocumentError, parseDocument, readDocument, readingsFromTidyCsv, resolveSenml } from 'porewater/schema'
import { describe, expect, it } from 'vitest'

/** Of the processor, not of the clock, so that a busy machine does not fail it. What is bounded takes less than half a second. */
const MOST_MICROSECONDS = 3_000_000

/** A refusal of this package, in bounded time. */
function refused(call: () => unknown): DocumentError {
  const begin = process.cpuUsage()
  try {
    call()
  } catch (error) {
    const { user, system } = process.cpuUsage(begin)
    expect(user + system).toBeLessThan(MOST_MICROSECONDS)
    expect(error).toBeInstanceOf(DocumentError)
    expect(isPorewaterError(error)).toBe(true)
    // Nothing of any length comes back in a message.
    expect((error as DocumentError).message.length).toBeLessThan(5000)
    return error as DocumentError
  }
  throw new Error('nothing was refused')
}

const long = 'a'.repeat(10_000_000)
const emitters = { version: 1, emitters: 2, emitterFlow: 2, lineFill: 8 }

describe('hostile input is refused in bounded time', { timeout: 60_000 }, () => {
  it('text of ten million characters, whole or inside a document', () => {
    refused(() => parseDocument('emitters', JSON.stringify(long)))
    refused(() => parseDocument('emitters', long))
    refused(() => parseDocument('emitters', '['.repeat(10_000_000), { maxCharacters: 1e9 }))
    refused(() => parseDocument('emitters', `"${'\\"'.repeat(5_000_000)}`, { maxCharacters: 1e9 }))
    for (const key of Object.keys(emitters)) refused(() => readDocument('emitters', { ...emitters, [key]: long }))
    refused(() => readDocument('emitters', { ...emitters, [long]: 1 }))
    refused(() => readDocument('emitters', { ...emitters, emitterFlow: `${'9'.repeat(1900)} L/h` }))
    refused(() => resolveSenml(long))
    refused(() => resolveSenml([{ n: long, v: 1 }]))
    refused(() => resolveSenml([{ n: 'a', v: 1, t: 1.7e9, unknown: long }]))
    refused(() => readingsFromTidyCsv(long))
    refused(() => readingsFromTidyCsv(long, { maxCharacters: 1e9 }))
    refused(() => readingsFromTidyCsv('"'.repeat(10_000_001), { maxCharacters: 1e9 }))
    refused(() => readingsFromTidyCsv(','.repeat(10_000_000), { maxCharacters: 1e9 }))
  })
  it('a hundred thousand levels, as text, as data, and in a circle', () => {
    refused(() => parseDocument('emitters', '['.repeat(100_000) + ']'.repeat(100_000)))
    refused(() => parseDocument('emitters', `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`))
    let deep: unknown = 1
    for (let i = 0; i < 100_000; i++) deep = i % 2 === 0 ? [deep] : { a: deep }
    refused(() => readDocument('emitters', deep))
    refused(() => readDocument('emitters', { ...emitters, emitterFlow: deep }))
    refused(() => readDocument('emitters', { ...emitters, more: deep }, { unknownKeys: 'keep' }))
    refused(() => resolveSenml(deep))
    refused(() => resolveSenml([{ n: 'a', v: 1, t: 1.7e9, unknown: deep }]))
    const circle: Record<string, unknown> = { ...emitters }
    circle.self = circle
    refused(() => readDocument('emitters', circle, { unknownKeys: 'keep' }))
    const wide: unknown[] = []
    for (let i = 0; i < 12; i++) wide.push(wide.slice())
    refused(() => readDocument('emitters', wide))
    let doubling: unknown = 1
    for (let i = 0; i < 15; i++) doubling = Array.from({ length: 10 }, () => doubling)
    refused(() => readDocument('emitters', { ...emitters, doubling }, { unknownKeys: 'keep' }))
  })
  it('keys that reach into prototypes', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      for (const unknownKeys of ['refuse', 'keep'] as const) {
        const text = JSON.stringify(emitters).replace('{', `{"${key}":{"polluted":true},`)
        expect(refused(() => parseDocument('emitters', text, { unknownKeys })).problems).toMatchObject([
          { problem: expect.stringContaining(key) },
        ])
        const inside = JSON.stringify({ version: 1, shape: 'stack', parts: [{ shape: 'box' }] }).replace(
          '"shape":"box"',
          `"${key}":1`,
        )
        refused(() => parseDocument('container', inside, { unknownKeys }))
      }
      refused(() => resolveSenml(`[{"n":"a","v":1,"${key}":{"polluted":true}}]`))
    }
    refused(() => readDocument('emitters', Object.create({ ...emitters })))
    // Names of what every object inherits are unknown keys and unknown choices like any other.
    for (const name of ['toString', 'hasOwnProperty', 'valueOf']) {
      refused(() => readDocument('emitters', { ...emitters, [name]: 1 }))
      refused(() => readDocument('reading', { version: 1, time: 0, source: 'a', kind: name, value: 1 }))
      refused(() => readDocument('medium', { version: 1, model: name, parameters: {} }))
      refused(() => readDocument('container', { version: 1, shape: name }))
      refused(() => readDocument(name as never, emitters))
    }
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })
  it('numbers beyond anything, as numbers and as text', () => {
    for (const number of [1e308, -1e308, 1e13, Infinity, -Infinity, Number.NaN]) {
      for (const key of ['emitters', 'emitterFlow', 'lineFill']) {
        refused(() => readDocument('emitters', { ...emitters, [key]: number }))
        if (key !== 'emitters') refused(() => readDocument('emitters', { ...emitters, [key]: `${number} L/h` }))
      }
      refused(() => readDocument('container', { version: 1, shape: 'cylinder', diameter: number, height: 10 }))
      refused(() =>
        readDocument('calibration', { version: 1, method: 'x', form: 'line', exponent: 1, coefficients: [number, 1] }),
      )
      refused(() =>
        readDocument('record', {
          version: 1,
          source: 'a',
          kind: 'Volume',
          time: [0],
          value: [Number.isNaN(number) ? Infinity : number],
        }),
      )
      refused(() => readDocument('reading', { version: 1, time: number, source: 'a', kind: 'Volume', value: 1 }))
    }
    refused(() => parseDocument('emitters', '{"version":1,"emitters":2,"emitterFlow":1e999,"lineFill":0}'))
    refused(() => resolveSenml('[{"n":"a","v":1e999,"t":1.7e9}]'))
  })
  it('lists of a million wrong entries', () => {
    const wrong = new Array(1_000_000).fill('x')
    const record = { version: 1, source: 'a', kind: 'WaterContent', time: wrong, value: wrong }
    expect(refused(() => readDocument('record', record)).problems.length).toBeLessThanOrEqual(100)
    expect(refused(() => resolveSenml(wrong)).problems.length).toBeLessThanOrEqual(100)
    refused(() => readDocument('container', { version: 1, shape: 'stack', parts: wrong }))
    refused(() => readDocument('container', { version: 1, shape: 'measured', heights: wrong, areas: wrong }))
    refused(() => readDocument('emitters', new Array(4_000_000_000)))
    const keys = Object.fromEntries(Array.from({ length: 200_000 }, (_, i) => [`k${i}`, 1]))
    expect(refused(() => readDocument('emitters', { ...emitters, ...keys })).problems.length).toBeLessThanOrEqual(100)
  })
})
