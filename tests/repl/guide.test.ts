import { readFileSync } from 'node:fs'
import { createContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import { command } from '../../src/repl/command.js'
import { LIBRARY } from '../../src/repl/library.js'
import { Session } from '../../src/repl/session.js'

const page = readFileSync(new URL('../../docs/guides/at-the-terminal.md', import.meta.url), 'utf8')

/** What was typed behind a prompt, and the lines that were printed, in all fences of one kind. */
function typedIn(fence: string, prompt: string): { line: string; printed: string }[] {
  return [...page.matchAll(new RegExp(`\`\`\`${fence}\n([\\s\\S]*?)\`\`\``, 'g'))].flatMap(([, text = '']) =>
    text
      .split(prompt)
      .slice(1)
      .map((part) => {
        const [line = '', ...printed] = part.trimEnd().split('\n')
        return { line, printed: printed.join('\n') }
      }),
  )
}

describe('the guide to the terminal prints what the session prints', () => {
  const session = new Session()
  const context = createContext({ ...session.names })
  const typed = typedIn('text', 'porewater> ')
  it('has lines to check', () => expect(typed.length).toBeGreaterThan(5))
  it.each(typed)('$line', ({ line, printed }) => {
    expect(session.enter(line, context).shown).toBe(printed)
  })
})

describe('and what the command prints', () => {
  const typed = typedIn('sh', '$ ')
  it('has lines to check', () => expect(typed.length).toBeGreaterThan(2))
  it.each(typed)('$line', ({ line, printed }) => {
    const [, piped, rest = ''] = /^(?:echo '(.*?)' \| )?porewater (.*)$/.exec(line) ?? []
    const [, name = '', given] = /^(\w+)(?: '(.*)')?$/.exec(rest) ?? []
    expect(command([name, ...(given === undefined ? [] : [given])], LIBRARY, () => piped ?? '').out.trimEnd()).toBe(
      printed,
    )
  })
})
