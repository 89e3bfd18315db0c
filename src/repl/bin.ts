#!/usr/bin/env node
import { stdin } from 'node:process'
import { text } from 'node:stream/consumers'
import { command, needsInput } from './command.js'
import { LIBRARY } from './library.js'
import { runScript } from './script.js'
import { openTerminal } from './terminal.js'

const words = process.argv.slice(2)
const begin = words.length === 1 && words[0] === 'lesson' ? 'lesson()\n' : ''
if (words.length === 0 || begin !== '') {
  if (stdin.isTTY) openTerminal(begin)
  else {
    const { shown, refused } = runScript(begin + (await text(stdin)))
    process.stdout.write(shown)
    process.exitCode = refused ? 1 : 0
  }
} else {
  // A writer may take its time: what reads at once would find nothing yet.
  const input = needsInput(words) && !stdin.isTTY ? await text(stdin) : ''
  const { code, out, error } = command(words, LIBRARY, input)
  process.stdout.write(out)
  process.stderr.write(error)
  process.exitCode = code
}
