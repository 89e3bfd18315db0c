import { describe, expect, it } from 'vitest'
import { headingsInOrder } from '../../docs/documentation/finish.js'
import { defaultOf } from '../../docs/documentation/function-page.js'
import { boxed } from '../../docs/documentation/html.js'
import { originsOf, withImports } from '../../docs/documentation/imports.js'

const origins = originsOf([
  ['litres', 'quantity'],
  ['percent', 'quantity'],
  ['sizeShot', 'irrigation'],
  ['runTime', 'irrigation'],
  ['DrainEC', 'quantity'],
  ['chartDay', 'chart'],
  ['decisiemensPerMetre', 'quantity'],
])

describe('the imports of a block of code', () => {
  it('are what it uses and does not make', () => {
    expect(withImports('const a = litres(2)\nchartDay({ x: percent(3) })', origins)).toBe(
      "import { litres, percent } from 'porewater'\nimport { chartDay } from 'porewater/chart'\n\nconst a = litres(2)\nchartDay({ x: percent(3) })",
    )
    expect(withImports('const litres = 3\nlitres', origins)).toBe('const litres = 3\nlitres')
    expect(withImports('const { runTime } = sizeShot()\nrunTime', origins)).toMatch(/^import \{ sizeShot \} from/)
    expect(withImports('plan.runTime // litres(3)', origins)).toBe('plan.runTime // litres(3)')
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the code of a page
    expect(withImports("log('litres', `${percent(3)} litres`)", origins)).toMatch(/^import \{ percent \} from/)
    expect(withImports('sizeShot({ litres: 2 })', origins)).toMatch(/^import \{ sizeShot \} from/)
    expect(withImports('const e = decisiemensPerMetre<DrainEC>(2)', origins)).toMatch(
      /^import \{ decisiemensPerMetre, type DrainEC \} from/,
    )
  })
  it('are left alone where the block brings its own', () => {
    const own = "import { litres } from 'porewater'\nlitres(percent)"
    expect(withImports(own, origins)).toBe(own)
  })
})

describe('the parts of a page', () => {
  it('have headings that go down one level at a time', () => {
    expect(headingsInOrder('<h1>a</h1><h4>b</h4><h4>c</h4><h5>d</h5><h2>e</h2>')).toBe(
      '<h1>a</h1><h2>b</h2><h2>c</h2><h3>d</h3><h2>e</h2>',
    )
  })
  it('scroll by themselves where they are wide, and name functions with links', () => {
    const link = (name: string) => (name === 'sizeShot' ? 'x.html' : undefined)
    expect(boxed('<p><code>sizeShot</code> <a href="y"><code>sizeShot</code></a> <code>other</code></p>', link)).toBe(
      '<p><a href="x.html"><code>sizeShot</code></a> <a href="y"><code>sizeShot</code></a> <code>other</code></p>',
    )
    expect(boxed('<p><math display="block"><mi>x</mi></math></p>', link)).toMatch(
      /^<div class="scroll"[^>]*tabindex="0"/,
    )
  })
  it('tell the default in the words of the description', () => {
    const field = (text: string, optional = true) => ({
      path: 'x',
      type: 'number',
      text,
      optional,
      shape: 'number' as const,
    })
    expect(defaultOf(field('Readings below this are not to be believed; 0.05 by default.'))).toBe('0.05')
    expect(defaultOf(field('Standard deviation of readings of one insertion, 0 when left out.'))).toBe('0')
    expect(defaultOf(field('Hour from which the valve may open; left out, at any hour.'))).toBe('at any hour')
    expect(defaultOf(field('Width.'))).toBe('may be left out')
    expect(defaultOf(field('Width.', false))).toBe('must be given')
  })
})
