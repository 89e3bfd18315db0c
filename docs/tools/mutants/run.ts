import { fork } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import type { Measured, Told, Work } from './worker.js'

/** What every test reaches, and what is reached while modules are loaded. */
export interface Measurement {
  readonly atImport: readonly string[]
  readonly tests: readonly Measured[]
}

/** What a worker reads: the changes that it is to try, and whatever else it needs. */
interface Job {
  readonly tries?: NonNullable<Work['tries']>
  readonly [more: string]: unknown
}

export type Status = 'Killed' | 'Survived' | 'Timeout'

/** A change that keeps one test busy for so many seconds of the processor does not end. */
const BUSY_SECONDS = 30
const WAIT_SECONDS = 300

/** Goes on behind what is known from a run that was ended, and keeps what comes now and then. */
export async function measured(
  worker: string,
  topic: string,
  within: number,
  known: Measurement | undefined,
  keep: (sofar: Measurement) => void,
): Promise<Measurement> {
  const tests: Measured[] = [...(known?.tests ?? [])]
  let atImport: readonly string[] = []
  const ended = await work(worker, { topic, within, from: tests.length }, (told) => {
    if ('atImport' in told) atImport = told.atImport
    if (!('measured' in told)) return
    tests.push(told.measured)
    if (tests.length % 25 === 0) keep({ atImport, tests })
  })
  if (ended !== 0) throw new Error(`the tests did not run to their end: ${ended}`)
  return { atImport, tests }
}

/** Tries changes one after another; one that does not end is noticed by that, and the others go on in a new process. */
export async function tried(
  worker: string,
  whole: Job & Required<Pick<Job, 'tries'>>,
  result: (id: string, status: Status, by: string | null) => void,
  until: number,
  busySeconds = BUSY_SECONDS,
): Promise<void> {
  let tries = whole.tries
  while (tries.length > 0 && Date.now() < until) {
    let last = tries[0]!.id
    const done = new Set<string>()
    const heard = (told: Told) => {
      if ('begins' in told) last = told.begins
      if (!('noticedBy' in told)) return
      done.add(told.id)
      result(told.id, told.noticedBy === null ? 'Survived' : 'Killed', told.noticedBy)
    }
    await work(worker, { ...whole, tries }, heard, until, busySeconds)
    tries = tries.filter(({ id }) => !done.has(id))
    if (tries.length === 0 || Date.now() >= until) return
    // The process ended, or was ended, while it tried this one.
    const broken = tries.find(({ id }) => id === last) ?? tries[0]!
    result(broken.id, 'Timeout', null)
    tries = tries.filter((other) => other !== broken)
  }
}

function work(
  worker: string,
  job: Job,
  heard: (told: Told) => void,
  until = Infinity,
  busySeconds = BUSY_SECONDS,
): Promise<number | string> {
  const beside = (name: string) => worker.replace(/worker\.mjs$/, name)
  const file = beside('work.json')
  writeFileSync(file, JSON.stringify(job))
  const child = fork(worker, [file, beside('tests.mjs')], { execArgv: [], stdio: ['ignore', 'ignore', 'pipe', 'ipc'] })
  let said = ''
  child.stderr?.on('data', (chunk) => {
    said += chunk
    process.stderr.write(chunk)
  })
  let last = { at: Date.now(), busy: 0 }
  child.on('message', (told: Told) => {
    last = { at: Date.now(), busy: secondsOf(child.pid!) }
    heard(told)
  })
  return new Promise((resolve) => {
    const watch = setInterval(() => {
      const busy = secondsOf(child.pid!) - last.busy
      const waits = Date.now() - last.at > 1000 * WAIT_SECONDS
      // While measuring nothing is changed: a test may take as long as it takes.
      const stuck = job.tries !== undefined && (busy > busySeconds || waits)
      if (stuck || Date.now() > until) child.kill('SIGKILL')
    }, 1000)
    child.once('exit', (code, signal) => {
      clearInterval(watch)
      resolve(code === 0 ? 0 : `${signal ?? code} ${said}`)
    })
  })
}

/** Seconds of the processor that a process has had; on another system than Linux nobody says. */
function secondsOf(pid: number): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')
    return (Number(fields[11]) + Number(fields[12])) / 100
  } catch {
    return 0
  }
}
