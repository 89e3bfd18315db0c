import type { CatalogueEntry, CatalogueField } from 'porewater/catalogue'
import { DomainError, InputError } from 'porewater/quantity'
import { describe, expect, it } from 'vitest'
import { faultsOfRange, isProbed } from './range-probe.js'

interface Given {
  flow?: number
  flows?: readonly (number | undefined)[]
  lamps?: { on?: number; off?: number }
}

const field = (path: string, more: Partial<CatalogueField> = {}): CatalogueField => ({
  path,
  type: 'Flow',
  text: 'Flow of a dripper.',
  unit: 'L/h',
  range: '[0, 8]',
  shape: 'number',
  ...more,
})

/** The faults that the probe finds in an invented function, called as in its example. */
function found(called: (given: Given) => unknown, example: Given, own: CatalogueField, others: CatalogueField[] = []) {
  const whole = field('given', { type: 'Given', range: 'any', shape: 'other' })
  const entry = {
    name: 'invented',
    topic: 'irrigation',
    arguments: [whole, own, ...others],
  } as unknown as CatalogueEntry
  return faultsOfRange(entry, called as (...args: readonly unknown[]) => unknown, [example], own)
}

function inside(value: number | undefined, argument: string, max = 8, min = 0): number {
  if (value !== undefined && value >= min && value <= max) return value
  throw new DomainError(value!, { quantity: 'flow', unit: 'L/h', min, max, ends: '[]', hint: 'measure it' }, argument)
}

const flow = field('given.flow')

describe('the probe of documented ranges', () => {
  it('finds nothing where a number is refused by its name and range, and taken at the ends', () => {
    expect(found((given) => inside(given.flow, 'flow'), { flow: 2 }, flow)).toEqual([])
    expect(isProbed(flow)).toBe(true)
    expect(isProbed(field('given.flow', { shape: 'other' }))).toBe(true)
    expect(isProbed(field('given.flow', { range: 'any' }))).toBe(false)
  })
  it('fails where it reaches nothing: the number is not looked at, or clamped', () => {
    const answered = ['nothing reaches it: it is answered']
    expect(found(() => 3, { flow: 2 }, flow)).toEqual(answered)
    expect(found((given) => Math.min(Math.max(given.flow!, 0), 8), { flow: 2 }, flow)).toEqual(answered)
  })
  it('fails where the example has no place for the number', () => {
    const deep = field('given.flow.first')
    expect(found((given) => inside(given.flow, 'first'), { flow: 2 }, deep)).toEqual([
      'nothing reaches it: the example has no place for it',
    ])
  })
  it('fails where another number of a part that the example leaves out is refused first', () => {
    const [on, off] = [field('given.lamps.on', { optional: true }), field('given.lamps.off', { optional: true })]
    const both = (given: Given) => given.lamps && [inside(given.lamps.on, 'on'), inside(given.lamps.off, 'off')]
    expect(found(both, {}, off, [on])).toEqual([])
    // A fault of the made-up part: without its range the first number can not be made up, and is refused in the place of the second.
    expect(found(both, {}, off, [field('given.lamps.on', { range: 'as told' })])).toEqual([
      'nothing reaches it: outside-domain of on in 0 to 8',
    ])
    const never = (given: Given) => given.lamps && inside(given.lamps.on, 'on')
    expect(found(never, {}, off, [on])).toEqual(['nothing reaches it: it is answered'])
  })
  it('fails where a list is not looked at, or is refused as a whole by another error', () => {
    const flows = field('given.flows', { shape: 'list', range: 'each in [0, 8]' })
    expect(
      found(({ flows: list = [] }) => list.map((one) => inside(one, 'flows[0]')), { flows: [1, 2] }, flows),
    ).toEqual([])
    expect(found(() => 3, { flows: [1, 2] }, flows)).toEqual(['nothing reaches it: it is answered'])
    const refused = () => {
      throw new InputError('flows', 'is too long', 'give fewer')
    }
    expect(found(refused, { flows: [1, 2] }, flows)).toEqual([
      'nothing reaches it: bad-input of flows in undefined to undefined',
    ])
  })
  it('fails where another range, another name, NaN or a refused end is seen', () => {
    expect(found((given) => inside(given.flow, 'flow', 9), { flow: 2 }, flow)).toEqual([
      'nothing reaches it: outside-domain of flow in 0 to 9',
    ])
    expect(found((given) => inside(given.flow, 'speed'), { flow: 2 }, flow)).toEqual([
      'nothing reaches it: outside-domain of speed in 0 to 8',
    ])
    const gap = (given: Given) => (Number.isNaN(given.flow) ? 0 : inside(given.flow, 'flow'))
    expect(found(gap, { flow: 2 }, flow)).toEqual(['NaN is not refused'])
    const open = (given: Given) => inside(given.flow === 8 ? Infinity : given.flow, 'flow')
    expect(found(open, { flow: 2 }, flow)).toEqual(['the end 8 is refused'])
    const below = (given: Given) => (given.flow! < 0 && given.flow! > -1 ? 0 : inside(given.flow, 'flow'))
    expect(found(below, { flow: 2 }, flow)).toEqual(['-0.001 is not refused with that range and name'])
  })
})
