/**
 * Stands in for `vitest` in the bundle of a mutation run: collects the tests instead of running them, so that one process can run any
 * of them thousands of times. `expect` is the runner's own.
 */

export interface Test {
  readonly file: string
  readonly name: string
  /** The row of a table of tests. */
  readonly row: readonly unknown[]
  readonly run: () => unknown
}

export const tests: Test[] = []
const place = { file: '', groups: [] as string[] }

/** Tests that are collected from here on belong to this file. */
export function inFile(file: string): void {
  place.file = file
}

/** Whether a row of the catalogue's probes speaks of a topic. */
export function isOfTopic({ row }: Test, topic: string): boolean {
  return row.some((item) => {
    const { topic: own, entry } = (item ?? {}) as { topic?: string; entry?: { topic: string } }
    return (own ?? entry?.topic) === topic
  })
}

type Body = (...row: never[]) => unknown

function rowsOf(rows: readonly unknown[]): (readonly unknown[])[] {
  return rows.map((row) => (Array.isArray(row) ? row : [row]))
}

function add(name: string, row: readonly unknown[], body: Body): void {
  const whole = [...place.groups, name].join(' > ')
  tests.push({
    file: place.file,
    name: whole,
    row,
    run: () => (body as (...row: readonly unknown[]) => unknown)(...row),
  })
}

function group(name: string, row: readonly unknown[], body: Body): void {
  place.groups.push(name)
  ;(body as (...row: readonly unknown[]) => unknown)(...row)
  place.groups.pop()
}

const left = () => undefined
type Manner = typeof add

function collector(manner: Manner) {
  // Options may stand between the name and the body.
  const bodyOf = (given: readonly unknown[]): Body => given.find((item) => typeof item === 'function') as Body
  const one = (name: string, ...given: readonly unknown[]) => manner(name, [], bodyOf(given))
  return Object.assign(one, {
    each:
      (rows: readonly unknown[]) =>
      (name: string, ...given: readonly unknown[]) => {
        for (const row of rowsOf(rows)) manner(`${name} ${String(row[0]).slice(0, 60)}`, row, bodyOf(given))
      },
    skipIf: (skip: unknown) => (skip ? left : one),
    runIf: (run: unknown) => (run ? one : left),
  })
}

/** @public The tests import it by another name. */
export const it = collector(add)
/** @public The tests import it by another name. */
export const describe = collector(group)
