/** A range as the documentation prints it. */
export interface DocumentedRange {
  readonly kind: 'interval' | 'any'
  readonly min: number
  readonly max: number
  readonly minOpen: boolean
  readonly maxOpen: boolean
  readonly integers: boolean
  readonly each: boolean
}

/** Parses `[0, 1)`, `integers [1, ∞)`, `each in (0, ∞)` or `any`; undefined for anything else. */
export function parseRange(words: string): DocumentedRange | undefined {
  if (/^any\b/.test(words))
    return { kind: 'any', min: -Infinity, max: Infinity, minOpen: true, maxOpen: true, integers: false, each: false }
  const match = /^(each in )?(integers )?([[(])(-?[\d.eE+-]+|-∞), (-?[\d.eE+-]+|∞)([\])])/.exec(words)
  if (match === null) return undefined
  const number = (text: string) => Number(text.replace('∞', 'Infinity'))
  return {
    kind: 'interval',
    min: number(match[4]!),
    max: number(match[5]!),
    minOpen: match[3] === '(',
    maxOpen: match[6] === ')',
    integers: match[2] !== undefined,
    each: match[1] !== undefined,
  }
}
