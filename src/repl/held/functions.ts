import { type Bindings, held } from './give.js'
import type { FunctionType } from './signature-type.js'
import { taken } from './take.js'

type Run = (...given: never[]) => unknown

/** What the session knows of a function that it holds. */
export interface HeldFunction {
  /** The function itself, with plain numbers. */
  readonly run: Run
  readonly type: FunctionType
}

/** Functions are known by identity: a name can be given to anything. */
const HELD = new WeakMap<object, HeldFunction>()
const PLAIN = new WeakMap<object, Run>()

export function heldFunctionOf(run: unknown): HeldFunction | undefined {
  return typeof run === 'function' ? HELD.get(run) : undefined
}

/** Remembers a function that the session holds. */
export function holdAs<F extends Run>(call: F, about: HeldFunction, name: string): F {
  HELD.set(call, about)
  return Object.defineProperty(call, 'name', { value: name })
}

/** A method of a model, or any function that a result brings: it takes quantities or text with a unit, and gives quantities. */
export function holdFunction(run: (...given: unknown[]) => unknown, type: FunctionType, name: string): Run {
  const call = (...given: unknown[]) => {
    const bindings: Bindings = new Map()
    const plain = given.map((one, i) =>
      taken(one, type.takes[i] ?? 0, argumentOf(name, i, type), { bindings, plainFunction }),
    )
    return held(run(...plain), type.gives, { bindings, holdFunction })
  }
  return holdAs(call, { run: run as Run, type }, name)
}

function argumentOf(name: string, i: number, { takes }: FunctionType): string {
  return takes.length > 1 ? `argument ${i + 1} of ${name}` : `argument of ${name}`
}

/** The function that the library gets: the one behind a held one, or one of the session's own with quantities held on its side. */
export function plainFunction(run: Run, type: FunctionType | undefined): Run {
  const known = HELD.get(run) ?? undefined
  if (known !== undefined) return known.run
  const before = PLAIN.get(run)
  if (before !== undefined) return before
  const call = (...given: unknown[]) => {
    const bindings: Bindings = new Map()
    const own = given.map((one, i) => held(one, type?.takes[i] ?? 0, { bindings, holdFunction }))
    return taken(
      (run as (...given: unknown[]) => unknown)(...own),
      type?.gives ?? 0,
      `result of ${run.name || 'the function'}`,
      { bindings, plainFunction },
    )
  }
  PLAIN.set(run, call)
  return call
}
