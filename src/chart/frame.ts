import { lettering, wrapText } from './lettering.js'
import { element, escapeText } from './svg.js'
import { STYLE } from './theme.js'

/** Bold letters are wider than what is reckoned for common ones by no more: 1.06 times as wide was measured in a browser. */
const BOLD = 1.1

/** What every picture has. */
export interface Frame {
  readonly title: string
  readonly alternative: string
  readonly width: number
  readonly height: number
}

/** An SVG document with its title, its text alternative and its colours; the rest is drawn below the height the title takes. */
export function framed(frame: Frame, draw: (top: number) => string): string {
  const { title, alternative, width, height } = frame
  const lines = wrapText(title, 17 * BOLD, width - 32, 2)
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'pw',
      role: 'img',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      'aria-label': `${title}. ${alternative}`,
    },
    element('title', {}, escapeText(title)),
    element('desc', {}, escapeText(alternative)),
    element('style', {}, STYLE),
    element('rect', { class: 'paper', width, height }),
    ...lines.map((line, i) => lettering(line, 17, width, { x: 16, y: 26 + 21 * i, 'font-weight': 600 })),
    draw(44 + 21 * (lines.length - 1)),
  )
}
