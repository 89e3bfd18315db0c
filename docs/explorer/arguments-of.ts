import type { Equation } from '../explorer/equation.js'

/** The arguments of an equation with the inputs of its example. */
export function argumentsOf({ inputs, arguments: names }: Equation): unknown[] {
  const given: Record<string, unknown> = {}
  for (const name of names) if (inputs.some(({ path }) => path.startsWith(`${name}.`))) given[name] = {}
  for (const { path, value } of inputs) {
    if (value === undefined) continue
    const keys = path.split('.')
    const last = keys.pop() as string
    let node = given
    for (const key of keys) {
      node[key] ??= {}
      node = node[key] as Record<string, unknown>
    }
    node[last] = value
  }
  return names.map((name) => given[name])
}
