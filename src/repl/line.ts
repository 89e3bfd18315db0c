/** What a typed line is, as far as its result's unit depends on it. */
export interface Line {
  /** The name that is given to the result. */
  readonly assigned?: string
  /** The function whose result is the result of the whole line. */
  readonly callee?: string
  /** A name, and the properties read from it. */
  readonly path?: readonly string[]
}

const NAME = '[A-Za-z_$][\\w$]*'

/** Reads a line: `const a = f(...)`, `f(...)`, `a`, `a.b`. Anything else has no unit that could be told. */
export function readLine(source: string): Line {
  const match = new RegExp(`^\\s*(?:(?:(?:const|let|var)\\s+)?(${NAME})\\s*=(?![=>]))?\\s*(.*?);?\\s*$`, 's').exec(
    source,
  )
  const [, assigned, expression = ''] = match ?? []
  const start = new RegExp(`^(${NAME})\\(`).exec(expression)
  const named = assigned === undefined ? {} : { assigned }
  if (start?.[1] !== undefined && closingOf(expression, start[0].length - 1) === expression.length - 1)
    return { ...named, callee: start[1] }
  if (new RegExp(`^${NAME}(?:\\.${NAME})*$`).test(expression)) return { ...named, path: expression.split('.') }
  return named
}

/** Whether more must be typed before a line can run: a bracket or a template is open. */
export function isUnfinished(source: string): boolean {
  return scan(source).open > 0
}

/** Where the bracket that opens at a place is closed; -1 if it is not. */
function closingOf(source: string, from: number): number {
  return scan(source, from).closed
}

/** Goes over code, minding strings and comments: how many brackets stay open, and where the first one is closed. */
function scan(source: string, from = 0): { open: number; closed: number } {
  let open = 0
  let closed = -1
  let quote = ''
  for (let i = from; i < source.length; i++) {
    const sign = source[i]!
    if (quote !== '') {
      if (sign === '\\') i++
      else if (sign === quote || (sign === '\n' && quote !== '`')) quote = ''
    } else if (sign === '/' && source[i + 1] === '/') {
      const end = source.indexOf('\n', i)
      i = end < 0 ? source.length : end
    } else if (/['"`]/.test(sign)) quote = sign
    else if (/[([{]/.test(sign)) open++
    else if (/[)\]}]/.test(sign) && --open === 0 && closed < 0) closed = i
  }
  return { open: quote === '`' ? open + 1 : open, closed }
}
