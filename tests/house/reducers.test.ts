import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { importsOf, parse, sourceFiles } from '../../docs/tools/house/source-files.js'

type Source = { readonly path: string; readonly code: string }

/** The names that the indexes list. */
const listedIn = (files: readonly Source[]): Set<string> =>
  new Set(
    files
      .filter(({ path }) => path.endsWith('/index.ts'))
      .flatMap(({ path, code }) => importsOf(path, code).flatMap(({ names }) => names)),
  )

/** Properties of each interface and of what it extends, with their types. */
function propertiesIn(sources: readonly ts.SourceFile[]): (name: string) => ReadonlyMap<string, string> {
  const declared = new Map<string, ts.InterfaceDeclaration>()
  for (const source of sources)
    for (const node of source.statements) if (ts.isInterfaceDeclaration(node)) declared.set(node.name.text, node)
  const of = (name: string): Map<string, string> => {
    const node = declared.get(name)
    const all = new Map<string, string>()
    if (node === undefined) return all
    for (const clause of node.heritageClauses ?? [])
      for (const { expression } of clause.types) for (const [key, type] of of(expression.getText())) all.set(key, type)
    for (const member of node.members)
      if (ts.isPropertySignature(member) && member.type !== undefined)
        all.set(member.name.getText(), member.type.getText())
    return all
  }
  return of
}

/** Whether a result holds the next state: first in a tuple, under its own type, or as `state`. */
function givesNext(
  result: string,
  state: string,
  propertiesOf: (name: string) => ReadonlyMap<string, string>,
): boolean {
  const tuple = result.replace(/^readonly /, '')
  if (tuple.startsWith('[')) return new RegExp(`^\\[(\\w+: )?${state}\\b`).test(tuple)
  const properties = propertiesOf(result.replace(/<.*$/s, ''))
  if (properties.has('state') || /\bstate: /.test(result)) return true
  // A kind of quantity is no state.
  return propertiesOf(state).size > 0 && [...properties.values()].includes(state)
}

const PLAIN = ['number', 'string', 'boolean', 'unknown', 'object']

/** Public functions, and functions in public interfaces, that take a state with an input and give the next one beside something else. */
function stepsIn(files: readonly Source[], isPublic: (name: string) => boolean): string[] {
  const sources = files.map(({ path, code }) => parse(path, code))
  const propertiesOf = propertiesIn(sources)
  const isStep = ({ parameters: [before, input], type }: ts.SignatureDeclaration) => {
    const [state, given] = [before?.type?.getText() ?? '', input?.type?.getText() ?? '']
    if (!/^\w+$/.test(state) || PLAIN.includes(state) || given === '' || type === undefined) return false
    // A list of inputs is a run of a reducer.
    return !given.endsWith('[]') && givesNext(type.getText(), state, propertiesOf)
  }
  return sources.flatMap(({ statements }) =>
    statements.flatMap((node) => {
      if (ts.isFunctionDeclaration(node) && node.name !== undefined && isPublic(node.name.text))
        return isStep(node) ? [node.name.text] : []
      if (!ts.isInterfaceDeclaration(node) || !isPublic(node.name.text) || node.name.text === 'Reducer') return []
      return node.members.flatMap((member) => {
        const signature = ts.isPropertySignature(member) ? member.type : member
        const isFunction =
          signature !== undefined && (ts.isMethodSignature(signature) || ts.isFunctionTypeNode(signature))
        return isFunction && isStep(signature) ? [`${node.name.text}.${member.name?.getText()}`] : []
      })
    }),
  )
}

describe('what goes on from a state by an input', () => {
  it('is a reducer', () => {
    const files = sourceFiles()
    const listed = listedIn(files)
    expect(stepsIn(files, (name) => listed.has(name))).toEqual([])
  })
  it('is found in a tuple, in a result with a state, and in an interface', () => {
    const found = (code: string) => stepsIn([{ path: 'src/x/y.ts', code }], () => true)
    expect(found('export function count(state: Sums, x: Light): readonly [state: Sums, shots: number] {}')).toEqual([
      'count',
    ])
    expect(
      found(
        'interface Pot { readonly held: Volume }\ninterface Out { readonly after: Pot }\nfunction step(before: Pot, event: Shot): Out {}',
      ),
    ).toEqual(['step'])
    expect(found('function step(before: Pot, event: Shot): { state: Pot; drained: number } {}')).toEqual(['step'])
    expect(found('interface Flow<S> { readonly step: (state: S, during: Step) => readonly [S, number] }')).toEqual([
      'Flow.step',
    ])
    expect(found('interface Flow { step(state: S, during: Step): readonly [S, number] }')).toEqual(['Flow.step'])
    expect(found('function later(time: number, by: number): number {}')).toEqual([])
  })
})
