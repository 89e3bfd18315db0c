import { stdin } from 'node:process'
import { text } from 'node:stream/consumers'
import { command, needsInput } from './command.js'
import { LIBRARY } from './library.js'
import { runScript } from './script.js'
import { openTerminal } from './terminal.js'

/** Opens a session, runs lines from a pipe, or runs one command. */
export async function main(words: readonly string[]): Promise<void> {
  const lesson = words.length === 1 && words[0] === 'lesson'
  if (words.length > 0 && !lesson) return oneCommand(words)
  const begin = lesson ? 'lesson()\n' : ''
  if (stdin.isTTY) {
    openTerminal(begin)
    return
  }
  const { shown, refused } = runScript(begin + (await text(stdin)))
  process.stdout.write(shown)
  process.exitCode = refused ? 1 : 0
}

async function oneCommand(words: readonly string[]): Promise<void> {
  // A writer may take its time: what reads at once would find nothing yet.
  const input = needsInput(words) && !stdin.isTTY ? await text(stdin) : ''
  const { code, out, error } = command(words, LIBRARY, input)
  process.stdout.write(out)
  process.stderr.write(error)
  process.exitCode = code
}
