import { element, escapeText } from './svg.js'

type Place = Readonly<Record<string, string | number | undefined>>

/** Width that text takes at most in common sans-serif fonts, in px. There is no font to measure without a screen. */
export function textWidth(text: string, size: number): number {
  let ems = 0
  for (const character of text) {
    const code = character.codePointAt(0) as number
    ems += code >= 0x2e80 ? 1 : /[mwMW@%—…]/.test(character) ? 0.92 : /[A-ZÄÖÜ]/.test(character) ? 0.7 : 0.57
  }
  return ems * size
}

/** The text, or as much of it as fits, with an ellipsis. */
export function cutText(text: string, size: number, room: number): string {
  if (textWidth(text, size) <= room) return text
  const characters = [...text]
  while (characters.length > 0 && textWidth(`${characters.join('').trimEnd()}…`, size) > room) characters.pop()
  return characters.length === 0 ? '' : `${characters.join('').trimEnd()}…`
}

/** The text in lines that fit; the last line is cut where the text is longer than all of them. */
export function wrapText(text: string, size: number, room: number, most: number): string[] {
  const lines: string[] = []
  let line = ''
  const words = text.split(/\s+/).filter((word) => word !== '')
  for (let i = 0; i < words.length; i++) {
    const longer = line === '' ? words[i]! : `${line} ${words[i]}`
    if (line !== '' && textWidth(longer, size) > room) {
      if (lines.length === most - 1) return [...lines, cutText(`${line} ${words.slice(i).join(' ')}`, size, room)]
      lines.push(line)
      line = words[i]!
    } else {
      line = longer
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
