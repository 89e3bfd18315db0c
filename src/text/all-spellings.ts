import { LETTERS, WORDS } from './generated/spellings.js'
import type { Spellings } from './unit-form.js'

let read: Spellings | undefined

/** All spellings, as the parser looks them up; read once. */
export function allSpellings(): Spellings {
  read ??= { letters: bySpelling(LETTERS), words: bySpelling(WORDS) }
  return read
}

function bySpelling(lines: string): Record<string, string> {
  const found: Record<string, string> = Object.create(null)
  for (const line of lines.split('\n')) {
    const [symbol = '', ...spellings] = line.split('|')
    for (const spelling of spellings) found[spelling] = symbol
  }
  return found
}
