import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

// biome-ignore lint/suspicious/noExplicitAny: rows hold numbers, names and lists
type Given = Record<string, any>

/** One published or recomputed value: `[value, unit]` a given, `[value, unit, tolerance]` an expectation. */
interface Row {
  readonly id: string
  readonly topic: string
  readonly given: Record<string, readonly [unknown, string]>
  readonly expected: Record<string, readonly [unknown, string, number]>
  readonly source: string
  /** `read`: seen in print; `recomputed`: by an independent program from the equation; `memory`: not seen. */
  readonly known: 'read' | 'recomputed' | 'memory'
}

const files = new Map<string, Row[]>()

/** All rows of a topic in `tests/published/<file>.json`. */
export function publishedRows(file: string, topic: string): Row[] {
  let rows = files.get(file)
  if (rows === undefined) {
    rows = JSON.parse(readFileSync(new URL(`../published/${file}.json`, import.meta.url), 'utf8')) as Row[]
    files.set(file, rows)
  }
  return rows.filter((row) => row.topic === topic)
}

/**
 * One test for each row of a topic: `compute` gets the plain given values and must return every expected value.
 * `deviations` names rows whose print is known to be wrong, with the reason; for these the test asserts that we differ.
 */
export function checkPublished(
  file: string,
  topic: string,
  compute: (given: Given, row: Row) => Record<string, unknown>,
  deviations: Record<string, string> = {},
): void {
  describe(`${topic} (published values)`, () => {
    const rows = publishedRows(file, topic)
    if (rows.length === 0) throw new Error(`no rows of topic ${topic} in ${file}.json`)
    for (const row of rows) {
      const deviation = deviations[row.id]
      it(`${row.id}: ${row.source} [${row.known}]${deviation ? ` deviates: ${deviation}` : ''}`, () => {
        const given = Object.fromEntries(Object.entries(row.given).map(([name, [value]]) => [name, value]))
        const got = compute(given, row)
        const wrong = Object.entries(row.expected).filter(
          ([name, [value, , tolerance]]) => !agrees(got[name], value, tolerance),
        )
        const report = wrong.map(
          ([name, [value, unit, tolerance]]) =>
            `${name}: got ${JSON.stringify(got[name])}, published ${JSON.stringify(value)} ${unit} ± ${tolerance}`,
        )
        if (deviation) expect(report, 'a listed deviation agrees after all').not.toEqual([])
        else expect(report).toEqual([])
      })
    }
  })
}

function agrees(got: unknown, published: unknown, tolerance: number): boolean {
  if (Array.isArray(published)) {
    return (
      Array.isArray(got) && got.length === published.length && published.every((p, i) => agrees(got[i], p, tolerance))
    )
  }
  if (typeof published !== 'number') return got === published
  // The last term only forgives the rounding of the comparison itself.
  return typeof got === 'number' && Math.abs(got - published) <= tolerance + 1e-12 * Math.abs(published)
}
