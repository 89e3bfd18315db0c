import type { CatalogueEntry, CatalogueField } from '../../src/catalogue/entry.js'
import { escaped, html, table } from './html.js'
import type { Related } from './related.js'

/** The address of the page of a public name, seen from the page that is written; undefined where there is none. */
export type Link = (name: string) => string | undefined

/** What goes in, as a table: name, meaning, unit, range, default. */
export function inputTable(entry: CatalogueEntry, link: Link): string {
  const single = entry.arguments.filter(({ path }) => !path.includes('.')).length === 1
  const top = single ? entry.arguments[0] : undefined
  const fields = entry.arguments.filter(
    (field) => !entry.arguments.some(({ path }) => path.startsWith(`${field.path}.`)),
  )
  if (fields.length === 0) return ''
  const options = top !== undefined && fields.every(({ path }) => path.startsWith(`${top.path}.`))
  const about = options
    ? `<p>One object, <code>${escaped(top.path)}</code>${typeOf(top, link)}: ${html(lowerFirst(top.text))}</p>`
    : ''
  const rows = fields.map((field) => {
    const name = options ? field.path.slice((top?.path.length ?? 0) + 1) : field.path
    return [
      `<code>${escaped(name)}</code>${typeOf(field, link)}`,
      html(field.text),
      unitOf(field),
      `<span class="nowrap">${escaped(rangeOf(field))}</span>`,
      html(defaultOf(field)),
    ]
  })
  return `<h2 id="input">Input</h2>${about}${table('Input', ['name', 'meaning', 'unit', 'range', 'default'], rows)}`
}

/** What comes out; an object as a table of its numbers. */
export function resultPart({ result }: CatalogueEntry, link: Link): string {
  const unit = result.unit === undefined || result.unit === '1' ? '' : `, ${escaped(result.unit)}`
  const words = `<p>${html(result.text.replace(/\.$/, ''))}${unit}${typeOf(result, link)}.</p>`
  const rows = result.fields
    .filter((field) => !result.fields.some(({ path }) => path.startsWith(`${field.path}.`)))
    .map((field) => [`<code>${escaped(field.path)}</code>${typeOf(field, link)}`, html(field.text), unitOf(field)])
  return `<h2 id="result">Result</h2>${words}${rows.length < 1 ? '' : table('Result', ['name', 'meaning', 'unit'], rows)}`
}

/** Neighbours, guides and the page on which the function can be tried. */
export function seeAlso(
  entry: CatalogueEntry,
  related: Related,
  link: Link,
  summary: (name: string) => string,
  explorer: string | undefined,
): string {
  const functions = (related.functions.get(entry.name) ?? []).flatMap((name) => {
    const url = link(name)
    return url === undefined ? [] : [`<li><a href="${url}"><code>${name}</code></a> ${html(summary(name))}</li>`]
  })
  const guides = (related.guides.get(entry.name) ?? []).flatMap(({ guide, title }) => {
    const url = link(`guide:${guide}`)
    return url === undefined ? [] : [`<a href="${url}">${escaped(title)}</a>`]
  })
  const parts = [
    functions.length > 0 ? `<ul class="near">${functions.join('')}</ul>` : '',
    guides.length > 0 ? `<p>In the guides: ${guides.join(' · ')}</p>` : '',
    explorer === undefined ? '' : `<p><a href="${explorer}#${entry.name}">Try it in the explorer</a></p>`,
  ].join('')
  return parts === '' ? '' : `<h2 id="see-also">See also</h2>${parts}`
}

/** The type behind a name, with a link where it has a page. Numbers and text need no word. */
function typeOf({ type }: Pick<CatalogueField, 'type'>, link: Link): string {
  const [name = ''] = type.replace(/^(?:readonly |Readonly<|Partial<)/, '').match(/^\w+/) ?? []
  const url = /^[A-Z]/.test(name) ? link(name) : undefined
  if (url !== undefined) return ` <small><a href="${url}">${name}</a></small>`
  return type.length > 60 || type === 'number' ? '' : ` <small>${escaped(type)}</small>`
}

function unitOf({ unit }: CatalogueField): string {
  return unit === undefined ? '' : `<span class="nowrap">${escaped(unit === '1' ? 'none' : unit)}</span>`
}

function rangeOf({ range }: CatalogueField): string {
  return range === undefined ? '' : range === 'any' ? 'any' : range
}

/** The default in the words of the description; what must be given says so. */
export function defaultOf({ text, optional }: CatalogueField): string {
  if (!optional) return 'must be given'
  const stated =
    /(?:^|[;,(:] |[.] )([^;,.(:]+(?:\.\d+)?[^;,.(:]*?)(?:,)? (?:by default|when left out)/.exec(text)?.[1] ??
    /(?<![\w])left out[,;:]? (?:it is )?([^;.]+)/.exec(text)?.[1]
  return stated === undefined ? 'may be left out' : stated.trim()
}

function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text
}
