import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { parse, sourceFiles } from '../../docs/tools/house/source-files.js'

const WORDS = 'most|least|highest|lowest|longest|shortest|greatest|largest|smallest'
const EXTREME = new RegExp(`^(${WORDS})([A-Z]|$)|(${WORDS.replace(/\b\w/g, (c) => c.toUpperCase())})([A-Z]|$)`)

/** What keeps such a name, with the reason. */
const NAMED_SO: Record<string, string> = {
  'DrawnResult.shortest': 'the shortest coverage interval of JCGM 101',
  longestShotFree: 'a stretch of a night, not a number',
}

/** Properties of exported interfaces and types, and exported functions, that name an end by another word than `max` and `min`. */
function extremesIn(path: string, code: string): string[] {
  const found: string[] = []
  const within = (node: ts.Node, holder: string): void => {
    if ((ts.isPropertySignature(node) || ts.isMethodSignature(node)) && EXTREME.test(node.name.getText()))
      found.push(`${holder}.${node.name.getText()}`)
    node.forEachChild((child) => within(child, holder))
  }
  for (const node of parse(path, code).statements) {
    const isExported =
      ts.canHaveModifiers(node) && node.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
    if (!isExported) continue
    if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) within(node, node.name.text)
    if (ts.isFunctionDeclaration(node) && node.name !== undefined && EXTREME.test(node.name.text))
      found.push(node.name.text)
  }
  return found
}

/** Folders whose inner types and states still have such names. */
const INNER = ['src/flow/', 'src/numerics/', 'src/control/watering/', 'src/control/diagnosis/']

describe('the ends of a range', () => {
  it('are max and min in every name that another file sees', () => {
    const files = sourceFiles().filter(({ path }) => !INNER.some((folder) => path.startsWith(folder)))
    expect(files.flatMap(({ path, code }) => extremesIn(path, code))).toEqual(Object.keys(NAMED_SO))
  })
  it('would be found', () => {
    const found = (code: string) => extremesIn('src/x/y.ts', code)
    expect(found('export interface Limits { readonly mostWater: number; readonly maxRest: number }')).toEqual([
      'Limits.mostWater',
    ])
    expect(found("export type Shape = { readonly role: 'a'; readonly least: number }")).toEqual(['Shape.least'])
    expect(found('export function greatestRise(): number {}')).toEqual(['greatestRise'])
    expect(found('export function almost(): number {}')).toEqual([])
  })
})
