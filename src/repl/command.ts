import packageJson from '../../package.json' with { type: 'json' }
import { catalogue } from '../catalogue/catalogue.js'
import { isPorewaterError } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import { jsonData } from '../schema/hostile-input.js'
import { foundText, helpAbout } from './help.js'
import { jsonLine, oneShot } from './one-shot.js'

/** What a command prints and how it ends: 0 done, 1 refused by the library, 2 not understood. */
export interface Outcome {
  readonly code: 0 | 1 | 2
  readonly out: string
  readonly error: string
}

const USAGE = `porewater ${packageJson.version}: substrate water physics

  porewater                     a session with every function, help, plots and a lesson
  porewater lesson              a session that begins with the lesson of ten minutes
  porewater FUNCTION            reads arguments as JSON from standard input, writes the result as JSON
  porewater FUNCTION 'JSON'     the same with the arguments on the command line
  porewater --help FUNCTION     what a function computes, its equation, arguments, domain, source
  porewater --find WORDS        functions that have these words
  porewater --version

Numbers are in the unit that --help gives; text with a unit stands for a number ("11 L", "15 %").
  echo '{"substrateVolume":"11 L","rise":"3 points","drainFraction":"15 %"}' | porewater shotVolume
Several arguments are a list in order, or an object by their names. What another function makes is called in place:
  {"call": "vanGenuchten1980", "with": {...}}
A missing reading in a list is null in the result. Refusals are JSON on standard error.
Exit codes: 0 done, 1 refused by the library, 2 not understood.
The session keeps its history in ~/.porewater_history; POREWATER_HISTORY names another file, or none if it is empty.
`

const done = (out: string): Outcome => ({ code: 0, out, error: '' })

/** Whether a command reads its arguments from standard input. */
export function needsInput(words: readonly string[]): boolean {
  return words.length === 1 && catalogue.some((entry) => entry.name === words[0])
}

/** Runs the command with its arguments, and with what stood on standard input. */
export function command(words: readonly string[], library: Readonly<Record<string, unknown>>, input: string): Outcome {
  const [first = '', ...rest] = words
  if (first === '--version' || first === '-v') return done(`${packageJson.version}\n`)
  if (first === '--help' || first === '-h') return rest.length === 0 ? done(USAGE) : helpOutcome(rest.join(' '))
  if (first === '--find')
    return rest.length === 0 ? unclear('--find needs words') : done(`${foundText(rest.join(' '))}\n`)
  if (first.startsWith('-')) return unclear(`there is no option ${first.slice(0, 80)}`)
  if (rest.length > 1) return unclear('give the arguments as one piece of JSON')
  return functionOutcome(first, rest[0] ?? input, library)
}

function helpOutcome(name: string): Outcome {
  const known = catalogue.some((entry) => entry.name === name)
  return known ? done(`${helpAbout(name)}\n`) : unclear(helpAbout(name))
}

function functionOutcome(name: string, text: string, library: Readonly<Record<string, unknown>>): Outcome {
  if (!catalogue.some((entry) => entry.name === name)) return unclear(helpAbout(name))
  let given: unknown
  try {
    given = text.trim() === '' ? undefined : jsonData('input', text)
  } catch (error) {
    return { code: 2, out: '', error: jsonLine({ error }) }
  }
  try {
    return done(jsonLine(oneShot(name, given, library)))
  } catch (error) {
    if (isPorewaterError(error)) return { code: 1, out: '', error: jsonLine({ error }) }
    // What is not a refusal comes from input that a function cannot take, such as a model as text.
    return unclear(`${name} cannot take this input: ${String((error as Error).message).slice(0, 200)}`)
  }
}

function unclear(problem: string): Outcome {
  const error = new InputError('command', problem, 'see porewater --help')
  return { code: 2, out: '', error: jsonLine({ error }) }
}
