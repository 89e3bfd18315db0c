import { createContext } from 'node:vm'
import { isUnfinished } from './code/parsed.js'

import { Session } from './session.js'
import { commandIn } from './word-command.js'

/** Runs lines that come through a pipe, as if they were typed; gives what they show, and whether all of them ran. */
export function runScript(text: string): { readonly shown: string; readonly refused: boolean } {
  const session = new Session()
  const context = createContext({ ...session.names, console })
  const shown: string[] = []
  let refused = false
  let source = ''
  for (const line of text.split('\n')) {
    source += source === '' ? line : `\n${line}`
    if (commandIn(source) === undefined && isUnfinished(source)) continue
    const said = source.trim() === '' ? undefined : session.enter(source, context)
    // What ends a session at a terminal ends it here too.
    if (said?.ends) return { shown: lines(shown), refused }
    if (said !== undefined && said.shown !== '') shown.push(said.shown)
    refused ||= said?.refused === true
    source = ''
  }
  if (source.trim() === '') return { shown: lines(shown), refused }
  return { shown: lines([...shown, 'The last line is not finished: a bracket is open.']), refused: true }
}

function lines(shown: readonly string[]): string {
  return shown.map((one) => `${one}\n`).join('')
}
