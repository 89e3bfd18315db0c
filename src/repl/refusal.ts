import { nearestNames } from '../catalogue/nearest-names.js'

/** Anything that was thrown, as one line for people: what is wrong and what to do, no stack. */
export function refusalLine(error: unknown, names: readonly string[] = []): string {
  if (typeof error !== 'object' || error === null || !('message' in error)) return `Error: ${String(error)}`
  const { name, message, code } = error as { name?: string; message: unknown; code?: unknown }
  const line = oneLine(String(message))
  // The library's own messages say what, where and what to do.
  if (typeof code === 'string' && /^(?:outside-domain|bad-input|no-convergence)$/.test(code)) return `Refused: ${line}`
  const unknown = /^(\S+) is not defined$/.exec(line)
  const near = unknown ? nearestNames(unknown[1]!, names) : []
  return `${name ?? 'Error'}: ${line}${near.length > 0 ? `. Close to it: ${near.join(', ')}` : ''}`
}

/** One line, without the 1 that stands for the unit of a ratio: `is 0.5 1;` reads as `is 0.5;`. */
export function oneLine(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/([\d.\])]) 1(?= is |[;:,])/g, '$1')
    .trim()
}
