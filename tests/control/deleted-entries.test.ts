import { litres, litresPerHour, runReducer, watchZone, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'

const watch = watchZone({
  probes: ['A', 'B'],
  substrateVolume: litres(10),
  flow: litresPerHour(6),
  minBelievable: waterContent(0.1),
  maxBelievable: waterContent(0.9),
  fullPoint: waterContent(0.74),
})
const moment = (minute: number) => ({
  now: 60 * minute,
  open: minute % 60 === 20,
  readings: ['A', 'B'].map((probe, i) => ({
    probe,
    waterContent: waterContent(0.68 + 0.001 * ((minute + i) % 3)),
    time: 60 * minute,
  })),
})

/** Every list of a kept state, by the way to it. */
function listsOf(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return []
  const inner = Object.entries(value).flatMap(([key, one]) => listsOf(one, [...path, key]))
  return Array.isArray(value) && value.length > 0 ? [path, ...inner] : inner
}

describe('a kept state of a watch from whose list an entry was deleted', () => {
  const { state } = runReducer({ reducer: watch, inputs: Array.from({ length: 300 }, (_, minute) => moment(minute)) })
  it('is refused by name, and the next step begins anew: it had passed, and the step fell over it', () => {
    const lists = listsOf(state)
    expect(lists.length).toBeGreaterThan(10)
    for (const path of lists) {
      const torn = structuredClone(state)
      delete path.reduce((at: Record<string, unknown>, key) => at[key] as never, torn as never)[0]
      const refusal = expect.objectContaining({ code: 'bad-input' })
      expect(() => watch.restore(torn), path.join('.')).toThrow(refusal)
      expect(() => watch.step(torn, moment(300)), path.join('.')).not.toThrow()
    }
  })
})
