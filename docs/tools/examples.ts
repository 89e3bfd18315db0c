import ts from 'typescript'

/** What an example says a value is, and what it was. */
export interface Checked {
  readonly line: number
  readonly expected: string
  readonly problem?: string
}

type Scope = Readonly<Record<string, unknown>>

/**
 * Runs a TypeScript example with the given names in scope. Every statement with `// => value` behind it is checked: numbers to
 * the digits that are printed, objects by the properties that are printed, `throws DomainError` by the error's name.
 * All fences of one page can share one scope: pass them joined.
 */
export async function runExample(code: string, scope: Scope): Promise<Checked[]> {
  const checked: Checked[] = []
  const check = (line: number, expected: string, produce: () => unknown) => {
    const problem = compare(expected, produce, scope)
    checked.push({ line, expected, ...(problem === undefined ? {} : { problem }) })
  }
  const javascript = ts.transpile(instrument(code), {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    removeComments: true,
  })
  const names = namesIn(code, scope).filter((name) => !declares(code, name))
  const run = new Function('check', ...names, `return (async () => { ${javascript}\n })()`)
  await run(check, ...names.map((name) => scope[name]))
  return checked
}

/** Replaces each checked statement by a call of `check` and drops import lines, whose names are in scope already. */
function instrument(code: string): string {
  const source = ts.createSourceFile('example.ts', code, ts.ScriptTarget.ES2022, true)
  let out = ''
  for (const statement of source.statements) {
    if (ts.isImportDeclaration(statement)) continue
    const words = code.slice(statement.getStart(), statement.end)
    const line = source.getLineAndCharacterOfPosition(statement.getStart()).line + 1
    const expected = expectation(code.slice(statement.end))
    if (expected === undefined) {
      out += `${words}\n`
    } else if (ts.isExpressionStatement(statement)) {
      out += `check(${line}, ${JSON.stringify(expected)}, () => (${words.replace(/;$/, '')}))\n`
    } else if (ts.isVariableStatement(statement)) {
      const [declaration] = statement.declarationList.declarations
      out += `${words}\ncheck(${line}, ${JSON.stringify(expected)}, () => ${declaration?.name.getText()})\n`
    } else {
      throw new Error(`line ${line}: only an expression or a variable can be checked`)
    }
  }
  return out
}

/** The text behind `// =>`, which may go on in further comment lines until its brackets close. */
function expectation(after: string): string | undefined {
  const [first = '', ...more] = after.split('\n')
  const start = /^;?\s*\/\/ => (.*)$/.exec(first)
  if (start === null) return undefined
  let expected = start[1]!
  for (const line of more) {
    if (open(expected) <= 0) break
    const next = /^\s*\/\/(.*)$/.exec(line)
    if (next === null) break
    expected += ` ${(next[1]!).trim()}`
  }
  return expected.trim()
}

function open(text: string): number {
  return (text.match(/[[{(]/g)?.length ?? 0) - (text.match(/[\]})]/g)?.length ?? 0)
}

/** The names in scope that the code has: a function of all of them takes longer to make than to run. */
function namesIn(code: string, scope: Scope): string[] {
  return [...new Set(code.match(/[\w$]+/g))].filter((word) => Object.hasOwn(scope, word))
}

function declares(code: string, name: string): boolean {
  return new RegExp(`\\b(?:const|let|function)\\s+${name.replace(/\$/g, '\\$')}\\b`).test(code)
}

function compare(expected: string, produce: () => unknown, scope: Scope): string | undefined {
  const throws = /^throws (\w+)/.exec(expected)
  let got: unknown
  try {
    got = produce()
  } catch (error) {
    const name = (error as Error).name
    if (throws) return name === throws[1] ? undefined : `threw ${name} where ${throws[1]} is printed`
    return `threw ${String(error)}`
  }
  if (throws) return `gave ${JSON.stringify(got)} where ${expected} is printed`
  const names = namesIn(expected, scope)
  const marked = expected.replace(
    /(?<![\w.'"])-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?![\w'"])/gi,
    (digits) => `printed(${JSON.stringify(digits)})`,
  )
  const quoted = /^(['"`]).*\1$/.test(expected)
  const value = new Function('printed', ...names, `return (${quoted ? expected : marked})`)(
    (digits: string) => new Printed(digits),
    ...names.map((name) => scope[name]),
  )
  return differs(got, value) ? `gave ${show(got)} where ${expected} is printed` : undefined
}

function show(value: unknown): string {
  if (ArrayBuffer.isView(value)) return show(Array.from(value as unknown as ArrayLike<number>))
  return JSON.stringify(value) ?? String(value)
}

/** A number as printed, good to half a unit of its last digit. */
class Printed {
  readonly value: number
  readonly tolerance: number
  constructor(digits: string) {
    this.value = Number(digits)
    const [mantissa = '', exponent = '0'] = digits.toLowerCase().split('e')
    const decimals = mantissa.split('.')[1]?.length ?? 0
    const half = 0.5000001 * 10 ** (Number(exponent) - decimals)
    this.tolerance = decimals === 0 && exponent === '0' ? 1e-9 * Math.max(1, Math.abs(this.value)) : half
  }
}

function differs(got: unknown, expected: unknown): boolean {
  if (expected instanceof Printed)
    return !(typeof got === 'number' && Math.abs(got - expected.value) <= expected.tolerance)
  if (Array.isArray(expected)) {
    const list = ArrayBuffer.isView(got) ? Array.from(got as unknown as ArrayLike<number>) : got
    return !Array.isArray(list) || list.length !== expected.length || expected.some((item, i) => differs(list[i], item))
  }
  if (typeof expected === 'object' && expected !== null) {
    return (
      typeof got !== 'object' ||
      got === null ||
      Object.entries(expected).some(([key, item]) => differs((got as Record<string, unknown>)[key], item))
    )
  }
  return !Object.is(got, expected)
}
