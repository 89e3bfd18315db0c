import { homedir } from 'node:os'
import { join } from 'node:path'
import { type REPLServer, Recoverable, start } from 'node:repl'
import type { Context } from 'node:vm'
import { completions } from './complete.js'
import { isUnfinished } from './line.js'
import { Session } from './session.js'
import { WELCOME } from './words.js'

/** Starts a session at the terminal. */
export function openTerminal(): REPLServer {
  const session = new Session(Math.max(40, Math.min(process.stdout.columns ?? 72, 100)))
  process.stdout.write(`${WELCOME}\n`)
  const server = start({
    prompt: 'porewater> ',
    ignoreUndefined: true,
    eval(source, context: Context, _file, callback) {
      // The completer asks for values too; that is nothing a person has typed.
      if (/^try \{ [\s\S]* \} catch \{\}$/.test(source)) return callback(null, session.peek(source, context))
      if (isUnfinished(source)) return callback(new Recoverable(new SyntaxError('unfinished')), undefined)
      const { value, shown } = session.enter(source, context)
      if (shown !== '') server.output.write(`${shown}\n`)
      // What was shown is shown; `_` keeps the value.
      if (value !== undefined) (server as unknown as { last: unknown }).last = value
      callback(null, undefined)
    },
  })
  Object.assign(server.context, session.names)
  completeWith(server, Object.keys(session.names))
  keepHistory(server)
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

/** History in a file, if it can be written; a home that cannot be written to takes nothing else away. */
function keepHistory(server: REPLServer): void {
  const file = process.env.POREWATER_HISTORY ?? join(homedir(), '.porewater_history')
  if (file.trim() === '') return
  server.setupHistory(file, () => {})
}
