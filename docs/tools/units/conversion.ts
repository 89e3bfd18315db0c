/** What leads from a number in a unit to the one that is kept: (value − minus) × times ÷ over, each as it stands in the table. */
export interface Conversion {
  readonly minus?: string
  readonly times?: string
  readonly over?: string
}

/** The conversion that a factor of the table describes. */
export function conversionOf(factor: string): Conversion {
  const match = /^(?:- (?<minus>\d[\d.]*))? ?(?:\* (?<times>√?\d[\d.]*))? ?(?:\/ (?<over>√?\d[\d.]*))?$/.exec(factor)
  if (match === null) throw new Error(`"${factor}" is no factor: write "- x * y / z", or some of it`)
  return { ...match.groups }
}

/** The kept number, as code. */
export function keptCode(factor: string, value: string): string {
  const { minus, times, over } = conversionOf(factor)
  return chain(value, [
    ['-', minus],
    ['*', times],
    ['/', over],
  ])
}

/** The number in the unit, as code. */
export function readCode(factor: string, quantity: string): string {
  const { minus, times, over } = conversionOf(factor)
  return chain(quantity, [
    ['*', over],
    ['/', times],
    ['+', minus],
  ])
}

function chain(start: string, steps: readonly [string, string | undefined][]): string {
  let code = start
  let before = ''
  for (const [sign, digits] of steps) {
    if (digits === undefined) continue
    // The form of the house has brackets between a product and a quotient, too.
    const bare = before === '' || sign === '+'
    code = `${bare ? code : `(${code})`} ${sign} ${literal(digits)}`
    before = sign
  }
  return code
}

/** Powers of ten from a million on are written with an exponent. */
function literal(digits: string): string {
  if (digits.startsWith('√')) return `Math.sqrt(${digits.slice(1)})`
  return /^10{6,}$/.test(digits) ? `1e${digits.length - 1}` : digits
}

/** The kept number, in TeX. */
export function keptTex(factor: string, value: string): string {
  const { minus, times, over } = conversionOf(factor)
  const start = minus === undefined ? value : times || over ? `(${value} - ${minus})` : `${value} - ${minus}`
  return `${start}${step(' \\times ', times)}${step(' / ', over)}`
}

/** The number in the unit, in TeX. */
export function readTex(factor: string, quantity: string): string {
  const { minus, times, over } = conversionOf(factor)
  return `${quantity}${step(' \\times ', over)}${step(' / ', times)}${step(' + ', minus)}`
}

function step(sign: string, digits: string | undefined): string {
  if (digits === undefined) return ''
  if (digits.startsWith('√')) return `${sign}\\sqrt{${digits.slice(1)}}`
  return `${sign}${/^10{6,}$/.test(digits) ? `10^${digits.length - 1}` : digits}`
}

/** The kept number of a number in the unit, worked out. */
export function kept(factor: string, value: number): number {
  const { minus, times, over } = conversionOf(factor)
  let number = value
  if (minus !== undefined) number -= Number(minus)
  if (times !== undefined) number *= worked(times)
  if (over !== undefined) number /= worked(over)
  return number
}

/** Digits of the table as a number. */
export function worked(digits: string): number {
  return digits.startsWith('√') ? Math.sqrt(Number(digits.slice(1))) : Number(digits)
}
