import type { FamilyRow, KindRow, UnitRow, WholeFamilyRow } from '../../../src/quantity/unit-row.js'

/** A family with its units, the first of which is the one in which numbers are kept. */
export interface Family {
  readonly row: WholeFamilyRow
  readonly kinds: readonly KindRow[]
  readonly units: readonly [UnitRow, ...UnitRow[]]
}

/** The families of both tables. A table that contradicts itself is refused, with the row. */
export function familiesOf(families: readonly FamilyRow[], units: readonly UnitRow[]): Family[] {
  const names = families.map((row) => row.name)
  refuseTwice(names, 'family')
  refuseTwice(
    units.flatMap((unit) => unit.make ?? []),
    'constructor',
  )
  for (const unit of units)
    if (!names.includes(unit.of)) throw new Error(`no family ${unit.of}, which the unit ${unit.symbol} is of`)
  return families.map((row) => {
    const [first, ...others] = units.filter((unit) => unit.of === row.name)
    if (first?.make === undefined) throw new Error(`${row.name} needs a first unit with a constructor`)
    if (first.factor !== '') throw new Error(`${row.name} keeps its numbers in ${first.symbol}: its factor is empty`)
    refuseTwice(
      [first, ...others].map((unit) => unit.symbol),
      `unit of ${row.name}`,
    )
    return { row: whole(row, first), kinds: row.kinds ?? [onlyKind(row)], units: [first, ...others] }
  })
}

/** What a number is to be where its range says no more than that. */
const TO_GIVE: Readonly<Record<string, (quantity: string) => string>> = {
  '[0, ∞)': (quantity) => `give ${/^[aeiou]/.test(quantity) ? 'an' : 'a'} ${quantity} of zero or more`,
  '(0, ∞)': (quantity) => `give a ${quantity} above zero`,
  '(-∞, ∞)': (quantity) => `give a finite ${quantity}`,
}

/** The row with what its name, its first unit and its range say of it, where it says nothing else itself. */
function whole(row: FamilyRow, first: UnitRow): WholeFamilyRow {
  const file = (row.noun ?? row.name).replace(/([a-z])(?=[A-Z])/g, '$1-').toLowerCase()
  const { quantity = file.replaceAll('-', ' '), range = '[0, ∞)' } = row
  const hint = row.hint ?? TO_GIVE[range]?.(quantity)
  if (hint === undefined) throw new Error(`${row.name} says nothing about numbers outside ${range}`)
  return { file: file.replaceAll(' ', '-'), unit: first.symbol, ...row, quantity, range, hint }
}

function onlyKind(row: FamilyRow): KindRow {
  const { name, about, mark } = row
  if (about === undefined || mark === undefined) throw new Error(`${name} says neither its kinds nor what it is`)
  return { ...row, about, mark }
}

function refuseTwice(names: readonly string[], what: string): void {
  const twice = names.find((name, i) => names.indexOf(name) !== i)
  if (twice !== undefined) throw new Error(`the ${what} ${twice} stands twice`)
}

/** Kinds that the constructors of a family make. */
export function made(family: Family): KindRow[] {
  return family.kinds.filter((kind) => kind.given === undefined)
}

/** Units of one kind that text reads and writes, that of writing first. */
export function textUnits(family: Family, kind: KindRow): UnitRow[] {
  const all = family.units.filter((unit) => unit.ucum !== undefined && (unit.kinds?.includes(kind.name) ?? true))
  const { written } = family.row
  return all.sort((a, b) => Number(b.symbol === written) - Number(a.symbol === written))
}

/** Name of the reader of a unit. */
export function readerOf(make: string): string {
  return `in${make[0]?.toUpperCase()}${make.slice(1)}`
}

/** Text as a literal of the house's style. */
export function quoted(text: string): string {
  return text.includes("'") ? JSON.stringify(text) : `'${text}'`
}
