import { minOf } from '../../quantity/extremes.js'
import { stem, type Term, termsOf, wordsOf } from './words.js'

/** What can be found, in the order in which it is shown. */
const KINDS = ['function', 'guide', 'kind'] as const
export type Kind = (typeof KINDS)[number]

/** One page, or one section of one. */
export interface Found {
  readonly kind: Kind
  readonly title: string
  /** Its address, from the folder of the documentation. */
  readonly url: string
  readonly summary: string
}

/** Pages, and for each word where it stands: pairs of the page and what the word weighs there. */
export interface Index {
  readonly pages: readonly Found[]
  readonly words: Readonly<Record<string, readonly number[]>>
}

/** Text of a page with what a word in it weighs. */
export type Weighed = readonly (readonly [weight: number, text: string])[]

/** A word that stands in several texts of one page has the weights of all of them. */
export function indexOf(pages: readonly { readonly page: Found; readonly texts: Weighed }[]): Index {
  const words = new Map<string, Map<number, number>>()
  pages.forEach(({ texts, page }, at) => {
    const own: [number, string[]] = [12, [stem(page.title.toLowerCase())]]
    for (const [weight, all] of [own, ...texts.map(([w, text]) => [w, wordsOf(text)] as const)])
      for (const word of new Set(all)) {
        if (word.length < 2) continue
        const places = words.get(word) ?? new Map<number, number>()
        places.set(at, (places.get(at) ?? 0) + weight)
        words.set(word, places)
      }
  })
  return {
    pages: pages.map(({ page }) => page),
    words: Object.fromEntries([...words].map(([word, places]) => [word, [...places].flat()])),
  }
}

const BEGINNING = 0.7
const SLIP = 0.4
/** How much more a name made of all the words weighs than a name of one word. */
const CALLED = 2
/** A page with less than this share of the best of its kind is left out, and one far below the best of all. */
const MIN = 0.2
const MIN_OF_ALL = 0.12

/** The pages that fit, functions first, the best of each kind first. */
export function find(index: Index, query: string, max = 12): Found[] {
  const terms = termsOf(query)
  const last = /[\p{L}\p{N}]+$/u.exec(query.toLowerCase())?.[0]
  const score = new Map<number, { sum: number; terms: number }>()
  for (const term of terms) {
    const places = placesOf(index, term, last)
    const rare = Math.log(1 + index.pages.length / (1 + places.size))
    for (const [page, weight] of places) {
      const before = score.get(page) ?? { sum: 0, terms: 0 }
      score.set(page, { sum: before.sum + weight * rare, terms: before.terms + 1 })
    }
  }
  const typed = query.replace(/\s+/g, '').toLowerCase()
  const ranked = [...score]
    .map(([at, { sum, terms: met }]) => {
      const page = index.pages[at]!
      return { page, weight: sum * (met / terms.length) ** 2, named: page.title.toLowerCase() === typed ? 1 : 0 }
    })
    .sort((a, b) => b.named - a.named || b.weight - a.weight || a.page.title.length - b.page.title.length)
  const best = ranked.reduce((best, { weight }) => Math.max(best, weight), 0)
  return KINDS.flatMap((kind) => {
    const own = ranked.filter(({ page }) => page.kind === kind)
    const min = Math.max(MIN * (own[0]?.weight ?? 0), MIN_OF_ALL * best)
    return own.filter(({ weight }) => weight >= min).slice(0, max)
  }).map(({ page }) => page)
}

/** Where a term stands, in any of its ways; the way that was typed weighs most. */
function placesOf(index: Index, term: Term, last: string | undefined): Map<number, number> {
  const places = new Map<number, number>()
  term.forEach(({ words, share }, i) => {
    const own = words.map((word) => placesOfWord(index, word, i === 0 ? last : undefined))
    for (const [page] of own[0] ?? []) {
      const weights = own.map((one) => one.get(page) ?? 0)
      const min = minOf(weights) * share * words.length ** 0.3
      if (min > (places.get(page) ?? 0)) places.set(page, min)
    }
    // A page that is called what several words say, as `waterContent` is.
    const called = words.length > 1 ? (index.words[words.join('')] ?? []) : []
    for (let at = 0; at < called.length; at += 2) {
      const page = called[at]!
      places.set(page, (places.get(page) ?? 0) + CALLED * called[at + 1]! * share)
    }
  })
  return places
}

/** Exactly; a word that is still being typed also by its beginning; one that nobody wrote by a slip of one letter. */
function placesOfWord(index: Index, word: string, last: string | undefined): Map<number, number> {
  const places = new Map<number, number>()
  const add = (key: string, share: number) => {
    const list = index.words[key] ?? []
    for (let i = 0; i < list.length; i += 2) {
      const [page, weight] = [list[i]!, list[i + 1]! * share]
      if (weight > (places.get(page) ?? 0)) places.set(page, weight)
    }
  }
  if (Object.hasOwn(index.words, word)) add(word, 1)
  if (last !== undefined && last.length > 1 && stem(last) === word)
    for (const key of Object.keys(index.words)) if (key !== word && key.startsWith(last)) add(key, BEGINNING)
  if (places.size === 0 && word.length > 4)
    for (const key of Object.keys(index.words)) if (oneSlip(key, word)) add(key, SLIP)
  return places
}

/** Whether one letter added, left out, changed or swapped with its neighbour makes one word of the other. */
export function oneSlip(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false
  let start = 0
  while (start < a.length && a[start] === b[start]) start += 1
  let end = 0
  while (end < Math.min(a.length, b.length) - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end += 1
  const [left, right] = [a.slice(start, a.length - end), b.slice(start, b.length - end)]
  if (left.length <= 1 && right.length <= 1) return true
  return left.length === 2 && left === [...right].reverse().join('')
}
