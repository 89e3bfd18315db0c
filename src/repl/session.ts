import { type Context, Script } from 'node:vm'
import { catalogue } from '../catalogue/catalogue.js'
import { InputError } from '../quantity/errors.js'
import { cautionsOf } from './cautions.js'
import { foundText, helpAbout } from './help.js'
import { Lesson } from './lesson.js'
import { LIBRARY } from './library.js'
import { readLine } from './line.js'
import { overRange } from './over-range.js'
import { plotText } from './plot.js'
import { oneLine, refusalLine } from './refusal.js'
import { type Called, kindAmong, numberWithUnit, resultText, unitOf, valueText } from './shown.js'
import { sourcesText } from './sources.js'
import { tableText } from './table.js'
import { typedArguments } from './typed-arguments.js'
import { WELCOME } from './words.js'

/** Text that is shown as it is, such as help. */
export class Page {
  constructor(readonly text: string) {}
}

/** What came of a line. */
export interface Said {
  readonly value: unknown
  readonly shown: string
  readonly refused: boolean
}

/**
 * What a person types in, apart from the terminal: names, the last call, and what names were given to results.
 * A number stays a plain number; its unit is known by the line that made it.
 */
export class Session {
  readonly names: Readonly<Record<string, unknown>>
  readonly lesson: Lesson
  private readonly kept = new Map<string, Called>()
  private last: Called | undefined
  private readonly cautions = new Map<string, string>()

  constructor(private readonly columns = 72) {
    this.lesson = new Lesson()
    this.names = { ...this.library(), ...this.commands() }
  }

  /** Runs one line and gives what is to be shown; nothing for a line that has nothing to show. */
  enter(source: string, context: Context): Said {
    this.last = undefined
    this.cautions.clear()
    const line = readLine(source)
    try {
      const value = run(source, context)
      const called = this.calledBy(line, value)
      if (line.assigned !== undefined) this.keep(line.assigned, called)
      const assigned = line.assigned !== undefined && value === undefined ? context[line.assigned] : value
      const shown = withCautions(this.shownValue(line.path, called, assigned), this.cautions)
      return {
        value: assigned,
        shown: withAfterword(shown, this.lesson.heard({ source, value: assigned, called: this.last })),
        refused: false,
      }
    } catch (error) {
      const said = this.lesson.heard({ source, error })
      return {
        value: undefined,
        shown: withAfterword(refusalLine(error, Object.keys(this.names)), said),
        refused: true,
      }
    }
  }

  /** The value of code that nobody typed, without remembering calls. */
  peek(source: string, context: Context): unknown {
    const last = this.last
    try {
      return run(source, context)
    } catch {
      return undefined
    } finally {
      this.last = last
    }
  }

  private calledBy(line: ReturnType<typeof readLine>, value: unknown): Called | undefined {
    // A declaration has no value of its own: what was called last is what was kept.
    if (line.callee !== undefined && this.last?.entry.name === line.callee)
      return value === undefined || Object.is(this.last.value, value) ? this.last : undefined
    return line.path === undefined ? undefined : this.kept.get(line.path[0]!)
  }

  private keep(name: string, called: Called | undefined): void {
    if (called === undefined) this.kept.delete(name)
    else this.kept.set(name, called)
  }

  private shownValue(path: readonly string[] | undefined, called: Called | undefined, value: unknown): string {
    if (value instanceof Page) return value.text
    if (value === undefined) return ''
    if (called !== undefined && path !== undefined && path.length > 1) {
      const unit = unitOf(called, path.slice(1))
      return typeof value === 'number' ? numberWithUnit(value, unit) : valueText(value)
    }
    return called !== undefined && Object.is(called.value, value) ? resultText(called) : valueText(value)
  }

  /** The library, with text accepted in place of numbers, and each call remembered. */
  private library(): Record<string, unknown> {
    const entries = new Map(catalogue.map((entry) => [entry.name, entry]))
    return Object.fromEntries(
      Object.entries(LIBRARY).map(([name, member]) => {
        const entry = entries.get(name)
        if (typeof member !== 'function' || entry === undefined) return [name, member]
        const call = (...given: unknown[]) => {
          const read = typedArguments(entry, given)
          const value: unknown = member(...read)
          // One caution an input is enough, however often a line calls the function.
          for (const { about, message } of cautionsOf(entry, read))
            if (!this.cautions.has(`${name} ${about}`)) this.cautions.set(`${name} ${about}`, oneLine(message))
          this.last = { entry, value, kind: kindAmong(given) }
          return value
        }
        return [name, Object.defineProperty(call, 'name', { value: name })]
      }),
    )
  }

  private commands(): Record<string, (...given: never[]) => Page> {
    const lastCall = () => this.last
    const commands: Record<string, (...given: unknown[]) => string> = {
      help: (about) => (about === undefined ? WELCOME : helpAbout(about)),
      find: (words) => foundText(textOf(words), this.columns),
      sources: (about) => sourcesText(about),
      plot: (f, from, to) =>
        plotText(overRange(f, from, to, this.columns * 2, lastCall), { columns: this.columns - 10, rows: 14 }),
      table: (f, from, to, rows = 11) => tableText(overRange(f, from, to, rowsOf(rows), lastCall)),
      lesson: (what) => this.lesson.command(what),
    }
    return Object.fromEntries(
      Object.entries(commands).map(([name, command]) => {
        const page = (...given: unknown[]) => new Page(command(...given))
        return [name, Object.defineProperty(page, 'name', { value: name })]
      }),
    )
  }
}

function textOf(words: unknown): string {
  if (typeof words === 'string' && words.trim() !== '') return words
  throw new InputError('words', 'are missing', "write what you look for in quotes: find('drain')")
}

function rowsOf(rows: unknown): number {
  if (typeof rows === 'number' && Number.isInteger(rows) && rows >= 2 && rows <= 200) return rows
  throw new InputError('rows', `is ${String(rows)}`, 'give a whole number from 2 to 200')
}

/** Runs code in a context. A name may be given again; a line in braces is an object. */
function run(source: string, context: Context): unknown {
  const again = source.replace(/^(\s*)(?:const|let)\s/, '$1var ')
  const code = /^\s*\{[\s\S]*\}\s*;?\s*$/.test(again) ? `(${again.trim().replace(/;$/, '')})` : again
  return new Script(code, { filename: 'porewater' }).runInContext(context, {
    breakOnSigint: process.stdin.isTTY === true,
  })
}

function withCautions(shown: string, cautions: ReadonlyMap<string, string>): string {
  return [shown, ...[...cautions.values()].map((message) => `Caution: ${message}`)].join('\n')
}

function withAfterword(shown: string, afterword: string): string {
  return [shown, afterword].filter(Boolean).join('\n')
}
