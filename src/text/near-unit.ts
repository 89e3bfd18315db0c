import { allSpellings } from './all-spellings.js'
import { textRows } from './kind-named.js'
import type { TextKind } from './text-kind.js'
import { rootOf, type Spellings } from './unit-form.js'

/** No unit is written with more characters than this; what is longer is not searched for. */
const MAX = 24

/** What was probably meant by a unit that a kind does not have, in words; empty if nothing is near. */
export function nearUnit(text: string, about: TextKind): string {
  if (text.length > MAX) return ''
  const meant = nearest(text, about, allSpellings())
  if (meant) return `; did you mean ${meant}?`
  // A kind that is written in this unit first, if there is one.
  const rows = textRows().map(([names = '', , , , , , units = '']) => [names.split(' ')[0], ...units.split(/[:~]/)])
  const other = rows.find((row) => row[1] === text) ?? rows.find((row) => row.slice(1).includes(text))
  return other ? `, which is one of ${other[0]}` : ''
}

/** The symbol of the unit whose spelling differs least: in capitals, or in a letter or two of a longer word. */
function nearest(text: string, { units }: TextKind, { letters, words }: Spellings): string | undefined {
  const root = rootOf(text)
  const symbols = units.map((unit) => unit.shown)
  let best: string | undefined
  let min = text.length < 4 ? 1 : text.length < 7 ? 2 : 3
  const names = [...Object.entries({ ...words, ...letters }), ...symbols.map((one) => [one, one])]
  for (const [name = '', symbol = ''] of names) {
    if (!symbols.includes(symbol) || Math.abs(root.length - name.length) >= min) continue
    const far = distance(root, rootOf(name))
    if (far < min) [best, min] = [symbol, far]
  }
  return best
}

/** How many letters must be changed, added or taken out (Levenshtein). */
function distance(a: string, b: string): number {
  let row = Array.from(`${b} `, (_, j) => j)
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1]
    for (let j = 0; j < b.length; j++) next.push(1 + Math.min(row[j + 1]!, next[j]!, row[j]! - Number(letter === b[j])))
    row = next
  }
  return row[b.length]!
}
