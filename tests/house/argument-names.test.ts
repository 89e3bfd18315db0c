import { readFileSync } from 'node:fs'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { parse, root, sourceFiles } from '../../docs/tools/house/source-files.js'

/** Functions that refuse, and which of their arguments is the name that the refusal gives. */
const PLACES: Readonly<Record<string, number>> = {
  numberIn: 2,
  wholeNumberIn: 2,
  namedIn: 2,
  requireObject: 1,
  requireList: 1,
  requireRows: 1,
  requireMade: 2,
  oneOf: 2,
  notAbove: 0,
  answerOf: 1,
  answersOf: 1,
  InputError: 0,
  DomainError: 2,
}

/** What is no argument of a function, and what it is. */
const OTHERS: Readonly<Record<string, string>> = {
  command: 'a word typed at the terminal',
  function: 'what is to be drawn at the terminal',
  import: 'a line typed at the terminal',
  lesson: 'a word typed at the terminal',
  save: 'a word typed at the terminal',
  'product of two units': 'a line typed at the terminal',
  u: 'the unit of a SenML record',
}

/** The names that refusals of a file give, as they are written. */
function namesIn(path: string, code: string): string[] {
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if ((ts.isCallExpression(node) || ts.isNewExpression(node)) && ts.isIdentifier(node.expression)) {
      const name = node.arguments?.[PLACES[node.expression.text] ?? Number.POSITIVE_INFINITY]
      if (name !== undefined && ts.isStringLiteral(name)) found.push(name.text)
    }
    ts.forEachChild(node, visit)
  }
  visit(parse(path, code))
  return found
}

/** Names of all properties and arguments of the public face, and of the terms that its inputs extend. */
const face = [{ code: readFileSync(`${root}docs/public-api.txt`, 'utf8') }, ...sourceFiles().filter(isTerms)]
const known = new Set(face.flatMap(({ code }) => [...code.matchAll(/\b(\w+)\??:/g)].map(([, name]) => name)))

function isTerms({ path }: { readonly path: string }): boolean {
  return path.endsWith('/terms.ts')
}

/** Each of several names, and each step of a path, has to be one. */
const isKnown = (name: string) =>
  name in OTHERS ||
  name.split(', ').every((one) => one.split('.').every((step) => known.has(step.replace(/\[\d*\]/g, ''))))

describe('the argument that a refusal names', () => {
  it('is one of the public face', () => {
    const wrong = sourceFiles().flatMap(({ path, code }) =>
      namesIn(path, code)
        .filter((name) => !isKnown(name))
        .map((name) => `${path}: ${name}`),
    )
    expect(wrong).toEqual([])
  })
  it('would be missed if it were not', () => {
    const code = "numberIn(x, D, 'contentAfter'); throw new InputError('heights and areas', '', '')"
    expect(namesIn('a.ts', code).filter((name) => !isKnown(name))).toEqual(['contentAfter', 'heights and areas'])
  })
})
