import { describe, expect, it } from 'vitest'
import { STYLE } from '../../src/chart/theme.js'

const [light = '', dark = ''] = STYLE.split('@media')

/** Relative luminance and contrast as WCAG 2.2 (W3C 2023) defines them. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string) => {
    const whole = colour.length === 4 ? colour.replace(/[0-9a-f]/gi, '$&$&') : colour
    const [r = 0, g = 0, blue = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(whole.slice(at, at + 2), 16) / 255)
      .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4))
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue
  }
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high + 0.05) / (low + 0.05)
}

describe('the colours of the pictures', () => {
  it.each([
    ['light', light, '#ffffff'],
    ['dark', dark, '#14181c'],
  ])('stand out from a %s background: 4.5 to 1, as WCAG asks of text', (_, css, paper) => {
    expect(css).toContain(paper.replace('#ffffff', '#fff'))
    const colours = [...css.matchAll(/\.[cf]\d\{(?:stroke|fill):(#[0-9a-f]+)/gi)].map((match) => match[1]!)
    expect(colours).toHaveLength(12)
    const words = [...css.matchAll(/\.pw (?:text|\.quiet)\{fill:(#[0-9a-f]+)/gi)].map((match) => match[1]!)
    expect(words).toHaveLength(2)
    for (const colour of [...colours, ...words]) expect(contrast(colour, paper), colour).toBeGreaterThanOrEqual(4.5)
  })
  it('are not alone in telling lines apart: every look but the first has its own dash', () => {
    const dashes = [...light.matchAll(/\.c\d\{[^}]*stroke-dasharray:([\d ]+)/g)].map((match) => match[1])
    expect(new Set(dashes).size).toBe(5)
  })
  it('are dark on screens only, so that paper stays white', () => {
    expect(STYLE).toContain('@media screen and (prefers-color-scheme:dark)')
  })
})
