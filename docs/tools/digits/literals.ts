import ts from 'typescript'

/** One number of the source that could have been copied wrongly. */
export interface Literal {
  readonly path: string
  readonly line: number
  readonly start: number
  readonly end: number
  readonly text: string
}

/** One number written wrongly. */
export interface Slip {
  readonly kind: 'digit' | 'sign'
  readonly text: string
}

/** What everybody knows: whole numbers up to ten, halves and powers of ten need no publication. */
const PLAIN = /^(?:\d|10|0\.5|1e-?\d+|10+|0\.0*1)$/

/** Settings of an algorithm are judgement, not publication; so is where a fit starts, for from elsewhere it comes to the same (tests/medium/fit-starts). */
const SETTINGS = new Set(['tolerance', 'maxSteps', 'iterations', 'trials'])
/** So are ends of what an argument may be, or of where a fit seeks; those of a span that was measured are not. */
const ENDS = new Set(['min', 'max'])
const JUDGED_BESIDE = new Set(['ends', 'role'])

/** The numbers of a file that stand for a published constant or a cell of a table. */
export function literalsIn(path: string, code: string): Literal[] {
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true)
  const found: Literal[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node)) {
      const start = node.getStart(source)
      const text = code.slice(start, node.end)
      const { line } = source.getLineAndCharacterOfPosition(start)
      if (!PLAIN.test(text) && !isJudged(node)) found.push({ path, line: line + 1, start, end: node.end, text })
    }
    ts.forEachChild(node, visit)
  }
  visit(source)
  return found
}

function isJudged(node: ts.NumericLiteral): boolean {
  const inner = ts.isPrefixUnaryExpression(node.parent) ? node.parent : node
  if (ts.isElementAccessExpression(inner.parent) || ts.isTypeNode(inner.parent) || isKey(inner)) return true
  if (isLengthOfShown(inner)) return true
  const parent = ts.isArrayLiteralExpression(inner.parent) ? inner.parent.parent : inner.parent
  if (!ts.isPropertyAssignment(parent)) return false
  const name = nameOf(parent)
  return (
    SETTINGS.has(name) || (ENDS.has(name) && parent.parent.properties.some((one) => JUDGED_BESIDE.has(nameOf(one))))
  )
}

/** How much of a text a message shows: `text.slice(0, 40)`. */
function isLengthOfShown({ parent }: ts.Node): boolean {
  if (!ts.isCallExpression(parent) || !ts.isPropertyAccessExpression(parent.expression)) return false
  return parent.expression.name.text === 'slice' && parent.arguments[0]!.getText() === '0'
}

const nameOf = ({ name }: ts.ObjectLiteralElementLike): string => (name && ts.isIdentifier(name) ? name.text : '')

const isKey = (node: ts.Node): boolean => 'name' in node.parent && node.parent.name === node

/** Numbers that differ by less, as a share, are one: of a quotient written out in full the last digit is rounding. */
const ROUNDING = 1e-14

/** The number with its last digit one more (nine becomes eight, f in base 16 e), and with the other sign; what is no other number is left out. */
export function slipsOf(text: string): readonly Slip[] {
  const mantissa = /^(?:0x[\da-f_]+|[\d._]+)/.exec(text)![0]
  const at = mantissa.search(/[\da-f][^\da-f]*$/)
  const digit = mantissa[at]!
  const other = digit === '9' ? '8' : digit === 'f' ? 'e' : String.fromCharCode(digit.charCodeAt(0) + 1)
  const slipped = `${text.slice(0, at)}${other}${text.slice(at + 1)}`
  const value = numberOf(text)
  const slips: Slip[] = []
  if (Math.abs(numberOf(slipped) - value) > ROUNDING * value) slips.push({ kind: 'digit', text: slipped })
  if (value !== 0) slips.push({ kind: 'sign', text: `(-${text})` })
  return slips
}

const numberOf = (text: string): number => Number(text.replaceAll('_', ''))

/** The code of a file with each of its slips behind a switch, `slipOn`. */
export function withSlips(
  code: string,
  slips: readonly { readonly id: number; readonly literal: Literal; readonly text: string }[],
): string {
  const at = new Map<number, { literal: Literal; choices: string }>()
  for (const { id, literal, text } of slips) {
    const before = at.get(literal.start)?.choices ?? ''
    at.set(literal.start, { literal, choices: `${before}slipOn===${id}?${text}:` })
  }
  return [...at.values()]
    .sort((a, b) => b.literal.start - a.literal.start)
    .reduce(
      (whole, { literal: { start, end, text }, choices }) =>
        `${whole.slice(0, start)}(${choices}${text})${whole.slice(end)}`,
      code,
    )
}
