import { type Context, Script } from 'node:vm'
import { catalogue } from '../catalogue/catalogue.js'
import type { CatalogueEntry } from '../catalogue/entry.js'
import { InputError } from '../quantity/errors.js'
import { type Called, kindAmong } from './called.js'
import { cautionsOf } from './cautions.js'
import { NEGATED, OPERATED, rewritten } from './code/rewritten.js'
import { allAlike } from './held/all-alike.js'
import { negated, operated } from './held/arithmetic.js'
import { holdAs, holdFunction, plainFunction } from './held/functions.js'
import { type Bindings, held } from './held/give.js'
import { heldMath } from './held/maths.js'
import { constantOf, signatureOf } from './held/signatures.js'
import { taken } from './held/take.js'
import { foundText, helpAbout } from './help.js'
import { Lesson } from './lesson.js'
import { LIBRARY } from './library.js'
import { type FunctionEntries, type OverRange, overRange } from './over-range.js'
import { savedPicture } from './picture.js'
import { plotText } from './plot.js'
import { plotOptions } from './plot-options.js'
import { oneLine, refusalLine } from './refusal.js'
import { valueText } from './shown.js'
import { sourcesText } from './sources.js'
import { tableText } from './table.js'
import { headsOf, typedArguments } from './typed-arguments.js'
import { commandIn } from './word-command.js'
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
  /** Whether the line ends the session. */
  readonly ends?: boolean
}

/** What a person types in, apart from the terminal. Quantities are held with their kinds, in names, in arithmetic and in results. */
export class Session {
  readonly names: Readonly<Record<string, unknown>>
  readonly lesson: Lesson
  /** Which function of the library each held one is. */
  private readonly entries: FunctionEntries = new Map()
  private readonly known: ReadonlySet<string>
  private last: Called | undefined
  private readonly cautions = new Map<string, string>()

  constructor(private readonly columns = 72) {
    this.lesson = new Lesson()
    this.names = { ...this.library(), ...this.commands(), Math: heldMath(), [OPERATED]: operated, [NEGATED]: negated }
    this.known = new Set(Object.keys(this.names))
  }

  /** Runs one line or block and gives what is to be shown; nothing where there is nothing to show. */
  enter(source: string, context: Context): Said {
    this.last = undefined
    this.cautions.clear()
    const command = commandIn(source)
    if (command?.ends) return { value: undefined, shown: '', refused: false, ends: true }
    try {
      const value = this.run(command?.code ?? source, context)
      const shown = withCautions(value instanceof Page ? value.text : shownValue(value), this.cautions)
      const said = this.lesson.heard({ source: command?.code ?? source, value, called: this.last })
      return { value, shown: withAfterword(shown, said), refused: false }
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
      return inContext(source, context)
    } catch {
      return undefined
    } finally {
      this.last = last
    }
  }

  private run(source: string, context: Context): unknown {
    const { code, declared } = rewritten(source, this.known)
    const value = inContext(code, context)
    return declared !== undefined && value === undefined ? context[declared] : value
  }

  /** The library: text is accepted in place of numbers, a wrong kind is refused, results keep their kind. */
  private library(): Record<string, unknown> {
    const entries = new Map(catalogue.map((entry) => [entry.name, entry]))
    return Object.fromEntries(
      Object.entries(LIBRARY).map(([name, member]) => {
        const entry = entries.get(name)
        if (typeof member !== 'function' || entry === undefined)
          return [name, held(member, constantOf(name), { bindings: new Map(), holdFunction })]
        return [name, this.heldMember(entry, member as Member)]
      }),
    )
  }

  private heldMember(entry: CatalogueEntry, run: Member): unknown {
    const type = signatureOf(entry.name) ?? { takes: [], gives: 0 }
    const heads = headsOf(entry)
    const call = (...given: unknown[]) => {
      const bindings: Bindings = new Map()
      const named = kindAmong(given)
      const plain = typedArguments(entry, allAlike(given, type)).map((one, i) =>
        taken(one, type.takes[i] ?? 0, heads[i]?.path ?? entry.name, { bindings, plainFunction, named }),
      )
      const value = run(...plain)
      // One caution an input is enough, however often a line calls the function.
      for (const { about, message } of cautionsOf(entry, plain))
        if (!this.cautions.has(`${entry.name} ${about}`)) this.cautions.set(`${entry.name} ${about}`, oneLine(message))
      this.last = { entry, value, kind: named }
      return held(value, type.gives, { bindings, holdFunction, named })
    }
    this.entries.set(call, entry)
    return holdAs(call, { run, type }, entry.name)
  }

  private commands(): Record<string, (...given: never[]) => Page> {
    const commands: Record<string, (...given: unknown[]) => string> = {
      help: (about) => (about === undefined ? WELCOME : helpAbout(this.entryOf(about) ?? about)),
      find: (words) => foundText(textOf(words), this.columns),
      sources: (about) => sourcesText(this.entryOf(about) ?? about),
      plot: (f, from, to, options) => this.plot(f, from, to, options),
      table: (f, from, to, rows = 11) =>
        tableText(overRange({ run: f, from, to, points: rowsOf(rows) }, this.entries, this.lastName)),
      lesson: (what) => this.lesson.command(what),
    }
    return Object.fromEntries(
      Object.entries(commands).map(([name, command]) => {
        const page = (...given: unknown[]) => new Page(command(...given))
        return [name, Object.defineProperty(page, 'name', { value: name })]
      }),
    )
  }

  /** Functions are known by what they are: a method of a model may be named like a function of the library. */
  private entryOf(about: unknown): CatalogueEntry | undefined {
    return typeof about === 'function' ? this.entries.get(about) : undefined
  }

  private readonly lastName = () => this.last?.entry.name ?? ''

  private plot(f: unknown, from: unknown, to: unknown, options: unknown): string {
    const { log, save } = plotOptions(options)
    const curves = (Array.isArray(f) ? f : [f]).map(
      (run): OverRange =>
        overRange({ run, from, to, points: this.columns * 2, log: log.includes('x') }, this.entries, this.lastName),
    )
    const text = plotText(curves, { columns: this.columns - 10, rows: 14, log })
    return save === undefined ? text : `${text}\n${savedPicture(curves, log, save)}`
  }
}

type Member = (...given: unknown[]) => unknown

function textOf(words: unknown): string {
  if (typeof words === 'string' && words.trim() !== '') return words
  throw new InputError('words', 'are missing', "write what you look for in quotes: find('drain')")
}

function rowsOf(rows: unknown): number {
  if (typeof rows === 'number' && Number.isInteger(rows) && rows >= 2 && rows <= 200) return rows
  throw new InputError('rows', `is ${String(rows)}`, 'give a whole number from 2 to 200')
}

function inContext(code: string, context: Context): unknown {
  return new Script(code, { filename: 'porewater' }).runInContext(context, {
    breakOnSigint: process.stdin.isTTY === true,
  })
}

function shownValue(value: unknown): string {
  return value === undefined ? '' : valueText(value)
}

function withCautions(shown: string, cautions: ReadonlyMap<string, string>): string {
  return [shown, ...[...cautions.values()].map((message) => `Caution: ${message}`)].filter(Boolean).join('\n')
}

function withAfterword(shown: string, afterword: string): string {
  return [shown, afterword].filter(Boolean).join('\n')
}
