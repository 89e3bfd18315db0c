import type { EqualChange } from './equal.js'

/** What is read here of a report of mutation testing. */
export interface Report {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>
}

interface Mutant {
  readonly id: string
  readonly status: string
  readonly replacement?: string
  readonly location: { readonly start: Position; readonly end: Position }
}

interface Position {
  readonly line: number
  readonly column: number
}

const NOTICED = ['Killed', 'Timeout', 'RuntimeError']
const UNNOTICED = ['Survived', 'NoCoverage']

/** The report without what is known to do the same: of that, what no test noticed is `Equal` and counts nowhere. */
export function withoutEqual({ files }: Report, equal: readonly EqualChange[]): Report {
  return {
    files: Object.fromEntries(
      Object.entries(files).map(([path, { source, mutants }]) => {
        const own = equal.filter((change) => change.path === path)
        const told = (mutant: Mutant): Mutant =>
          UNNOTICED.includes(mutant.status) && own.some((change) => isChange(source, mutant, change))
            ? { ...mutant, status: 'Equal' }
            : mutant
        return [path, { source, mutants: mutants.map(told) }]
      }),
    ),
  }
}

/** Changes that are said to do the same and that a test noticed all the same: what is said of them is wrong. */
export function wronglyEqual({ files }: Report, equal: readonly EqualChange[]): readonly EqualChange[] {
  return equal.filter((change) =>
    files[change.path]?.mutants.some(
      (mutant) => NOTICED.includes(mutant.status) && isChange(files[change.path]!.source, mutant, change),
    ),
  )
}

function isChange(source: string, { location, replacement }: Mutant, { line, was, becomes }: EqualChange): boolean {
  return (
    source.split('\n')[location.start.line - 1]?.trim() === line &&
    between(source, location.start, location.end) === was &&
    replacement === becomes
  )
}

/** Two draws from the same changes: what the second did not try stands as in the first. */
export function joined(first: Report, second: Report): Report {
  const files = Object.entries(second.files).map(([path, { source, mutants }]) => {
    const before = first.files[path]
    if (before?.source !== source) throw new Error(`${path} is not what the first draw was made of`)
    // Reports list changes in the order in which they were tried.
    const byId = new Map(before.mutants.map((mutant) => [mutant.id, mutant]))
    const both = mutants.map((mutant) => (mutant.status === 'NotDrawn' ? byId.get(mutant.id)! : mutant))
    return [path, { source, mutants: both }] as const
  })
  return { files: Object.fromEntries(files) }
}

/** Every change that no test noticed: where, what stood there, what came instead. */
export function survivorsOf({ files }: Report): string[] {
  return Object.entries(files).flatMap(([path, { source, mutants }]) =>
    mutants
      .filter(({ status }) => UNNOTICED.includes(status))
      .map(({ status, location, replacement }) => {
        const was = short(between(source, location.start, location.end))
        const mark = status === 'NoCoverage' ? ' (no test reaches it)' : ''
        return `${path}:${location.start.line}  ${was}  ->  ${short(replacement ?? '')}${mark}`
      }),
  )
}

/**
 * The share that the tests notice, with its 95 % interval (Wilson 1927, Journal of the American Statistical Association 22:209-212).
 * What no test reaches is known of every change, drawn or not, so only the rest is a sample.
 */
export function scoreOf({ files }: Report): string {
  const count = (...statuses: string[]): number =>
    Object.values(files).reduce(
      (sum, { mutants }) => sum + mutants.filter((m) => statuses.includes(m.status)).length,
      0,
    )
  const [noticed, survived, unreached] = [count(...NOTICED), count('Survived'), count('NoCoverage')]
  const tried = noticed + survived
  const reached = tried + count('NotDrawn')
  const share = reached / (reached + unreached)
  const [low, high] = wilson(noticed, tried).map((end) => percent(share * end))
  const score = percent((share * noticed) / tried)
  const endless = count('Timeout')
  const equal = count('Equal')
  return `${score} % [${low}, ${high}]: ${noticed} of ${tried} noticed, ${endless} by not ending; of ${reached + unreached} changes no test reaches ${unreached}${equal > 0 ? `; ${equal} do the same` : ''}`
}

/** Ends of the 95 % interval of a share, given so many hits in so many tries. */
export function wilson(hits: number, tries: number): [number, number] {
  const z2 = 1.959964 ** 2
  const middle = (hits + z2 / 2) / (tries + z2)
  const half = (Math.sqrt(z2) / (tries + z2)) * Math.sqrt((hits * (tries - hits)) / tries + z2 / 4)
  return [middle - half, middle + half]
}

const percent = (share: number): string => (100 * share).toFixed(1)

const short = (code: string): string => code.replace(/\s+/g, ' ').slice(0, 80)

function between(source: string, start: Position, end: Position): string {
  const lines = source.split('\n').slice(start.line - 1, end.line)
  lines[lines.length - 1] = lines.at(-1)!.slice(0, end.column - 1)
  lines[0] = lines[0]!.slice(start.column - 1)
  return lines.join('\n')
}
