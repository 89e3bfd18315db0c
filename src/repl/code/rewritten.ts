import type { AnyNode, ImportDeclaration, Node, Program } from 'acorn'
import { InputError } from '../../quantity/errors.js'
import { parsed } from './parsed.js'

/** Names by which rewritten code reaches the arithmetic of the session. */
export const OPERATED = '__operated'
export const NEGATED = '__negated'

/** Code as it runs in the session. */
export interface RewrittenCode {
  readonly code: string
  /** The name whose value is to be shown: that of a last declaration. */
  readonly declared?: string
}

const OPERATORS = /^(?:[-+*/%<>]|\*\*|[<>]=|[=!]==?)$/

/**
 * Code with its operators handed to the session, so that quantities keep their kinds; names that are declared at the outermost level may be
 * declared again, and imports of the package are what the session holds already.
 */
export function rewritten(source: string, names: ReadonlySet<string>): RewrittenCode {
  const { source: whole, program } = parsed(source)
  const write = writerOf(whole)
  const last = program.body.at(-1)
  const code = program.body.map((statement) => outermost(statement, write, names)).join(';\n')
  const [first] = last?.type === 'VariableDeclaration' ? last.declarations.slice(-1) : []
  if (first?.id.type === 'Identifier') return { code, declared: first.id.name }
  return { code }
}

function outermost(statement: Program['body'][number], write: Writer, names: ReadonlySet<string>): string {
  if (statement.type === 'ImportDeclaration') return imported(statement, names)
  if (statement.type === 'ExportNamedDeclaration' && statement.declaration)
    return outermost(statement.declaration, write, names)
  const text = write(statement)
  return statement.type === 'VariableDeclaration' ? text.replace(/^(?:const|let)\b/, 'var') : text
}

function imported({ source, specifiers }: ImportDeclaration, names: ReadonlySet<string>): string {
  const from = String(source.value)
  if (!/^porewater(?:\/[a-z]+)?$/.test(from))
    throw new InputError(
      'import',
      `"${from.slice(0, 80)}" is not here`,
      'a session holds what porewater has, and nothing else',
    )
  return specifiers
    .map((one) => {
      if (one.type !== 'ImportSpecifier' || one.imported.type !== 'Identifier')
        throw new InputError('import', 'names no function', "write import { litres } from 'porewater'")
      const { name } = one.imported
      // The name of a type, which plain JavaScript does not have.
      if (!names.has(name) && /^[A-Z]/.test(name)) return ''
      if (!names.has(name)) throw new InputError('import', `there is no ${name} in porewater`, `see find('${name}')`)
      return one.local.name === name ? '' : `var ${one.local.name} = ${name};`
    })
    .join('')
}

type Writer = (node: AnyNode) => string

/** Writes a node as it stands in the source, with what is below it rewritten. */
function writerOf(source: string): Writer {
  const write: Writer = (node) => {
    const own = operatorCall(node, write)
    if (own !== undefined) return own
    let text = ''
    let at = node.start
    for (const child of childrenOf(node)) {
      text += source.slice(at, child.start) + write(child) + endOf(node, child)
      at = child.end
    }
    return text + source.slice(at, node.end)
  }
  return write
}

/** A statement that is written anew may start with a bracket: the one before it must not run into it. */
function endOf(node: AnyNode, child: AnyNode): string {
  if (node.type === 'BlockStatement' || node.type === 'StaticBlock') return ';'
  return node.type === 'SwitchCase' && node.test !== child ? ';' : ''
}

function operatorCall(node: AnyNode, write: Writer): string | undefined {
  const call = (sign: string, left: string, right: string) => `${OPERATED}(${JSON.stringify(sign)}, ${left}, ${right})`
  if (node.type === 'BinaryExpression' && OPERATORS.test(node.operator))
    return call(node.operator, write(node.left as AnyNode), write(node.right))
  if (node.type === 'UnaryExpression' && node.operator === '-' && node.argument.type !== 'Literal')
    return `${NEGATED}(${write(node.argument)})`
  if (node.type === 'AssignmentExpression' && OPERATORS.test(node.operator.slice(0, -1)) && node.operator !== '=') {
    const left = write(node.left as AnyNode)
    return `(${left} = ${call(node.operator.slice(0, -1), left, write(node.right))})`
  }
  if (node.type !== 'UpdateExpression') return undefined
  const name = write(node.argument)
  const [sign, back] = node.operator === '++' ? ['+', '-'] : ['-', '+']
  const changed = `(${name} = ${call(sign as string, name, '1')})`
  return node.prefix ? changed : call(back as string, changed, '1')
}

function childrenOf(node: AnyNode): AnyNode[] {
  const children = Object.values(node).flatMap((value: unknown) => (Array.isArray(value) ? value : [value]))
  const nodes = children.filter((child): child is AnyNode => isNode(child))
  // `{ a }` is name and value in one place.
  const once = nodes.filter(
    (child, i) => nodes.findIndex((other) => other.start === child.start && other.end === child.end) === i,
  )
  return once.sort((a, b) => a.start - b.start)
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && 'start' in value && 'end' in value
}
