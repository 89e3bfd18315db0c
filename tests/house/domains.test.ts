import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

interface Written {
  readonly where: string
  readonly min: string
  readonly max: string
  readonly ends: string
  readonly names: readonly string[]
}

/** Every span that stands in a source file as an object: its ends, as they are written. */
function spansOf(path: string): Written[] {
  const source = ts.createSourceFile(path, readFileSync(`${root}${path}`, 'utf8'), ts.ScriptTarget.ES2022, true)
  const found: Written[] = []
  const look = (node: ts.Node): void => {
    if (ts.isObjectLiteralExpression(node)) {
      const written = (name: string) =>
        node.properties
          .filter(ts.isPropertyAssignment)
          .find((property) => property.name.getText() === name)
          ?.initializer.getText()
      const [min, max, hint] = ['min', 'max', 'hint'].map(written)
      if (min !== undefined && max !== undefined && hint !== undefined) {
        const { line } = source.getLineAndCharacterOfPosition(node.getStart())
        const names = node.properties.map((property) => property.name?.getText() ?? '...')
        found.push({ where: `${path}:${line + 1}`, min, max, ends: (written('ends') ?? '').slice(1, -1), names })
      }
    }
    node.forEachChild(look)
  }
  look(source)
  return found
}

const paths = execFileSync('git', ['ls-files', 'src/**/*.ts'], { cwd: root, encoding: 'utf8' }).trim().split('\n')
const spans = paths.flatMap(spansOf)

/** The topics whose domains are all rows of a table; the others keep theirs beside the code that takes them. */
const settled =
  /^src\/(air|chart|demand|dielectric|flow|irrigation|medium|probe|record|schema|text|uncertainty|water)\/(?!forecast\/)/

describe('domains', () => {
  it('are found', () => expect(spans.length).toBeGreaterThan(500))
  it('never hold an infinity: an infinite end is open', () => {
    const wrong = spans.filter(
      ({ min, max, ends }) => (min === '-Infinity' && ends[0] !== '(') || (max === 'Infinity' && ends[1] !== ')'),
    )
    expect(wrong).toEqual([])
  })
  // Objects of one shape: guards are then fast however many spans they have met.
  it('have their properties in one order', () => {
    const order = ['quantity', 'unit', 'min', 'max', 'ends', 'hint']
    const wrong = spans.filter(
      ({ names }) => !names.includes('...') && names[0] === 'quantity' && names.join() !== order.join(),
    )
    expect(wrong).toEqual([])
  })
  it('are rows of domains.ts, except where an end is a constant of one equation', () => {
    const elsewhere = paths
      .filter((path) => settled.test(path) && !path.endsWith('/domains.ts'))
      .flatMap((path) => rowsOf(path))
      .filter(({ range }) => !/[A-Z]{4,}/.test(range))
    expect(elsewhere.map(({ where }) => where)).toEqual([])
  })
  it('stand once: no two rows of a topic, or of a topic and all, have one quantity, unit and range', () => {
    const common = rowsOf('src/quantity/domains.ts')
    expect(common.length).toBeGreaterThan(15)
    for (const path of paths.filter((one) => settled.test(one) && one.endsWith('/domains.ts'))) {
      const rows = [...rowsOf(path), ...common].map(({ quantity, range }) => `${quantity} ${range}`)
      expect(
        rows.filter((row, k) => rows.indexOf(row) !== k),
        path,
      ).toEqual([])
    }
  })
})

/** The constants of a file that are domains. */
function rowsOf(path: string): { readonly where: string; readonly quantity: string; readonly range: string }[] {
  const text = readFileSync(`${root}${path}`, 'utf8')
  return [...text.matchAll(/const ([A-Z]\w+): Domain = \{([^}]*)\}/g)].map(([, name, body = '']) => {
    const of = (key: string) => new RegExp(`\\b${key}: ('[^']*'|[^,]+)`).exec(body)?.[1] ?? ''
    const range = ['unit', 'min', 'max', 'ends'].map(of).join(' ')
    return { where: `${path} ${name}`, quantity: of('quantity'), range }
  })
}
