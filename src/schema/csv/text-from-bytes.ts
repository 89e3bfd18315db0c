import { refusal } from '../hostile-input.js'

/** A text with the encoding in which it was written. */
export interface DecodedText {
  readonly text: string
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'
}

/**
 * The text behind the bytes of a file, however spreadsheets and loggers write it.
 *
 * @procedure Takes the encoding from the byte order mark. Without one, many zero bytes at every other place mean UTF-16; else it is UTF-8,
 * or windows-1252 where it is not valid UTF-8. The mark itself is left out.
 * @param bytes - The content of the file. Unit: 1. Range: any.
 * @returns The text and its encoding.
 * @throws `DocumentError`, an `InputError`, for UTF-16 with half a character at its end.
 * @source rfc-3629-2003, section 6, and rfc-2781-2000, section 4.3 (byte order marks)
 * @example
 * textFromBytes(Uint8Array.of(0xff, 0xfe, 0x41, 0x00)) // => { text: 'A', encoding: 'utf-16le' }
 */
export function textFromBytes(bytes: Uint8Array): DecodedText {
  // Not by its class, which is another one for bytes out of another frame or context.
  if (!ArrayBuffer.isView(bytes))
    throw refusal('file', '', '', 'is no bytes', 'a Uint8Array', 'read the file without an encoding')
  const [a, b, c] = bytes
  if (a === 0xef && b === 0xbb && c === 0xbf) return { text: eightBit(bytes.subarray(3)).text, encoding: 'utf-8' }
  if (a === 0xff && b === 0xfe) return { text: sixteenBit(bytes.subarray(2), 0), encoding: 'utf-16le' }
  if (a === 0xfe && b === 0xff) return { text: sixteenBit(bytes.subarray(2), 1), encoding: 'utf-16be' }
  const zeros = [0, 0]
  const looked = Math.min(bytes.length, 400)
  for (let i = 0; i < looked; i++) if (bytes[i] === 0) zeros[i % 2] = zeros[i % 2]! + 1
  if (zeros[1]! > 0.3 * looked) return { text: sixteenBit(bytes, 0), encoding: 'utf-16le' }
  if (zeros[0]! > 0.3 * looked) return { text: sixteenBit(bytes, 1), encoding: 'utf-16be' }
  return eightBit(bytes)
}

function eightBit(bytes: Uint8Array): DecodedText {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes), encoding: 'utf-8' }
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'windows-1252' }
  }
}

/** UTF-16, whose first byte of a unit is the low one (0) or the high one (1). */
function sixteenBit(bytes: Uint8Array, high: 0 | 1): string {
  if (bytes.length % 2 !== 0)
    throw refusal('file', '', '', 'ends within a character', 'UTF-16 text', 'copy the file again; it was cut')
  const units = new Uint16Array(bytes.length / 2)
  for (let i = 0; i < units.length; i++) units[i] = (bytes[2 * i + 1 - high]! << 8) | bytes[2 * i + high]!
  const parts: string[] = []
  for (let i = 0; i < units.length; i += 8192) parts.push(String.fromCharCode(...units.subarray(i, i + 8192)))
  return parts.join('')
}
