import { readdirSync, readFileSync } from 'node:fs'
import { createContext } from 'node:vm'
import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { isUnfinished } from '../../src/repl/code/parsed.js'
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

/** Lines as they are pasted: each runs as soon as it is whole. What is refused is told, but for what is meant to be. */
function pasted(code: string, session: Session, context: ReturnType<typeof createContext>): string[] {
  const refused: string[] = []
  let source = ''
  for (const line of code.split('\n')) {
    source += source === '' ? line : `\n${line}`
    if (source.trim() !== '' && isUnfinished(source)) continue
    const said = source.trim() === '' ? undefined : session.enter(source, context)
    if (said?.refused && !/\/\/ => throws/.test(source)) refused.push(`${source}\n${said.shown}`)
    source = ''
  }
  return source.trim() === '' ? refused : [...refused, `not finished: ${source}`]
}

describe('code can be pasted into a session as it stands', () => {
  const quiet = { log: () => {} }
  const folder = new URL('../../docs/guides/', import.meta.url)
  const pages = readdirSync(folder).filter((name) => name.endsWith('.md'))
  const urls = [...pages.map((name) => new URL(name, folder)), new URL('../../README.md', import.meta.url)]
  it.each(urls.map((url) => [url.pathname.replace(/^.*\//, ''), url] as const))('%s', (_, url) => {
    const session = new Session()
    const context = createContext({ ...session.names, console: quiet })
    const blocks = [...readFileSync(url, 'utf8').matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code = '']) => code)
    expect(blocks.flatMap((code) => pasted(code, session, context))).toEqual([])
  })
  it('every example of the help', () => {
    const session = new Session()
    const refused = catalogue.flatMap((entry) =>
      pasted(entry.example, session, createContext({ ...session.names, console: quiet })),
    )
    expect(refused).toEqual([])
  })
})

describe('and what the command prints', () => {
  const typed = typedIn('sh', '$ ')
  it('has lines to check', () => expect(typed.length).toBeGreaterThan(2))
  it.each(typed)('$line', ({ line, printed }) => {
    const [, piped, rest = ''] = /^(?:echo '(.*?)' \| )?porewater (.*)$/.exec(line) ?? []
    const [, name = '', given] = /^(\w+)(?: '(.*)')?$/.exec(rest) ?? []
    expect(command([name, ...(given === undefined ? [] : [given])], LIBRARY, piped ?? '').out.trimEnd()).toBe(printed)
  })
})
