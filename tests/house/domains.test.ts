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

/** What `npm run units` writes keeps the domain of a unit beside its constructor; pF and heads end where their own scale does. */
const besideTheirUnit = /^src\/quantity\/(generated\/|p-f\.ts|pressure-head-of-suction\.ts)/
const settled = (path: string) => path.startsWith('src/') && !besideTheirUnit.test(path)

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
      .filter((path) => settled(path) && !path.endsWith('/domains.ts'))
      .flatMap((path) => rowsOf(path))
      .filter(({ range }) => !/[A-Z]{4,}/.test(range))
    expect(elsewhere.map(({ where }) => where)).toEqual([])
  })
  it('stand once: no two rows of all topics have one quantity, unit and range', () => {
    const rows = paths.filter((path) => path.endsWith('/domains.ts')).flatMap(rowsOf)
    expect(rows.length).toBeGreaterThan(400)
    expect(twiceIn(rows)).toEqual([])
  })
  it('are made in no other way than by `domainWith`, and of the two ends of a curve', () => {
    const makers = paths.filter((path) => /\): Domain (=> \(|=> )?\{/.test(readFileSync(`${root}${path}`, 'utf8')))
    expect(makers).toEqual(['src/medium/curves/curve-limits.ts', 'src/quantity/domain.ts'])
  })
  it('would be told where two stand', () => {
    const row = { quantity: 'drain fraction', range: "'1' 0 1 '[)'" }
    const [a, b] = ['src/control/x.ts DRAIN', 'src/zone/y.ts DRAIN'].map((where) => ({ where, ...row }))
    expect(twiceIn([a!, b!, { ...a!, where: 'z', quantity: 'depletion' }])).toEqual([[a!.where, b!.where]])
  })
})

interface Row {
  readonly where: string
  readonly quantity: string
  readonly range: string
}

/** The places of rows that say the same. */
function twiceIn(rows: readonly Row[]): string[][] {
  const found = new Map<string, string[]>()
  for (const { where, quantity, range } of rows) {
    const key = `${quantity} ${range}`
    found.set(key, [...(found.get(key) ?? []), where])
  }
  return [...found.values()].filter((places) => places.length > 1)
}

/** The constants of a file that are domains. */
function rowsOf(path: string): Row[] {
  const text = readFileSync(`${root}${path}`, 'utf8')
  return [...text.matchAll(/const ([A-Z]\w+): Domain = \{([^}]*)\}/g)].map(([, name, body = '']) => {
    const of = (key: string) => new RegExp(`\\b${key}: ('[^']*'|[^,]+)`).exec(body)?.[1] ?? ''
    const range = ['unit', 'min', 'max', 'ends'].map(of).join(' ')
    return { where: `${path} ${name}`, quantity: of('quantity'), range }
  })
}
