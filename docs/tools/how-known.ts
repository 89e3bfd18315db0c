import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { howKnown, sourceInFull } from '../../src/catalogue/source-in-full.js'
import * as porewater from '../../src/index.js'

/** In the order of the page. */
const HOW_KNOWN = ['not-confirmed', 'recomputed', 'confirmed', 'read', 'own'] as const
type HowKnown = (typeof HOW_KNOWN)[number]

const WORDS: Readonly<Record<HowKnown, string>> = {
  'not-confirmed':
    'Neither the source nor public code or text that agrees has been seen. Look it up before you rely on it.',
  recomputed:
    'An independent program has the same numbers from the equation as it is commonly quoted; the source itself was not seen.',
  confirmed: 'Public code or text that cites the source agrees; the source itself was not seen.',
  read: 'Looked up in the source, in its abstract, or in a copy or reprint of the place that is named.',
  own: 'No source is needed or there is none: definitions, and what the trade commonly does.',
}

/** A published row of the tests, as far as it matters here. */
interface Row {
  readonly topic: string
  readonly known: string
  readonly notTestable?: string
  readonly source: string
}

/** The page: all sources of the functions by how they are known, and the rows that the tests compare with. */
export function howKnownPage(
  entries: readonly CatalogueEntry[],
  files: Readonly<Record<string, readonly Row[]>>,
): string {
  const users = new Map<string, string[]>()
  for (const { name, sources } of entries)
    for (const source of sources) users.set(source, [...(users.get(source) ?? []), name])
  const lines = [
    '# How each value is known',
    '',
    'Written by `npx tsx docs/tools/how-known.ts` from the documentation of the functions and from `tests/published`; a test holds it to both.',
  ]
  for (const kind of HOW_KNOWN) {
    const rows = [...users].filter(([source]) => howKnown(source) === kind).sort(([a], [b]) => (a < b ? -1 : 1))
    const functions = new Set(rows.flatMap(([, names]) => names)).size
    lines.push(
      '',
      `## ${kind === 'own' ? 'Definitions and common practice' : sentence(inWords(kind))}: ${rows.length} sources, ${functions} functions`,
      '',
    )
    lines.push(WORDS[kind])
    if (kind === 'own') continue
    lines.push('', '| source | functions |', '| --- | --- |')
    for (const [source, names] of rows)
      lines.push(`| ${cell(sourceInFull(source))} | ${names.map((name) => `\`${name}\``).join(', ')} |`)
  }
  lines.push('', '## Rows of tables', '')
  lines.push(
    'Each row says it too: `row.source` and `row.known`.',
    '',
    'Tests compare every cell with a second transcription of its print, made apart from the one in the code. Transcribed once only, because no second print was found: the factors of ISO 7888, demal solutions at 0 °C, the limits of uptake of potato, lettuce and tomato other than h3 of lettuce, and `substrateRanges`.',
    '',
    '| table | source | rows | known |',
    '| --- | --- | --- | --- |',
  )
  for (const [table, source, rows, known] of sourcedRows())
    lines.push(`| \`${table}\` | ${cell(sourceInFull(source))} | ${rows} | ${inWords(known)} |`)
  lines.push('', '## Values that the tests compare with', '')
  lines.push('`read` in print, `recomputed` by an independent program from the equation, `memory`: not seen.', '')
  lines.push('| file | source | read | recomputed | memory |', '| --- | --- | --- | --- | --- |')
  for (const [file, rows] of Object.entries(files).filter(([file]) => file !== 'not-testable.json'))
    for (const source of [...new Set(rows.map(documentOf))].sort()) {
      const count = (known: string) => rows.filter((row) => documentOf(row) === source && row.known === known).length
      lines.push(`| ${file} | ${cell(source)} | ${count('read')} | ${count('recomputed')} | ${count('memory')} |`)
    }
  lines.push('', '## Printed values that cannot be tested', '')
  for (const row of files['not-testable.json'] ?? []) lines.push(`- ${row.source}: ${row.notTestable}.`)
  return `${lines.join('\n')}\n`
}

/** The document that a published row comes from, without the place in it. */
const documentOf = (row: Row) => row.source.split('; ')[0]!

/** Rows of the public tables: table, source, how many rows, and how they are known. */
function sourcedRows(): readonly (readonly [string, string, number, string])[] {
  const found: (readonly [string, string, string])[] = []
  const visit = (table: string, value: unknown): void => {
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return
    const { source, known } = value as { source?: unknown; known?: string }
    if (typeof source === 'string') found.push([table, source, known ?? howKnown(source)])
    else for (const inner of Object.values(value)) visit(table, inner)
  }
  for (const [name, value] of Object.entries(porewater)) visit(name, value)
  const kinds = new Map(found.map((row) => [row.join('|'), row]))
  return [...kinds].sort().map(([key, [table, source, known]]) => {
    return [table, source, found.filter((row) => row.join('|') === key).length, known] as const
  })
}

/** A code as it is read. */
const inWords = (code: string) => code.replaceAll('-', ' ')
const sentence = (text: string) => text[0]?.toUpperCase() + text.slice(1)
const cell = (text: string) => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ')

/** What the page is made from, as it lies in the tree. */
export function readHowKnown(root: URL): string {
  const json = (path: string) => JSON.parse(readFileSync(new URL(path, root), 'utf8'))
  const names = ['dielectric', 'evapotranspiration', 'hydraulics', 'irrigation', 'not-testable'].map(
    (name) => `${name}.json`,
  )
  const files = Object.fromEntries(names.map((name) => [name, json(`tests/published/${name}`) as Row[]]))
  return howKnownPage(json('src/catalogue/entries.json') as CatalogueEntry[], files)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = new URL('../../', import.meta.url)
  writeFileSync(new URL('docs/how-known.md', root), readHowKnown(root))
}
