import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { FAMILIES } from '../../src/quantity/kinds.table.js'
import { UNITS } from '../../src/quantity/units.table.js'
import { familiesOf } from '../tools/units/table.js'
import type { Link } from './function-page.js'
import { escaped, html, table } from './html.js'

const families = familiesOf(FAMILIES, UNITS).map(({ row }) => row)

/** Units, constructors and readers of a kind, and the functions that take and give it; empty for a type that is no kind. */
export function kindPart(kind: string, catalogue: readonly CatalogueEntry[], link: Link): string {
  const family = families.find(({ name, kinds }) => name === kind || kinds?.some((one) => one.name === kind))
  const quantities = catalogue.filter(({ topic }) => topic === 'quantity')
  const others = catalogue.filter(({ topic }) => topic !== 'quantity')
  const has = (type: string) => new RegExp(`(?<!\\w)${kind}(?!\\w)`).test(type)
  const gives = others.filter(({ result }) => has(result.type) || result.fields.some(({ type }) => has(type)))
  const takes = others.filter((entry) => entry.arguments.some(({ type }) => has(type)))
  if (family === undefined && gives.length + takes.length === 0) return ''
  const named = (name: string | undefined) => {
    const url = name === undefined ? undefined : link(name)
    return url === undefined ? '' : `<a href="${url}"><code>${name}</code></a>`
  }
  const readers = (make: string) => `in${make[0]?.toUpperCase()}${make.slice(1)}`
  const units = UNITS.filter(
    ({ of, kinds }) =>
      of === family?.name &&
      (kinds === undefined || (kinds as readonly string[]).includes(kind) || kind === family?.name),
  )
  const rows = units.map(({ symbol, make, words }, i) => [
    `${escaped(symbol === '1' ? 'plain ratio' : symbol)}${i === 0 ? ' <small>kept in this</small>' : ''}`,
    named(make),
    make === undefined ? '' : named(quantities.some(({ name }) => name === readers(make)) ? readers(make) : undefined),
    html((words ?? []).slice(0, 3).join(', ')),
  ])
  const list = (title: string, id: string, entries: readonly CatalogueEntry[]) =>
    entries.length === 0
      ? ''
      : `<h2 id="${id}">${title}</h2><ul class="near">${entries
          .filter(({ name }) => link(name) !== undefined)
          .map(({ name, summary }) => `<li>${named(name)} ${html(summary)}</li>`)
          .join('')}</ul>`
  const range =
    family === undefined
      ? ''
      : `<p>Range: <span class="nowrap">${escaped(family.range)}</span> in ${escaped(family.unit === '1' ? 'plain numbers' : family.unit)}.</p>`
  return [
    rows.length === 0
      ? ''
      : `<h2 id="units">Units</h2>${range}${table('Units', ['unit', 'made by', 'read by', 'in text also'], rows)}`,
    list('Functions that give it', 'given-by', gives),
    list('Functions that take it', 'taken-by', takes),
  ].join('')
}
