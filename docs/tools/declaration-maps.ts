/**
 * Writes a map beside every typing of the built package that leads from a name to where it is written in `src`, so that "go to definition"
 * in an editor ends in source. tsup joins typings without maps; names are unique enough to find their way back.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** A place in a file. */
export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
}

/** A declared name with the names inside it: properties of an interface, methods of a class. */
interface Declared {
  readonly name: string
  readonly at: Place
  readonly exported: boolean
  readonly inside: ReadonlyMap<string, Place>
}

/** Every name that stands at the top of a file. */
export function declaredIn(file: string, text: string): Declared[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true)
  const place = (node: ts.Node): Place => {
    const { line, character } = source.getLineAndCharacterOfPosition(node.getStart(source))
    return { file, line, column: character }
  }
  const found: Declared[] = []
  for (const statement of source.statements) {
    const exported =
      ts.canHaveModifiers(statement) &&
      (ts.getModifiers(statement) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
    const named = ts.isVariableStatement(statement) ? statement.declarationList.declarations : [statement]
    for (const one of named as readonly ts.NamedDeclaration[])
      if (one.name !== undefined && ts.isIdentifier(one.name))
        found.push({ name: one.name.text, at: place(one.name), exported, inside: membersOf(one, place) })
  }
  return found
}

function membersOf(declaration: ts.Node, place: (node: ts.Node) => Place): Map<string, Place> {
  const members = new Map<string, Place>()
  const visit = (node: ts.Node): void => {
    const isMember = ts.isPropertySignature(node) || ts.isMethodSignature(node) || ts.isClassElement(node)
    if (isMember && node.name !== undefined && ts.isIdentifier(node.name) && !members.has(node.name.text))
      members.set(node.name.text, place(node.name))
    if (!ts.isBlock(node)) ts.forEachChild(node, visit)
  }
  visit(declaration)
  return members
}

/** The declaration in the sources of one in the typings: by name, and of several the one with most of its members; undefined where two serve. */
export function originOf(typed: Declared, sources: ReadonlyMap<string, readonly Declared[]>): Declared | undefined {
  // The joiner of typings numbers names that two files use.
  const all = sources.get(typed.name) ?? sources.get(typed.name.replace(/\$\d+$/, '')) ?? []
  const shared = (one: Declared) =>
    [...typed.inside.keys()].filter((name) => one.inside.has(name)).length * 2 + Number(one.exported)
  const ranked = all.map((one) => [shared(one), one] as const).sort(([a], [b]) => b - a)
  const [first, second] = ranked
  return first !== undefined && first[0] !== second?.[0] ? first[1] : undefined
}

/** A source map, version 3, of pairs of places. */
export function sourceMap(file: string, pairs: readonly (readonly [from: Place, to: Place])[]): string {
  const sources = [...new Set(pairs.map(([, to]) => to.file))].sort()
  const sorted = [...pairs].sort(([a], [b]) => a.line - b.line || a.column - b.column)
  const lines: string[][] = []
  let before = [0, 0, 0, 0]
  for (const [from, to] of sorted) {
    const now = [from.column, sources.indexOf(to.file), to.line, to.column]
    while (lines.length <= from.line) {
      lines.push([])
      before = [0, ...before.slice(1)]
    }
    lines[from.line]!.push(now.map((value, i) => vlq(value - before[i]!)).join(''))
    before = now
  }
  const mappings = lines.map((segments) => segments.join(',')).join(';')
  const paths = sources.map((source) => relative(dirname(file), source))
  return JSON.stringify({
    version: 3,
    file: file.split('/').at(-1),
    sourceRoot: '',
    sources: paths,
    names: [],
    mappings,
  })
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** A whole number in the digits of source maps: sign last, five bits each, the lowest first. */
function vlq(value: number): string {
  let rest = value < 0 ? (-value << 1) | 1 : value << 1
  let text = ''
  do {
    text += DIGITS[(rest & 31) | (rest > 31 ? 32 : 0)]
    rest >>>= 5
  } while (rest > 0)
  return text
}

function filesIn(folder: string, ending: RegExp): string[] {
  return readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => ending.test(name))
    .map((name) => `${root}${folder}/${name}`)
    .sort()
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const sources = new Map<string, Declared[]>()
  for (const file of filesIn('src', /(?<!\.d)\.ts$/).filter((name) => !name.includes('/repl/')))
    for (const one of declaredIn(file, readFileSync(file, 'utf8'))) {
      const before = sources.get(one.name) ?? []
      // Of several ways to call a function the first.
      if (!before.some(({ at }) => at.file === file)) sources.set(one.name, [...before, one])
    }
  const count = { led: 0, lost: 0 }
  for (const file of filesIn('dist', /\.d\.c?ts$/)) {
    const text = readFileSync(file, 'utf8').replace(/\/\/# sourceMappingURL=.*\n$/, '')
    const pairs = declaredIn(file, text).flatMap((typed) => {
      const origin = originOf(typed, sources)
      count[origin === undefined ? 'lost' : 'led']++
      if (origin === undefined) return []
      const inside = [...typed.inside].flatMap(([name, at]) => {
        const to = origin.inside.get(name)
        return to === undefined ? [] : [[at, to] as const]
      })
      return [[typed.at, origin.at] as const, ...inside]
    })
    writeFileSync(`${file}.map`, sourceMap(file, pairs))
    writeFileSync(file, `${text}//# sourceMappingURL=${file.split('/').at(-1)}.map\n`)
  }
  process.stdout.write(`typings lead to source: ${count.led} names, ${count.lost} without one place\n`)
}
