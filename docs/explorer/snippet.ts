import type { Equation } from './equation.js'

export type Values = Readonly<Record<string, number | undefined>>

/** A tree of options, with code at its ends. */
interface Node {
  readonly [name: string]: Node | string
}

/** A program that runs as it stands: the call with these inputs, each made by the constructor of its kind. */
export function snippetOf(equation: Equation, values: Values): string {
  const used = new Set([equation.name])
  const tree: Record<string, Node | string> = {}
  for (const { path, maker, optional } of equation.inputs) {
    const value = values[path]
    if (value === undefined && optional) continue
    const number = value === undefined ? 'NaN' : String(value)
    if (maker !== '') used.add(maker)
    put(tree, path.split('.'), maker === '' ? number : `${maker}(${number})`)
  }
  const args = equation.arguments.map((name) => tree[name]).filter((one) => one !== undefined)
  const call = `${equation.name}(${args.map((one) => written(one as Node | string, 0)).join(', ')})`
  const names = [...used].sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1))
  const line = `import { ${names.join(', ')} } from 'porewater'`
  const imports =
    line.length <= 80 ? line : `import {\n${names.map((name) => `  ${name},`).join('\n')}\n} from 'porewater'`
  const unit = equation.unit === '1' || equation.unit === '' ? '' : ` // ${equation.unit}`
  return `${imports}\n\nconst result = ${call}\nconsole.log(result)${unit}\n`
}

function put(tree: Record<string, Node | string>, [name = '', ...rest]: readonly string[], code: string): void {
  if (rest.length === 0) tree[name] = code
  else {
    const below = (tree[name] ?? {}) as Record<string, Node | string>
    tree[name] = below
    put(below, rest, code)
  }
}

function written(node: Node | string, depth: number): string {
  if (typeof node === 'string') return node
  const parts = Object.entries(node).map(([name, one]) => `${name}: ${written(one, depth + 1)}`)
  const line = `{ ${parts.join(', ')} }`
  if (line.length + 2 * depth <= 60) return line
  const indent = '  '.repeat(depth + 1)
  return `{\n${parts.map((part) => `${indent}${part},`).join('\n')}\n${'  '.repeat(depth)}}`
}
