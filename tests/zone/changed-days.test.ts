import {
  entriesOfRecord,
  followZone,
  proposeDay,
  reviewZone,
  runReducer,
  type ZoneDay,
  type ZoneEntry,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 2 })
const day = reviewZone({ zone, record }).days[1] as ZoneDay
const GONE = Symbol('gone')

/** A typed error, an answer, or anything else that came of a call. */
function outcomeOf(call: () => unknown): unknown {
  try {
    call()
    return 'answers'
  } catch (error) {
    const { code } = error as { readonly code?: unknown }
    return code === 'bad-input' || code === 'outside-domain' ? 'refuses' : error
  }
}

function changed(path: readonly string[], value: unknown): ZoneDay {
  const copy = JSON.parse(JSON.stringify(day))
  const last = path[path.length - 1] as string
  const inside = path.slice(0, -1).reduce((object, key) => object[key], copy)
  if (value === GONE) delete inside[last]
  else inside[last] = value
  return copy
}

/** Paths of all parts of a day; of long lists the first and the last entry stand for all. */
function pathsOf(part: unknown, path: readonly string[] = []): string[][] {
  if (typeof part !== 'object' || part === null) return []
  const keys = Object.keys(part).filter((_, i, all) => !Array.isArray(part) || i === 0 || i === all.length - 1)
  return keys.flatMap((key) => [[...path, key], ...pathsOf((part as Record<string, unknown>)[key], [...path, key])])
}

describe('a day that was kept and changed', () => {
  it('is refused or proposed from, whichever part is gone or something else', () => {
    const odd: string[] = []
    for (const path of pathsOf(day))
      for (const value of [GONE, null, 'x', {}, Infinity, -1e15]) {
        const found = outcomeOf(() => proposeDay({ zone, day: changed(path, value) }))
        if (found !== 'answers' && found !== 'refuses') odd.push(`${path.join('.')} = ${String(value)}: ${found}`)
      }
    expect(odd).toEqual([])
  })
  it('is refused without its light, level, balance, or as something else', () => {
    for (const part of ['light', 'level', 'balance', 'nextUse', 'findings', 'openings', 'probes'])
      expect(outcomeOf(() => proposeDay({ zone, day: changed([part], GONE) }))).toBe('refuses')
    for (const other of [null, undefined, 7, 'day', []])
      expect(outcomeOf(() => proposeDay({ zone, day: other as never }))).toBe('refuses')
  })
})

describe('an input that was changed', () => {
  const follower = followZone(zone)
  const { state } = runReducer({ reducer: follower, inputs: entriesOfRecord(record).slice(0, 300) })
  const [reading] = entriesOfRecord(record).slice(300)
  it('is refused where its kind is none of a follower, or names a part of the state', () => {
    for (const kind of ['odd', 'memory', 'held', 'day', 'constructor', '__proto__', null, undefined, 7, {}])
      expect(outcomeOf(() => follower.step(state, { ...reading, kind } as ZoneEntry))).toBe('refuses')
  })
  it('is refused where it is no object, or lost its probes', () => {
    for (const input of [
      null,
      undefined,
      7,
      'reading',
      { ...reading, probes: null },
      { ...reading, probes: undefined },
    ])
      expect(outcomeOf(() => follower.step(state, input as ZoneEntry))).toBe('refuses')
  })
})
