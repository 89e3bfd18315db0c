import { closeSync, openSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { type REPLServer, Recoverable, start } from 'node:repl'
import type { Context } from 'node:vm'
import { isUnfinished } from './code/parsed.js'
import { completions } from './complete.js'

import { Session } from './session.js'
import { commandIn } from './word-command.js'
import { WELCOME } from './words.js'
import { wrapped } from './wrap.js'

/** The width of the terminal now; one that does not know its own, or claims none, is taken for an old one. */
function width(): number {
  return Math.max(40, process.stdout.columns || 80)
}

/** Starts a session at the terminal, with a first line if there is one. */
export function openTerminal(begin = ''): REPLServer {
  const session = new Session(Math.min(width(), 100))
  const history = historyFile()
  process.stdout.write(`${WELCOME}\n${history.note}`)
  const server = start({
    prompt: 'porewater> ',
    ignoreUndefined: true,
    eval(source, context: Context, _file, callback) {
      // The completer asks for values too; that is nothing a person has typed.
      if (/^try \{ [\s\S]* \} catch \{\}$/.test(source)) return callback(null, session.peek(source, context))
      if (commandIn(source) === undefined && isUnfinished(source))
        return callback(new Recoverable(new SyntaxError('unfinished')), undefined)
      const { value, shown, ends } = session.enter(source, context)
      if (ends) return server.close()
      if (shown !== '') server.output.write(`${wrapped(shown, width())}\n`)
      // What was shown is shown; `_` keeps the value.
      if (value !== undefined) (server as unknown as { last: unknown }).last = value
      callback(null, undefined)
    },
  })
  Object.assign(server.context, session.names)
  completeWith(
    server,
    Object.keys(session.names).filter((name) => !name.startsWith('__')),
  )
  if (begin !== '') server.write(begin)
  if (history.file !== undefined) server.setupHistory(history.file, () => {})
  return server
}

function completeWith(server: REPLServer, names: readonly string[]): void {
  type Completer = (line: string, done: (error: Error | null, found?: unknown) => void) => void
  const own = server as unknown as { completer: Completer }
  const general = own.completer
  own.completer = (line, done) => {
    const found = completions(line, names)
    if (found === undefined) general.call(server, line, done)
    else done(null, found)
  }
}

/** Where the history is kept, if it can be: a home that cannot be written to takes nothing else away. */
function historyFile(): { readonly file?: string; readonly note: string } {
  const file = process.env.POREWATER_HISTORY ?? join(homedir(), '.porewater_history')
  if (file.trim() === '') return { note: '' }
  try {
    closeSync(openSync(file, 'a', 0o600))
    return { file, note: '' }
  } catch {
    return { note: `(The history of this session is not kept: ${file} cannot be written.)\n` }
  }
}
