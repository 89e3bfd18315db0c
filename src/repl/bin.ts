#!/usr/bin/env node
import { readFileSync } from 'node:fs'
import { command } from './command.js'
import { LIBRARY } from './library.js'
import { runScript } from './script.js'
import { openTerminal } from './terminal.js'

const words = process.argv.slice(2)
if (words.length === 0 && process.stdin.isTTY) openTerminal()
else if (words.length === 0) {
  const { shown, refused } = runScript(readFileSync(0, 'utf8'))
  process.stdout.write(shown)
  process.exitCode = refused ? 1 : 0
} else {
  const { code, out, error } = command(words, LIBRARY, () => (process.stdin.isTTY ? '' : readFileSync(0, 'utf8')))
  process.stdout.write(out)
  process.stderr.write(error)
  process.exitCode = code
}
