import { entriesOfRecord, followZone, runReducer, type ZoneEntry } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 2 })

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
