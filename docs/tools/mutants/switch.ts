/** Which change is on, and which changes a test reaches: what instrumented code asks and tells. */
export const TOO_LONG = 'does not end'

let active = ''
let reached: Set<string> | undefined
let asked = 0
let endBy = Number.POSITIVE_INFINITY
let left = false
/** @public What is told is known for a round: for the whole run of a change, or for one test that is measured. */
export let round = 1
/** @public The round in which the change that stands first at a place was told. */
export const told = new Uint32Array(0x10000)

/** Turns one change on, or all off, for at most so many seconds of the processor. */
export function turnOn(id: string, seconds: number): void {
  active = id
  asked = 0
  left = false
  endBy = cpuSeconds() + seconds
}

/** From here on what is reached goes into this set, or nowhere. */
export function tellReached(into: Set<string> | undefined): void {
  reached = into
  round += 1
}

/** Whether the last test took too long, whatever it made of the error by which it was left. */
export function wasLeft(): boolean {
  return left
}

/** @public Instrumented code calls it. */
export function isOn(id: string): boolean {
  return id === active && stillInTime()
}

/** @public Instrumented code calls it. */
export function tell(...ids: readonly string[]): void {
  told[Number(ids[0])] = round
  for (const id of ids) reached?.add(id)
  stillInTime()
}

/** @public Instrumented code calls it where everything is told. */
export function passed(): void {
  stillInTime()
}

export const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}

/** A loop that a change made endless, and a test that takes too long to be asked, is left by an error. */
function stillInTime(): true {
  if ((++asked & 0xffff) !== 0 || cpuSeconds() <= endBy) return true
  left = true
  throw new Error(TOO_LONG)
}
