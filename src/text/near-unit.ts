import { KINDS } from './generated/kinds.js'
import { SPELLINGS } from './generated/spellings.js'
import type { TextKind } from './text-kind.js'
import { formOf } from './unit-form.js'
import { unitOfForm } from './unit-named.js'

/** No unit is written with more characters than this; what is longer is not searched for. */
const LONGEST = 24

/** What was probably meant by a unit that a kind does not have, in words; empty if nothing is near. */
export function nearUnit(text: string, about: TextKind): string {
  if (text.length > LONGEST) return ''
  const meant = nearest(text, about)
  if (meant !== undefined) return `; did you mean ${meant}?`
  const form = formOf(text, SPELLINGS)
  const found = Object.entries(KINDS).map(([name, kind]) => ({ name, kind, unit: unitOfForm(form, kind) }))
  const others = found.filter(({ unit }) => unit !== undefined)
  const other = others.find(({ kind, unit }) => unit === kind.units[0]) ?? others[0]
  return other === undefined ? '' : `, which is one of ${other.name}`
}

/** The symbol of the unit whose spelling differs least: in capitals, or in a letter or two of a longer word. */
function nearest(text: string, { units }: TextKind): string | undefined {
  const small = text.toLowerCase()
  const symbols = units.map((unit) => unit.shown)
  const names = [
    ...Object.entries(SPELLINGS.words),
    ...Object.entries(SPELLINGS.letters),
    ...symbols.map((s) => [s, s]),
  ]
  let best: string | undefined
  let least = text.length < 4 ? 1 : text.length < 7 ? 2 : 3
  for (const [name = '', symbol = ''] of names) {
    if (!symbols.includes(symbol) || Math.abs(small.length - name.length) >= least) continue
    const far = distance(small, name.toLowerCase())
    if (far < least) [best, least] = [symbol, far]
  }
  return best
}

/** How many letters must be changed, added, taken out or swapped with their neighbour (optimal string alignment). */
function distance(a: string, b: string): number {
  let [older, old] = [[] as number[], Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      let cost = Math.min((old[j] as number) + 1, (row[j - 1] as number) + 1, (old[j - 1] as number) + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (older[j - 2] as number) + 1)
      row.push(cost)
    }
    ;[older, old] = [old, row]
  }
  return old[b.length] as number
}
