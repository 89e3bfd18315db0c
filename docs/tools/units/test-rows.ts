import { type Family, made, quoted, readerOf, textUnits } from './table.js'

/** What the tests need to know of every unit and kind, for tests that grow with the tables. */
export function testRowsFile(families: readonly Family[]): string {
  const units = families.flatMap((family) =>
    family.units.map(({ make, symbol, factor, noReader, ucum, also = [], words = [] }) => ({
      family: family.row.name,
      kind: (made(family)[0] as { name: string }).name,
      symbol,
      factor,
      ...(make === undefined ? {} : { make }),
      ...(make === undefined || noReader !== undefined ? {} : { reader: readerOf(make) }),
      ...(noReader === undefined ? {} : { noReader }),
      text: ucum !== undefined && family.row.noText === undefined,
      spellings: [...also, ...words],
    })),
  )
  const kinds = families.flatMap((family) =>
    made(family).map((kind) => ({
      kind: kind.name,
      ...(family.row.noText === undefined ? {} : { noText: family.row.noText }),
      symbols: family.row.noText === undefined ? textUnits(family, kind).map((unit) => unit.symbol) : [],
      codes: family.row.noText === undefined ? textUnits(family, kind).map((unit) => unit.ucum) : [],
    })),
  )
  return [
    '/** Every unit of the tables. */',
    `export const UNIT_ROWS = ${code(units)} as const`,
    '',
    '/** Every kind that has a constructor, with the units that text gives it, or the reason why it gives none. */',
    `export const KIND_ROWS = ${code(kinds)} as const`,
    '',
  ].join('\n')
}

function code(rows: readonly object[]): string {
  return `[\n${rows.map((row) => `  ${literal(row)},`).join('\n')}\n]`
}

function literal(value: unknown): string {
  if (typeof value === 'string') return quoted(value)
  if (Array.isArray(value)) return `[${value.map(literal).join(', ')}]`
  if (typeof value === 'object' && value !== null)
    return `{ ${Object.entries(value)
      .map(([key, one]) => `${key}: ${literal(one)}`)
      .join(', ')} }`
  return String(value)
}
