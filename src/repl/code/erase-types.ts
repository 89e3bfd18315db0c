import { type Token, tokenizer } from 'acorn'

/** One piece of code that is no JavaScript. */
type Piece = readonly [from: number, to: number]

/** A type between a name and its brackets, as in `percent<Porosity>(90)`: in JavaScript that would compare two names. */
export function withoutTypeArguments(source: string): string {
  return source.replace(/\b([a-z]\w*)<(?:[A-Z]\w*|string|number)(?:\[\])?>(?=\()/g, '$1')
}

/**
 * TypeScript as far as the guides use it, without its types: `const a: T = b`, `(a: T) => b`, `a as T`, `a!`. What is not understood is left
 * as it is, and refused as JavaScript.
 */
export function withoutTypes(source: string): string {
  const tokens = tokensOf(source)
  const pieces: Piece[] = []
  const open: string[] = []
  for (let i = 0; i < tokens.length; i++) {
    const [before, here, next] = [tokens[i - 1], tokens[i], tokens[i + 1]] as [
      Token | undefined,
      Token,
      Token | undefined,
    ]
    const sign = here.type.label
    if (/^[([{]$|^\$\{$/.test(sign)) open.push(sign)
    else if (/^[)\]}]$/.test(sign)) open.pop()
    else if (sign === ':' && before && isAnnotated(tokens, i, open.at(-1), source)) {
      const end = endOfType(tokens, i + 1, source)
      pieces.push([here.start, end])
    } else if (sign === 'name' && wordAt(source, here) === 'as' && before && endsValue(before) && next)
      pieces.push([here.start, endOfType(tokens, i + 1, source)])
    else if (source.slice(here.start, here.end) === '!' && before && endsValue(before) && before.end === here.start)
      pieces.push([here.start, here.end])
  }
  return pieces.reduceRight((text, [from, to]) => text.slice(0, from) + text.slice(to), source)
}

/** A colon behind a name that is declared or that is an argument: in JavaScript there is none. */
function isAnnotated(tokens: readonly Token[], at: number, bracket: string | undefined, source: string): boolean {
  const name = tokens[at - 1]
  const next = tokens[at + 1]
  // `({ readings }: Observation) =>`: what is taken apart has a type of a single name.
  if (name?.type.label === '}' && bracket === '(' && next !== undefined)
    return /^[A-Z]/.test(wordAt(source, next)) && /^[),]$/.test(tokens[at + 2]?.type.label ?? '')
  const before = tokens[at - 2]
  if (name?.type.label !== 'name' || before === undefined) return false
  if (/^(?:const|var)$/.test(before.type.label) || wordAt(source, before) === 'let') return true
  return bracket === '(' && /^[(,]$/.test(before.type.label)
}

/** Where a type ends: at a comma, a bracket or a sign that is no part of one. */
function endOfType(tokens: readonly Token[], from: number, source: string): number {
  let depth = 0
  let end = tokens[from - 1]?.end ?? source.length
  for (let i = from; i < tokens.length; i++) {
    const { type, start, end: over } = tokens[i]!
    const text = source.slice(start, over)
    if (depth === 0 && i > from && (/^(?:,|;|=|=>|\)|\]|\}|\?|:)$/.test(text) || newLine(source, end, start)))
      return end
    if (/^[([{<]$/.test(text)) depth++
    else if (/^[)\]}>]$/.test(text)) depth--
    else if (
      depth === 0 &&
      i > from &&
      !/^(?:\.|\||&)$/.test(text) &&
      !joins(source.slice(0, start).trimEnd().at(-1)) &&
      type.label === 'name'
    )
      return end
    end = over
  }
  return end
}

function wordAt(source: string, { start, end }: Token): string {
  return source.slice(start, end)
}

function joins(sign: string | undefined): boolean {
  return sign !== undefined && /[.|&<({[:,]/.test(sign)
}

function newLine(source: string, from: number, to: number): boolean {
  return source.slice(from, to).includes('\n')
}

function endsValue({ type }: Token): boolean {
  return /^(?:name|num|string|\)|\]|\}|`|true|false|null)$/.test(type.label)
}

function tokensOf(source: string): Token[] {
  const tokens: Token[] = []
  try {
    for (const token of tokenizer(source, { ecmaVersion: 'latest', sourceType: 'module' })) tokens.push(token)
  } catch {
    // What was read so far is enough: the end is refused as JavaScript.
  }
  return tokens
}
