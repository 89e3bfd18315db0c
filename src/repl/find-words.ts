import type { CatalogueEntry } from '../catalogue/entry.js'
import { findEntries } from '../catalogue/find-entries.js'

/** Words that a question has around what it asks for. */
const AROUND = new Set(
  'a an and are at be by can do does for from get give how i in is it long make many me much must my need of on one or should so tell that the then there this to use want what when where which why will with would you'.split(
    ' ',
  ),
)

/** What people say, and the words of the library for it. */
const MEANT: Readonly<Record<string, string>> = {
  vwc: 'water content',
  moisture: 'water content',
  wetness: 'water content',
  runoff: 'drain',
  leachate: 'drain',
  overdrain: 'drain',
  vpd: 'vapour pressure deficit',
  vapor: 'vapour',
  et: 'evapotranspiration',
  eto: 'reference evapotranspiration',
  et0: 'reference evapotranspiration',
  etc: 'crop evapotranspiration',
  dli: 'daily light integral',
  ppfd: 'photon flux density',
  tds: 'dissolved solids',
  sensor: 'probe',
  sensors: 'probe',
  dripper: 'emitter',
  drippers: 'emitter',
  pulse: 'shot',
  big: 'size',
  large: 'size',
  irrigate: 'shot',
  pot: 'container',
  slab: 'container',
  rockwool: 'stone wool',
  tension: 'suction',
  dryback: 'dry down',
  drydown: 'dry down',
  liter: 'litre',
  liters: 'litres',
  meter: 'metre',
}

/** The functions that a question or some words ask for, the best first: those with all words, else those with most of them. */
export function asked(question: string): readonly CatalogueEntry[] {
  const exact = found(question)
  if (exact.length > 0 && !question.includes(' ')) return exact
  const words = wordsOf(question)
  const all = words.length === 0 ? [] : found(words.join(' '))
  if (all.length > 0 || exact.length > 0) return all.length > 0 ? all : exact
  const most = new Map<CatalogueEntry, number>()
  for (const word of words)
    for (const [place, entry] of found(word).entries()) most.set(entry, (most.get(entry) ?? 0) + 1 + 1 / (place + 2))
  return [...most].sort(([, a], [, b]) => b - a).map(([entry]) => entry)
}

function wordsOf(question: string): string[] {
  return question
    .toLowerCase()
    .split(/[^\p{L}\p{N}.³²/%°-]+/u)
    .filter((word) => word !== '' && !AROUND.has(word))
    .flatMap((word) => (MEANT[word] ?? word).split(' '))
}

function found(words: string): readonly CatalogueEntry[] {
  return findEntries({ words })
}
