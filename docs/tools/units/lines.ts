/** Longest line of a generated file, as the formatter has it. */
export const WIDTH = 120

/** An import or export of some names, in one line where it fits. */
export function importLine(start: string, names: readonly string[], from: string): string {
  const line = `${start} { ${names.join(', ')} } from '${from}'`
  if (line.length <= WIDTH) return line
  return `${start} {\n${names.map((name) => `  ${name},`).join('\n')}\n} from '${from}'`
}
