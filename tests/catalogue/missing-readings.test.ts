import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { callInExample } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { partAt, withPart } from '../../docs/tools/replaced-part.js'

/** What the library gave or writes to, times of pictures, inputs of any kind, and rows that are refused one by one. */
const NO_READINGS =
  /flags$|calibration\.coefficients$|^(plan|state|flow|outcome|day)\.|^(output|short|tall)$|^(combineFlags|countFlags|runReducer|replanDay|waterUseOfNextDay|convertInto|entriesOfRecord|readingsFromRecord|chart\w+ time|chart(Rehearsal|Plan)) /

/** Lists of numbers inside an argument, as paths. */
function* seriesIn(value: unknown, path: readonly string[] = []): Generator<readonly string[]> {
  if (typeof value !== 'object' || value === null || path.length > 4) return
  if (ArrayBuffer.isView(value) || (Array.isArray(value) && value.length > 2 && value.every(Number.isFinite)))
    yield path
  else
    for (const [key, part] of Object.entries(value))
      if (typeof part !== 'function') yield* seriesIn(part, [...path, key])
}

/** What a call gives as text, or that it is refused. */
function answer(entry: CatalogueEntry, args: readonly unknown[]): string {
  try {
    const result = (publicNames[entry.name] as (...given: readonly unknown[]) => unknown)(...args)
    return JSON.stringify(result, (_, one) => (Object.is(one, Number.NaN) ? 'none' : one))
  } catch (error) {
    return `refused: ${(error as { code?: string }).code ?? error}`
  }
}

/** What a series makes of null from JSON and of text, beside what it makes of NaN. */
async function faultsOf(entry: CatalogueEntry): Promise<string[]> {
  const args = (await callInExample(entry)) ?? []
  return [...seriesIn(args)].flatMap((path) => {
    const shown = path.slice(1).join('.')
    if (NO_READINGS.test(shown) || NO_READINGS.test(`${entry.name} ${shown} `)) return []
    const series = Array.from(partAt(args, path) as ArrayLike<number>)
    const middle = series.length >> 1
    const given = (one: unknown) => {
      // Results of the call before it must not stand in what it writes to.
      const fresh = withPart(
        args,
        path,
        series.map((own, i) => (i === middle ? (one as number) : own)),
      ) as unknown[]
      return answer(entry, fresh)
    }
    const faults: string[] = []
    const gap = given(Number.NaN)
    const ofNull = given(null)
    if (ofNull !== gap && !ofNull.startsWith('refused: ')) faults.push(`${shown}: null is no gap`)
    if (!/^refused: (bad-input|outside-domain)/.test(given(`${series[middle]}`))) faults.push(`${shown}: takes text`)
    return faults
  })
}

describe('a reading that is missing in a series', () => {
  it.each(catalogue.map((entry) => [`${entry.topic}: ${entry.name}`, entry] as const))(
    'is a gap also where JSON made it null, and text is refused: %s',
    async (_, entry) => {
      expect(await faultsOf(entry)).toEqual([])
    },
  )
})
