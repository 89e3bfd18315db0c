import { catalogue } from '../catalogue/catalogue.js'
import { KINDS } from '../text/generated/kinds.js'
import { unitsOf } from './held/signatures.js'
import { kindForText } from './kind-of-field.js'

/** Names that can follow at the end of a line: keys of an argument that is open, or names of the library. */
export function completions(line: string, names: readonly string[]): [string[], string] | undefined {
  const unit = unitCompletions(line)
  if (unit !== undefined) return unit
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

/** Units for a number in quotes that is still open: those of the argument, or all that begin so. */
function unitCompletions(line: string): [string[], string] | undefined {
  const [, typed] = /['"`]\s*[+-]?[\d.]+\s+([^'"`]*)$/.exec(line) ?? []
  if (typed === undefined) return undefined
  const [, name = '', key] = /([A-Za-z_$][\w$]*)\((?:[^()]*?([\w$]+)\s*:)?[^(){}:]*$/.exec(line) ?? []
  const entry = catalogue.find((one) => one.name === name)
  const field = entry?.arguments.find((one) => (key === undefined ? true : one.path.endsWith(`.${key}`)))
  const kind = field === undefined ? undefined : kindForText(field)
  const units = kind === undefined ? Object.keys(KINDS).flatMap(unitsOf) : unitsOf(kind)
  const fitting = [...new Set(units)].filter((symbol) => symbol !== '1' && symbol.startsWith(typed))
  return fitting.length === 0 ? undefined : [fitting, typed]
}

function keysOf(name: string): string[] {
  const entry = catalogue.find((one) => one.name === name)
  return (entry?.arguments ?? [])
    .filter((field) => field.path.split('.').length === 2)
    .map((field) => field.path.slice(field.path.indexOf('.') + 1))
}
