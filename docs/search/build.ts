/** Makes the index of the documentation's search from the catalogue, the questions of the README, the guides and the kinds. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { FAMILIES } from '../../src/quantity/kinds.table.js'
import { UNITS } from '../../src/quantity/units.table.js'
import { functionRow, type Row } from '../../src/repl/search/function-row.js'
import { plainText } from '../../src/repl/search/plain-text.js'
import { type Index, indexOf } from '../../src/repl/search/rank.js'
import { guideNames, guideText, guideTitle } from '../documentation/guide-order.js'

export function searchIndex(catalogue: readonly CatalogueEntry[]): Index {
  const questions = questionsOfReadme()
  const headings = headingsByFunction(new Set(catalogue.map(({ name }) => name)))
  return indexOf([
    ...catalogue.map((entry) => functionRow(entry, questions.get(entry.name), headings.get(entry.name))),
    ...guideNames().flatMap(guideRows),
    ...FAMILIES.flatMap(kindRows),
  ])
}

/** Pages that repeat what the functions say are found as a whole. */
const TABLES = ['formula-sheet', 'rehearsal-table']

function sectionsOf(text: string): string[] {
  return text.split(/^(?=#{1,3} )/m).filter((part) => part.trim() !== '')
}

/** For each function the headings of the sections that show how to use it. */
function headingsByFunction(names: ReadonlySet<string>): Map<string, string> {
  const found = new Map<string, string>()
  for (const guide of guideNames().filter((name) => !TABLES.includes(name))) {
    let above = ''
    for (const part of sectionsOf(guideText(guide))) {
      const heading = part.slice(0, part.indexOf('\n'))
      if (!heading.startsWith('###')) above = heading
      for (const name of new Set(part.match(/(?<![\w.])[a-z]\w*(?=\(|`)/g) ?? []))
        if (names.has(name)) found.set(name, `${found.get(name) ?? ''} ${above} ${heading}`)
    }
  }
  return found
}

/** Each section of a guide is a row, found by its own heading. */
function guideRows(name: string): Row[] {
  const text = guideText(name)
  const title = guideTitle(text)
  const sections = TABLES.includes(name) ? [`# ${title}`] : sectionsOf(text)
  const seen = new Map<string, number>()
  return sections.map((part, i) => {
    const [head = '', ...rest] = part.split('\n')
    const heading = plainText(head.replace(/^#+ /, ''))
    const body = rest.join('\n').replace(/```[\s\S]*?```/g, (code) => code.replace(/[^A-Za-z]+/g, ' '))
    const prose = rest
      .join(' ')
      .replace(/```.*?```|!\[.*?\]\(.*?\)/g, ' ')
      .replace(/[|*_#`]/g, '')
      .trim()
    const anchor = anchorOf(heading, seen)
    return {
      page: {
        kind: 'guide',
        title: i === 0 || heading === title ? title : `${title}: ${heading}`,
        url: `documents/${name}.html${i === 0 ? '' : `#${anchor}`}`,
        summary: shortened(prose.replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')),
      },
      texts: [
        [7, heading],
        [3, title],
        [2, body],
      ],
    }
  })
}

/** The anchor that the documentation gives a heading. */
function anchorOf(heading: string, seen: Map<string, number>): string {
  const slug = heading
    .trim()
    .toLowerCase()
    .replace(/<[^>]*>/g, '')
    .replace(/[\u2000-\u206F\u2E00-\u2E7F\\'!"#$%&()*+,./:;<=>?@[\]^`{|}~]/g, '')
    .replace(/\s/g, '-')
  const before = seen.get(slug)
  seen.set(slug, (before ?? -1) + 1)
  return before === undefined ? slug : `${slug}-${before + 1}`
}

function kindRows(family: (typeof FAMILIES)[number]): Row[] {
  const units = UNITS.filter(({ of }) => of === family.name)
  const said = units.flatMap(({ make, symbol, words }) => [make ?? '', symbol, ...(words ?? [])]).join(' ')
  const kinds = family.kinds ?? [{ name: family.name, about: family.about ?? '' }]
  return kinds.map(({ name, about }) => ({
    page: { kind: 'kind', title: name, url: `types/quantity.${name}.html`, summary: plainText(about) },
    texts: [
      [8, name],
      [5, about],
      [2, said],
    ],
  }))
}

/** The README's table of questions: for each function the questions that it answers. */
export function questionsOfReadme(): Map<string, string> {
  const readme = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8')
  const questions = new Map<string, string>()
  for (const [, question = '', functions = ''] of readme.matchAll(/^\| ([^|]*\?) *\| ([^|]*)\|/gm))
    for (const [, name = ''] of functions.matchAll(/`(\w+)`/g))
      questions.set(name, `${questions.get(name) ?? ''} ${question}`)
  return questions
}

function shortened(text: string): string {
  return text.length <= 150 ? text : `${text.slice(0, text.lastIndexOf(' ', 149))} …`
}
