import temml from 'temml'

interface Token {
  info: string
  content: string
}
type Rule = (tokens: Token[], index: number, options: unknown, env: unknown, self: unknown) => string

/** The part of the Markdown parser that is changed. */
export interface Parser {
  readonly renderer: { readonly rules: { fence?: Rule | undefined } }
}

/** Formulas become MathML; a block of code gets the imports that it needs to run. */
export function fences(withImports: (code: string) => string): (parser: Parser) => void {
  return (parser) => {
    const { rules } = parser.renderer
    const fence = rules.fence as Rule
    rules.fence = (tokens, index, options, env, self) => {
      const token = tokens[index]!
      const kind = token.info.trim()
      if (kind === 'math')
        return `<p>${temml.renderToString(token.content.trim(), { displayMode: true, throwOnError: true })}</p>\n`
      if (kind === 'ts') token.content = withImports(token.content)
      return fence(tokens, index, options, env, self)
    }
  }
}
