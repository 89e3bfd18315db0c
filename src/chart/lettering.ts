import { element, escapeText } from './svg.js'

type Place = Readonly<Record<string, string | number | undefined>>

const ELLIPSIS = '…'

/** Width of a character at most in common sans-serif fonts, in its size. There is no font to measure without a screen. */
function emsOf(character: string): number {
  const code = character.codePointAt(0) as number
  return code >= 0x2e80
    ? 1
    : /[mwMW@%—…]/.test(character)
      ? 0.92
      : /[A-ZÄÖÜ]/.test(character)
        ? 0.7
        : /\d/.test(character)
          ? 0.64
          : 0.57
}

/** Width that text takes at most, in px. */
export function textWidth(text: string, size: number): number {
  let ems = 0
  for (const character of text) ems += emsOf(character)
  return ems * size
}

/** The text, or as much of it as fits, with an ellipsis. Looks no further than what fits, however long the text is. */
export function cutText(text: string, size: number, room: number): string {
  let ems = 0
  let fits = ''
  let shown = ''
  for (const character of text) {
    ems += emsOf(character)
    if (ems * size > room) return fits === '' ? '' : `${fits}${ELLIPSIS}`
    shown += character
    // What ends in a space takes less room without it, so that the test is on the safe side.
    if ((ems + emsOf(ELLIPSIS)) * size <= room) fits = shown.trimEnd()
  }
  return text
}

/** The text in lines that fit; the last line is cut where the text is longer than all of them. */
export function wrapText(text: string, size: number, room: number, max: number): string[] {
  const lines: string[] = []
  let line = ''
  const words = text.split(/\s+/).filter((word) => word !== '')
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!
    if (line === '' || textWidth(line, size) + textWidth(` ${word.slice(0, room)}`, size) <= room) {
      line = line === '' ? word : `${line} ${word}`
    } else if (lines.length === max - 1) {
      return [...lines, cutText(`${line} ${words.slice(i).join(' ')}`, size, room)]
    } else {
      lines.push(line)
      line = word
    }
  }
  return [...lines, cutText(line, size, room)]
}

/** A line of lettering that never is wider than its room; what was cut is told by pointing at it. */
export function lettering(text: string, size: number, room: number, place: Place): string {
  const shown = cutText(text, size, room)
  const whole = shown === text ? [] : [element('title', {}, escapeText(text))]
  return element('text', { ...place, 'font-size': size }, escapeText(shown), ...whole)
}
