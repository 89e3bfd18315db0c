/** Other spellings with the symbols they stand for: those taken letter for letter, and the roots of those taken in any case. */
export interface Spellings {
  readonly letters: Readonly<Record<string, string | undefined>>
  readonly words: Readonly<Record<string, string | undefined>>
}

/**
 * The form of a unit that all its spellings share: what is multiplied and what is divided by, sorted, with exponents. `µmol m⁻² s⁻¹` and
 * `umol/(m^2 s)` are both `µmol/m2 s`. Nothing is cancelled, and nothing is known of prefixes and dimensions.
 */
export function formOf(unit: string, spellings: Spellings): string {
  const over: string[] = []
  const under: string[] = []
  const whole = plain(symbolOf(plain(unit), spellings))
  const [first = '', ...divisors] = whole.replace(/ per /gi, '/').split('/')
  // The 1 of `1/cm` is no unit; any other number is one that nobody knows.
  factors(first === '1' ? '' : first, over, under, spellings)
  for (const divisor of divisors) {
    const inside = /^ ?\((.*)\) ?$/.exec(divisor)?.[1]
    const [near = '', ...far] = inside === undefined ? parts(divisor, spellings) : [inside]
    factors(near, under, over, spellings)
    // Without brackets, only the next unit is divided by.
    for (const part of far) factors(part, over, under, spellings)
  }
  return [over, under].map((list) => list.sort().join(' ')).join('/')
}

/** A unit without superscripts, carets and the many signs of a product. */
function plain(unit: string): string {
  return unit
    .replace(/μ|\bu(?=(?:mol|mho|S|m)\b)/g, 'µ')
    .replace(/[⁰¹²³⁴-⁹⁻^]/g, (sign) => '0123456789-'['⁰¹²³⁴⁵⁶⁷⁸⁹⁻'.indexOf(sign)] ?? '')
    .replace(/[·⋅×*.\s]+/g, ' ')
    .replace(/\((\+|c)\)/g, '$1')
    .replace(/ ?(\/) ?|(°) (?=[CF]$)/g, '$1$2')
    .trim()
}

/** A word in small letters, in British spelling and without the s of a plural. */
export function rootOf(word: string): string {
  return word
    .toLowerCase()
    .replace(/(met|lit)er/, '$1re')
    .replace(/(..)s$/, '$1')
}

/** The symbol that a spelling stands for; a text that is no spelling stands for itself. */
function symbolOf(text: string, { letters, words }: Spellings): string {
  return letters[text] ?? words[rootOf(text)] ?? text
}

/** Units that stand side by side; `US gal` is one. */
function parts(text: string, { letters, words }: Spellings): string[] {
  return letters[text] || words[rootOf(text)] ? [text] : text.split(' ')
}

function factors(text: string, over: string[], under: string[], spellings: Spellings): void {
  for (const part of parts(text, spellings)) {
    const [, base = part, minus, power = ''] = /^(\D.*?)(-?)(\d)$/.exec(part) ?? []
    if (part === '') continue
    const symbol = plain(symbolOf(base, spellings)).replace(/ /g, '_')
    ;(minus ? under : over).push(power === '1' ? symbol : symbol + power)
  }
}
