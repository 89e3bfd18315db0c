import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { publicNames } from '../../docs/tools/public-names.js'

/** Whatever a finding may carry: a sentence takes what it needs. */
const NUMBERS = {
  level: 'note',
  about: 'probe 1',
  value: 0.25,
  limit: 0.75,
  min: 0.125,
  max: 0.875,
  unit: '1',
  time: 1_780_000_000,
  note: 'words',
  of: 'shotVolume',
  samples: [1, 2],
  evidence: [],
  check: 'look',
  by: 1,
  distance: 2,
  needed: 3,
  to: 'wall',
  probe: 'probe 1',
  zone: 'zone 1',
  volume: 1,
  runTime: 60,
  waterContent: 0.5,
  perEmitter: 0.25,
  since: 1_780_000_000,
  weight: 0.5,
}

function answer(name: string, finding: object): { message: string; source?: string } | string {
  return (publicNames[name] as (finding: object) => { message: string; source?: string } | string)(finding)
}

/** The codes of a topic: it names them where it refuses another one. */
function codesOf(name: string): string[] {
  try {
    answer(name, { ...NUMBERS, code: 'no-such-code' })
  } catch (error) {
    const { code, hint = '' } = error as { code?: string; hint?: string }
    const [, list] = /^give one of (.*)$/.exec(hint) ?? []
    if (code === 'bad-input' && list !== undefined) return list.split(', ').filter((word) => /^[a-z-]+$/.test(word))
  }
  return []
}

const told = catalogue
  .filter(({ name, arguments: [first] }) => name.startsWith('explain') && first?.path !== 'shot')
  .flatMap((entry) => codesOf(entry.name).map((code) => [`${entry.name}: ${code}`, entry, code] as const))

describe('every code has a sentence with its numbers', () => {
  it('where a topic names its codes', () => expect(told.length).toBeGreaterThan(150))
  it.each(told)('%s', (_, { name }, code) => {
    const said = answer(name, { ...NUMBERS, code })
    const { message, source } = typeof said === 'string' ? { message: said } : said
    expect(message).toMatch(/\w{2,}\W+\w{2,}/)
    expect(message).not.toMatch(/undefined|NaN|\[object|\?/)
    if (source !== undefined) expect(source).toMatch(/\w{3}/)
  })
})
