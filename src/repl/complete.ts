import { catalogue } from '../catalogue/catalogue.js'

/** Names that can follow at the end of a line: keys of an argument that is open, or names of the library. */
export function completions(line: string, names: readonly string[]): [string[], string] | undefined {
  const open = /([A-Za-z_$][\w$]*)\(\s*\{([^{}]*)$/.exec(line)
  const typed = /([A-Za-z_$][\w$]*)?$/.exec(line)?.[0] ?? ''
  if (open !== null) {
    const [, name, inside = ''] = open
    const keys = keysOf(name as string).filter((key) => !new RegExp(`\\b${key}\\s*:`).test(inside))
    // After a colon a value is written, not a key.
    if (keys.length > 0 && /(?:^|,)\s*[\w$]*$/.test(inside)) {
      const fitting = keys.filter((key) => key.startsWith(typed)).map((key) => `${key}: `)
      return [fitting, typed]
    }
  }
  if (typed === '' || /[.'"`]\s*[\w$]*$/.test(line)) return undefined
  const fitting = names.filter((name) => name.startsWith(typed))
  return fitting.length > 0 ? [fitting, typed] : undefined
}

function keysOf(name: string): string[] {
  const entry = catalogue.find((one) => one.name === name)
  return (entry?.arguments ?? [])
    .filter((field) => field.path.split('.').length === 2)
    .map((field) => field.path.slice(field.path.indexOf('.') + 1))
}
