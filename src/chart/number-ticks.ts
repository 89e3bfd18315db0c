import { withTrueMinus } from '../quantity/in-words.js'

/** A number at an axis: as many decimals as the step needs, a true minus sign, no separators that differ from country to country. */
export function tickText(value: number, step: number): string {
  const size = Math.max(Math.abs(value), Math.abs(step))
  if (value === 0 || size === 0) return '0'
  const decimals = Math.max(0, -Math.floor(Math.log10(Math.abs(step)) + 1e-9))
  const text = size >= 1e6 || decimals > 5 ? withPower(value) : value.toFixed(decimals)
  return withTrueMinus(text)
}

function withPower(value: number): string {
  const [digits = '', power = '0'] = Number(value.toPrecision(6)).toExponential().split('e')
  const raised = [...power.replace('+', '')].map((c) => '⁻⁰¹²³⁴⁵⁶⁷⁸⁹'['-0123456789'.indexOf(c)]).join('')
  return digits === '1' ? `10${raised}` : `${digits}·10${raised}`
}

/** Ticks of a logarithmic axis: a number at each power of ten; on short axes at multiples of it too. */
export function logarithmicTicks(low: number, high: number): { x: number; text: string }[] {
  const decades = Math.log10(high / low)
  const multiples = decades > 3 ? [1] : decades > 1 ? [1, 2, 5] : [1, 2, 3, 4, 5, 6, 7, 8, 9]
  const every = Math.max(1, Math.ceil(decades / 9))
  const ticks: { x: number; text: string }[] = []
  for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++) {
    if (power % every !== 0) continue
    for (const multiple of multiples) {
      const x = Number(`${multiple}e${power}`)
      if (x >= low && x <= high) ticks.push({ x, text: tickText(x, x) })
    }
  }
  return ticks
}
