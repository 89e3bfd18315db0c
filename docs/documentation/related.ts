import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { questionsOfReadme } from '../search/build.js'
import { guideNames, guideText, guideTitle } from './guide-order.js'

const MOST = 7
const ENOUGH = 3

/** A place in the guides that uses a function. */
export interface Mention {
  readonly guide: string
  readonly title: string
}

/** What is told about every function beside its own documentation. */
export interface Related {
  readonly functions: ReadonlyMap<string, readonly string[]>
  readonly guides: ReadonlyMap<string, readonly Mention[]>
}

export function relatedOf(catalogue: readonly CatalogueEntry[]): Related {
  const entries = catalogue.filter(({ topic }) => topic !== 'quantity')
  const known = new Set(entries.map(({ name }) => name))
  const score = new Map<string, Map<string, number>>()
  const near = (a: string, b: string, weight: number) => {
    if (a === b || !known.has(a) || !known.has(b)) return
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const row = score.get(one) ?? new Map<string, number>()
      row.set(other, (row.get(other) ?? 0) + weight)
      score.set(one, row)
    }
  }
  const pairs = (names: readonly string[], weight: number) => {
    for (const [i, a] of names.entries()) for (const b of names.slice(i + 1)) near(a, b, weight)
  }
  const byQuestion = new Map<string, string[]>()
  for (const [name, question] of questionsOfReadme())
    byQuestion.set(question, [...(byQuestion.get(question) ?? []), name])
  for (const names of byQuestion.values()) pairs(names, 2)
  for (const names of groupsBySource(entries)) if (names.length < 9) pairs(names, 3)
  for (const entry of entries) for (const name of namesIn(entry.example, known)) near(entry.name, name, 2)
  const guides = new Map<string, Mention[]>()
  for (const guide of guideNames()) {
    const text = guideText(guide)
    for (const part of text.split(/^(?=#{2,3} )/m)) if (part.length < 6000) pairs(namesIn(part, known), 1)
    if (guide === 'formula-sheet' || guide === 'rehearsal-table') continue
    for (const name of namesIn(text, known))
      guides.set(name, [...(guides.get(name) ?? []), { guide, title: guideTitle(text) }])
  }
  const functions = new Map(
    [...score].map(([name, row]) => [
      name,
      [...row]
        .filter(([, weight]) => weight >= ENOUGH)
        .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
        .slice(0, MOST)
        .map(([other]) => other),
    ]),
  )
  return { functions, guides }
}

/** Names with the same author and year at their end belong together: a relation and its inverse. */
function groupsBySource(entries: readonly CatalogueEntry[]): string[][] {
  const groups = new Map<string, string[]>()
  for (const { name } of entries) {
    const source = /[A-Z][A-Za-z]*(?:18|19|20)\d\d$/.exec(name)?.[0].match(/[A-Z][a-z]+(?:18|19|20)\d\d$/)?.[0]
    if (source !== undefined) groups.set(source, [...(groups.get(source) ?? []), name])
  }
  return [...groups.values()]
}

export function namesIn(text: string, known: ReadonlySet<string>): string[] {
  return [...new Set(text.match(/(?<![\w.])[A-Za-z]\w*/g) ?? [])].filter((name) => known.has(name))
}
