#!/usr/bin/env node
import { start } from 'node:repl'
import { inspect } from 'node:util'
import { sessionNames, WELCOME } from './session.js'

process.stdout.write(`${WELCOME}\n`)
// Text is shown as it is, so that help can be read.
const session = start({
  prompt: 'porewater> ',
  writer: (value: unknown) => (typeof value === 'string' ? value : inspect(value)),
})
Object.assign(session.context, sessionNames())
