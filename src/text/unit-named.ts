import { SPELLINGS } from './generated/spellings.js'
import type { TextKind, TextUnit } from './text-kind.js'
import { formOf } from './unit-form.js'

/** The unit of a kind that a text names, by its symbol, its UCUM code or another spelling. */
export function unitNamed(text: string, about: TextKind): TextUnit | undefined {
  const { units, bare } = about
  if (text === '') return units.find((unit) => unit.shown === '1') ?? (bare ? units[0] : undefined)
  return units.find((unit) => unit.shown === text || unit.ucum === text) ?? unitOfForm(formOf(text, SPELLINGS), about)
}

/** The unit of a kind whose spellings have this form. */
export function unitOfForm(form: string, { units }: TextKind): TextUnit | undefined {
  // A spelling of several units is kept in its form.
  const symbol = Object.hasOwn(SPELLINGS.letters, form) ? SPELLINGS.letters[form] : undefined
  return units.find((unit) => unit.shown === symbol || formOf(unit.shown, SPELLINGS) === form)
}
