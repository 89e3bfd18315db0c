import { allSpellings } from './all-spellings.js'
import type { TextKind, TextUnit } from './text-kind.js'
import { formOf } from './unit-form.js'

/** The unit of a kind that a text names, by its symbol, its UCUM code or another spelling. */
export function unitNamed(text: string, { units, bare }: TextKind): TextUnit | undefined {
  if (text === '') return units.find((unit) => unit.shown === '1') ?? (bare ? units[0] : undefined)
  const exact = units.find((unit) => unit.shown === text || unit.ucum === text)
  if (exact !== undefined) return exact
  const spellings = allSpellings()
  const form = formOf(text, spellings)
  // A spelling of several units is kept in its form.
  const symbol = spellings.letters[form]
  return units.find((unit) => unit.shown === symbol || unit.form === form)
}
