import { BIG_SIGNS, FUNCTIONS, RELATIONS, SUPERSCRIPTS, SYMBOLS } from './tex-symbols.js'

/**
 * A piece of an equation. A `value` is a number, a letter or anything that multiplies what stands beside it; a `function` is the
 * name of one; a `fraction` needs brackets when something multiplies it; `open`, `close` and `sign` are what they are called.
 */
interface Piece {
  readonly kind: 'value' | 'function' | 'fraction' | 'open' | 'close' | 'sign' | 'space' | 'break'
  readonly text: string
  /** Whether it ends in an index or a power, so that the next letter must not stick to it. */
  readonly raised?: boolean
}

/** An equation in TeX as one line of text that can be read in a terminal. */
export function readableTex(tex: string): string {
  const reader = { tokens: tex.match(/\\[a-zA-Z]+|\\.|\s+|[^\\\s]/gs) ?? [], at: 0 }
  return joined(sequence(reader, []))
}

interface Reader {
  readonly tokens: readonly string[]
  at: number
}

/** Pieces up to one of the ends, which is consumed. */
function sequence(reader: Reader, ends: readonly string[]): Piece[] {
  const pieces: Piece[] = []
  while (reader.at < reader.tokens.length) {
    const token = reader.tokens[reader.at]!
    reader.at++
    if (ends.includes(token)) return pieces
    const last = pieces.at(-1)
    if ((token === '^' || token === '_') && last !== undefined) {
      const script = argument(reader)
      // A degree sign after a space belongs to a unit, not to what stands before it.
      if (last.kind === 'space') pieces.push({ kind: 'value', text: script })
      else pieces[pieces.length - 1] = scripted(last, token, script)
    } else pieces.push(...pieceOf(token, reader))
  }
  return pieces
}

/** What a command or a `^` takes: a group in braces, or the next token. */
function argument(reader: Reader): string {
  while (/^\s+$/.test(reader.tokens[reader.at] ?? '')) reader.at++
  const token = reader.tokens[reader.at] ?? ''
  reader.at++
  return joined(token === '{' ? sequence(reader, ['}']) : pieceOf(token, reader))
}

function pieceOf(token: string, reader: Reader): Piece[] {
  if (/^\s+$/.test(token) || /^\\[,;:! ]$/.test(token) || token === '~') return [{ kind: 'space', text: ' ' }]
  if (token === '{') return [{ kind: 'value', text: joined(sequence(reader, ['}'])) }]
  if (token === '}' || token === '&') return []
  if (token === '\\\\') return [{ kind: 'break', text: '; ' }]
  if (token.startsWith('\\')) return command(token.slice(1), reader)
  if (/^[([]$/.test(token)) return [{ kind: 'open', text: token }]
  if (/^[)\]]$/.test(token)) return [{ kind: 'close', text: token }]
  if (/^[+\-=<>:*]$/.test(token)) return [{ kind: 'sign', text: token }]
  if (token === ',') return [{ kind: 'break', text: ', ' }]
  return [{ kind: 'value', text: token }]
}

function command(word: string, reader: Reader): Piece[] {
  if (/^[tdc]?frac$/.test(word)) return [fraction(argument(reader), argument(reader))]
  if (word === 'sqrt') return [root(reader)]
  if (/^(?:text|mathrm|mathit|mathbf|boldsymbol|operatorname|textrm)$/.test(word)) return [upright(word, reader)]
  if (/^(?:bar|overline|hat|tilde|vec)$/.test(word))
    return [{ kind: 'value', text: mean(argument(reader)), raised: true }]
  if (/^(?:left|right|[bB]ig{1,2}[lr]?|displaystyle|limits|nolimits)$/.test(word)) return delimiter(reader)
  if (word === 'quad' || word === 'qquad') return [{ kind: 'break', text: '   ' }]
  if (word === 'begin') return [cases(argument(reader), reader)]
  const relation = RELATIONS[word]
  if (relation !== undefined) return [{ kind: 'sign', text: relation }]
  const big = BIG_SIGNS[word]
  if (big !== undefined) return [{ kind: 'function', text: big }]
  if (FUNCTIONS.includes(word)) return [{ kind: 'function', text: word }]
  const symbol = SYMBOLS[word] ?? word
  if (/^[{⌈⌊]$/.test(symbol)) return [{ kind: 'open', text: symbol === '{' ? '(' : symbol }]
  if (/^[}⌉⌋]$/.test(symbol)) return [{ kind: 'close', text: symbol === '}' ? ')' : symbol }]
  return [{ kind: 'value', text: symbol }]
}

function fraction(above: string, below: string): Piece {
  const digits = /^\d+$/.test(above) && /^\d+$/.test(below)
  return { kind: 'fraction', text: digits ? `${above}/${below}` : `${grouped(above)} / ${grouped(below)}` }
}

function root(reader: Reader): Piece {
  if (reader.tokens[reader.at] !== '[') return { kind: 'value', text: `√${bracketed(argument(reader))}`, raised: true }
  reader.at++
  const degree = joined(sequence(reader, [']']))
  return { kind: 'value', text: `${bracketed(argument(reader))}^(1/${degree})`, raised: true }
}

/** Words keep their spaces, which mathematics would lose. */
function upright(word: string, reader: Reader): Piece {
  const from = reader.at
  const text = argument(reader)
  if (word === 'operatorname') return { kind: 'function', text }
  if (word !== 'text' && word !== 'textrm') return { kind: 'value', text }
  return { kind: 'value', text: reader.tokens.slice(from + 1, reader.at - 1).join(''), raised: true }
}

/** `\left.` is a bracket that is not drawn. */
function delimiter(reader: Reader): Piece[] {
  if (reader.tokens[reader.at] === '.') reader.at++
  return []
}

/** Rows of `value & condition`. */
function cases(environment: string, reader: Reader): Piece {
  const from = reader.at
  let to = from
  while (to < reader.tokens.length && reader.tokens[to] !== '\\end') to++
  const rows = reader.tokens.slice(from, to).join('').split('\\\\')
  reader.at = to + 1
  argument(reader)
  const texts = rows.map((row) => row.split('&').map(readableTex))
  const told = texts.map(([value = '', condition = '']) => (condition === '' ? value : `${value} where ${condition}`))
  return { kind: 'value', text: environment === 'cases' ? told.join('; or ') : told.join('; ') }
}

function scripted(piece: Piece, sign: '^' | '_', script: string): Piece {
  if (script === '°') return { ...piece, text: `${piece.text}°`, raised: true }
  if (sign === '_') {
    const plain = script.replace(/, /g, ',')
    const index = /^[\p{L}\p{N}_.,'∞]+$/u.test(plain) ? plain : `(${script})`
    return { ...piece, text: `${piece.text}_${index}`, raised: true }
  }
  if (BIG.test(piece.text)) return { ...piece, text: `${piece.text}^${grouped(script)}`, raised: true }
  const small = script.replace(/\s/g, '')
  const base = piece.kind === 'fraction' || / /.test(piece.text) ? `(${piece.text})` : piece.text
  const power = [...small].every((sign_) => sign_ in SUPERSCRIPTS)
    ? [...small].map((sign_) => SUPERSCRIPTS[sign_]).join('')
    : `^${/^[\p{L}\p{N}]$/u.test(small) ? small : `(${script})`}`
  return { ...piece, kind: piece.kind === 'fraction' ? 'value' : piece.kind, text: base + power, raised: true }
}

function mean(text: string): string {
  return `mean${bracketed(text)}`
}

/** In brackets unless it is one name or number, or stands in brackets already. */
function grouped(text: string): string {
  const oneName = /^-?(?:[\d.]+|\p{L}[\p{L}\p{N}_.'°⁰¹²³⁴-⁹⁻⁺ⁿ∞]*)$/u.test(text)
  const call = /^\p{L}+[°']?(\(.*\))$/u.exec(text)
  return oneName || isBracketed(text) || isBracketed(call?.[1] ?? '') ? text : `(${text})`
}

function bracketed(text: string): string {
  return isBracketed(text) ? text : `(${text})`
}

function isBracketed(text: string): boolean {
  if (!text.startsWith('(')) return false
  let depth = 0
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') depth++
    if (text[i] === ')' && --depth === 0) return i === text.length - 1
  }
  return false
}

const BIG = /^[∫ΣΠ∮]/

const MULTIPLIES: readonly string[] = ['value', 'function', 'fraction']

function joined(all: readonly Piece[]): string {
  const pieces = all.filter((piece) => piece.kind !== 'space')
  let bars = 0
  pieces.forEach((piece, i) => {
    if (piece.text === '|') pieces[i] = { ...piece, kind: bars++ % 2 === 0 ? 'open' : 'close' }
  })
  const spaced = new Set(all.filter((_, i) => all[i - 1]?.kind === 'space'))
  let text = ''
  pieces.forEach((piece, i) => {
    const before = pieces[i - 1]
    const after = pieces[i + 1]
    const multiplied =
      (before !== undefined && (MULTIPLIES.includes(before.kind) || before.kind === 'close')) ||
      (after !== undefined && (MULTIPLIES.includes(after.kind) || after.kind === 'open'))
    const own = piece.kind === 'fraction' && multiplied ? `(${piece.text})` : piece.text
    text += gap(before, piece, spaced.has(piece), i, pieces) + own
  })
  return text
    .replace(/ {4,}/g, '   ')
    .replace(/(\S) +,/g, '$1,')
    .trim()
}

/** The space in front of a piece. */
function gap(before: Piece | undefined, piece: Piece, spaced: boolean, i: number, pieces: readonly Piece[]): string {
  if (before === undefined || before.kind === 'open' || piece.kind === 'close' || piece.kind === 'break') return ''
  if (before.kind === 'break') return ''
  if (piece.kind === 'sign') return ' '
  if (before.kind === 'sign') return isUnary(pieces, i - 1) ? '' : ' '
  if (before.kind === 'function' && BIG.test(before.text)) return ' '
  if (piece.kind === 'open') return spaced && before.kind !== 'function' ? ' ' : ''
  if (before.kind === 'function') return piece.kind === 'fraction' ? '' : ' '
  if (piece.kind === 'function' || piece.kind === 'fraction' || before.kind === 'fraction') return ' '
  return spaced || before.raised === true || piece.text.startsWith('√') || before.kind === 'close' ? ' ' : ''
}

/** A minus with nothing to subtract from. */
function isUnary(pieces: readonly Piece[], i: number): boolean {
  const before = pieces[i - 1]
  if (!/^[+-]$/.test(pieces[i]?.text ?? '')) return false
  return before === undefined || before.kind === 'open' || before.kind === 'sign' || before.kind === 'break'
}
