/** Side-by-side timing: every candidate runs once a round, in turn, so that a noisy machine troubles all alike. */
export interface Candidate {
  readonly name: string
  /** Runs the work once and gives something that depends on all of it, so that it cannot be optimised away. */
  readonly run: () => number
}

export interface Timing {
  readonly name: string
  /** Median time of one run, in milliseconds. */
  readonly median: number
  /** Median of the ratios to the first candidate, round by round. */
  readonly ratio: number
  /** Half the distance between the quartiles of the times, as a share of the median. */
  readonly spread: number
}

export function compare(candidates: readonly Candidate[], rounds = 15): Timing[] {
  let sink = 0
  const times = candidates.map(() => [] as number[])
  // Two rounds to warm up, which are not counted.
  for (let round = -2; round < rounds; round++) {
    candidates.forEach((candidate, i) => {
      const start = performance.now()
      sink += candidate.run()
      const elapsed = performance.now() - start
      if (round >= 0) times[i]?.push(elapsed)
    })
  }
  if (!Number.isFinite(sink)) throw new Error('a candidate gave no finite result')
  const first = times[0] ?? []
  return candidates.map((candidate, i) => ({
    name: candidate.name,
    median: median(times[i] ?? []),
    ratio: median((times[i] ?? []).map((time, round) => time / (first[round] ?? Number.NaN))),
    spread: spread(times[i] ?? []),
  }))
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? Number.NaN)
    : ((sorted[middle - 1] ?? Number.NaN) + (sorted[middle] ?? Number.NaN)) / 2
}

function spread(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN
  return (at(0.75) - at(0.25)) / 2 / at(0.5)
}

export function report(title: string, timings: readonly Timing[]): void {
  const width = Math.max(...timings.map(({ name }) => name.length))
  const lines = timings.map(
    ({ name, median: ms, ratio, spread }) =>
      `  ${name.padEnd(width)}  ${ms.toFixed(3).padStart(10)} ms ± ${(100 * spread).toFixed(0).padStart(2)} %  ${ratio.toFixed(2).padStart(9)} ×`,
  )
  process.stdout.write(`${title}\n${lines.join('\n')}\n\n`)
}
