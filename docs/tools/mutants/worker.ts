/**
 * Runs inside the bundle of a mutation run, as a process of its own: measures every test once, or tries changes one after another.
 * It says what it is about to do before it does it, so that a change that never ends is known.
 */

import { readFileSync } from 'node:fs'
import { inFile, isOfTopic, type Test, tests } from './collect.js'
import { cpuSeconds, TOO_LONG, tellReached, turnOn, wasLeft } from './switch.js'

/** What a worker is to do: try these changes by these tests, or measure. */
export interface Work {
  readonly topic: string
  /** Tests that take more seconds than that are not asked; they are left while they are measured. */
  readonly within: number
  /** So many tests are measured already. */
  readonly from?: number
  readonly tries?: readonly { readonly id: string; readonly tests: readonly number[] }[]
  /** How long each test takes without a change. */
  readonly seconds?: readonly number[]
  /** Seconds of the processor after which no further test is asked about a change. */
  readonly each?: number
}

/** One test, measured: what it reaches, and how long it takes. */
export interface Measured {
  readonly name: string
  readonly seconds: number
  readonly reached: readonly string[]
  readonly failure?: string
}

export type Told =
  | { readonly begins: string }
  | { readonly id: string; readonly noticedBy: string | null }
  | { readonly atImport: readonly string[] }
  | { readonly measured: Measured }

const work = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as Work
/** A test that takes so much longer does not end. */
const patience = (index: number): number => 2 + 10 * (work.seconds?.[index] ?? 2)

/** How many changes each test noticed. */
const noticed = new Map<number, number>()

// Properties end by this clock: on a busy machine they are asked as often as on an idle one.
performance.now = () => 1000 * cpuSeconds()

const atImport = new Set<string>()
tellReached(atImport)
await loaded()
if (work.tries === undefined) await measureAll()
else for (const { id, tests: chosen } of work.tries) await told({ id, noticedBy: await noticedBy(id, chosen) })
process.disconnect?.()

async function loaded(): Promise<void> {
  const { files } = (await import(process.argv[3]!)) as { files: Record<string, () => Promise<unknown>> }
  for (const [file, load] of Object.entries(files)) {
    inFile(file)
    await load()
  }
  // Of the catalogue's probes only those of the topic; the others reach it by chance.
  const own = tests.filter((test) => !test.file.includes('/catalogue/') || isOfTopic(test, work.topic))
  tests.splice(0, tests.length, ...own)
}

async function measureAll(): Promise<void> {
  await told({ atImport: [...atImport] })
  for (const test of tests.slice(work.from)) {
    const reached = new Set<string>()
    tellReached(reached)
    turnOn('', work.within)
    const start = cpuSeconds()
    const ended = await failureOf(test)
    // What another test keeps of one that was left, it lacks as well.
    const left = wasLeft() || ended === TOO_LONG
    const seconds = left ? 2 * work.within : cpuSeconds() - start
    const failure = left ? undefined : ended
    const name = `${test.file} ${test.name}`
    await told({ measured: { name, seconds, reached: [...reached], ...(failure === undefined ? {} : { failure }) } })
  }
}

async function noticedBy(id: string, chosen: readonly number[]): Promise<string | null> {
  tellReached(undefined)
  const end = cpuSeconds() + (work.each ?? Number.POSITIVE_INFINITY)
  for (const index of mostTellingFirst(chosen)) {
    if (cpuSeconds() > end) return null
    const test = tests[index]!
    await told({ begins: id })
    turnOn(id, patience(index))
    const failure = await failureOf(test)
    turnOn('', 0)
    if (failure === undefined) continue
    noticed.set(index, 1 + (noticed.get(index) ?? 0))
    return `${test.file} ${test.name}`
  }
  return null
}

/** The quickest first, sooner the more changes they noticed. */
function mostTellingFirst(chosen: readonly number[]): readonly number[] {
  const rank = (index: number) => (1e-3 + (work.seconds?.[index] ?? 0)) / (1 + (noticed.get(index) ?? 0)) ** 2
  return [...chosen].sort((a, b) => rank(a) - rank(b))
}

async function failureOf(test: Test): Promise<string | undefined> {
  try {
    await test.run()
    return undefined
  } catch (error) {
    return String((error as Error)?.message ?? error)
  }
}

function told(message: Told): Promise<void> {
  return new Promise((resolve) => process.send!(message, () => resolve()))
}
