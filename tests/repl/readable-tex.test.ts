import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { readableTex } from '../../src/repl/readable-tex.js'

const equations = catalogue.flatMap((entry) => entry.equation.split('\n').map((line) => [entry.name, line] as const))

describe('readableTex', () => {
  it('leaves no backslash, brace or word of TeX in any equation of the package', () => {
    for (const [name, line] of equations) {
      const text = readableTex(line)
      expect(text, name).not.toMatch(/[\\{}]|\b(?:frac|left|right|mathrm|quad|begin|cases|varepsilon)\b/)
      for (const pair of ['()', '[]']) {
        const [open = '', close = ''] = pair
        expect([...text].filter((sign) => sign === open).length, `${name}: ${text}`).toBe(
          [...text].filter((sign) => sign === close).length,
        )
      }
    }
  })
  it.each([
    ['\\frac{V}{q\\,n} + t_{fill}', 'V / (q n) + t_fill'],
    ['V = \\frac{\\Delta\\theta \\, V_s}{1 - f}', 'V = (Δθ V_s) / (1 - f)'],
    ['\\frac{1}{2} x', '(1/2) x'],
    ['-5.3\\times10^{-2}', '-5.3 × 10⁻²'],
    ['\\sqrt[3]{x}', '(x)^(1/3)'],
    ['\\left(\\frac{a}{b}\\right)^{n}', '(a / b)ⁿ'],
    ['\\int_0^{H} \\theta(z)\\,dz', '∫_0^H θ(z) dz'],
    ['25\\,^\\circ\\mathrm{C}', '25 °C'],
    ['e^\\circ(T)', 'e°(T)'],
    ['\\overline{p - o}', 'mean(p - o)'],
    ['\\begin{cases} a & x > 0 \\\\ b & x \\le 0 \\end{cases}', 'a where x > 0; or b where x ≤ 0'],
    ['\\text{a few words}', 'a few words'],
    ['', ''],
  ])('%s', (tex, text) => {
    expect(readableTex(tex)).toBe(text)
  })
  it('does not fall over broken TeX', () => {
    for (const tex of ['\\frac{1}', '}', '{', '^2', '\\', '_', '\\begin{cases}', '\\sqrt['])
      expect(() => readableTex(tex)).not.toThrow()
  })
})
