import { describe, expect, it } from 'vitest'
import { DocumentError } from '../../src/schema/document-error.js'
import { DOCUMENTS } from '../../src/schema/documents/documents.js'
import { bringUpToDate, type MigrationStep } from '../../src/schema/documents/migrate.js'

// An invented document: version 1 had minutes, version 2 seconds, version 3 put the valve's times together.
const steps: MigrationStep[] = [
  ({ minutes, ...rest }) => ({ ...rest, seconds: (minutes as number) * 60 }),
  ({ seconds, ...rest }) => ({ ...rest, valve: { seconds } }),
]

describe('an older document', () => {
  it('is brought to the current version step by step', () => {
    const now = { version: 3, name: 'a', valve: { seconds: 120 } }
    expect(bringUpToDate('x', { version: 1, name: 'a', minutes: 2 }, 3, steps)).toEqual(now)
    expect(bringUpToDate('x', { version: 2, name: 'a', seconds: 120 }, 3, steps)).toEqual(now)
    expect(bringUpToDate('x', now, 3, steps)).toEqual(now)
  })
  it('is not changed itself', () => {
    const old = Object.freeze({ version: 1, minutes: 2 })
    bringUpToDate('x', old, 3, steps)
    expect(old).toEqual({ version: 1, minutes: 2 })
  })
  it('is refused without a version or with one that is not known', () => {
    for (const version of [undefined, 0, 4, -1, 1.5, '1', null, Number.NaN])
      expect(() => bringUpToDate('x', { version, minutes: 2 }, 3, steps)).toThrow(DocumentError)
  })
})

describe('every kind of document', () => {
  it('has a step from each earlier version to the next', () => {
    for (const [name, { version, migrations }] of Object.entries(DOCUMENTS))
      expect(migrations.length, name).toBe(version - 1)
  })
})
