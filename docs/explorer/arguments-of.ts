import type { Equation, Input } from './equation.js'

/** The arguments of an equation with values for its inputs, those of its example unless told otherwise; without a value an input is left out. */
export function argumentsOf(
  { inputs, arguments: names }: Equation,
  numberFor: (input: Input) => number | undefined = ({ value }) => value,
): unknown[] {
  const given: Record<string, unknown> = {}
  for (const name of names) if (inputs.some(({ path }) => path.startsWith(`${name}.`))) given[name] = {}
  for (const input of inputs) {
    const value = numberFor(input)
    if (value === undefined) continue
    const keys = input.path.split('.')
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
