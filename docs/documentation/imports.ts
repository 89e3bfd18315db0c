/** Topics with an entry point of their own only; everything else is in `porewater`. */
const APART = ['text', 'schema', 'chart', 'catalogue']

/** Knows from which entry each public name comes. */
export type Origins = ReadonlyMap<string, string>

export function originsOf(names: Iterable<readonly [name: string, topic: string]>): Origins {
  return new Map([...names].map(([name, topic]) => [name, APART.includes(topic) ? `porewater/${topic}` : 'porewater']))
}

/** Code with an import for each public name that it uses and does not make or import itself. */
export function withImports(code: string, origins: Origins): string {
  if (/^import /m.test(code)) return code
  const bare = withoutTextAndComments(code)
  const used = [...new Set(bare.match(/(?<![.\w$])[A-Za-z_$][\w$]*(?!\w*\s*:(?!:))/g) ?? [])]
  const wanted = used.filter((name) => origins.has(name) && !makes(bare, name))
  const from = new Map<string, string[]>()
  for (const name of wanted) {
    const origin = origins.get(name) as string
    from.set(origin, [...(from.get(origin) ?? []), name])
  }
  if (from.size === 0) return code
  const lines = [...from].sort(([a], [b]) => (a < b ? -1 : 1)).map(([origin, names]) => importLine(names, origin))
  return `${lines.join('\n')}\n\n${code}`
}

/** Types carry their mark, so that the line also runs where types are only stripped. */
function importLine(names: readonly string[], origin: string): string {
  const marked = [...names]
    .sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1))
    .map((name) => (/^[A-Z]/.test(name) && !name.endsWith('Error') ? `type ${name}` : name))
  const line = `import { ${marked.join(', ')} } from '${origin}'`
  return line.length <= 100 ? line : `import {\n${marked.map((name) => `  ${name},`).join('\n')}\n} from '${origin}'`
}

function makes(code: string, name: string): boolean {
  return new RegExp(
    `\\b(?:const|let|function|class|type|interface)\\s+${name}\\b|[{,]\\s*${name}\\s*(?:,[^{}=;]*)?\\}\\s*=(?!=|>)`,
  ).test(code)
}

/** Names in text are no uses; those in the holes of a template are. */
function withoutTextAndComments(code: string): string {
  return code
    .replace(/`(?:[^`\\]|\\.)*`/gs, (text) => [...text.matchAll(/\$\{([^}]*)\}/g)].map((hole) => hole[1]).join(' '))
    .replace(/\/\/.*$|\/\*[\s\S]*?\*\/|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/gm, ' ')
}
