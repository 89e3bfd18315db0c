import type { StepWork } from './step-work.js'

/** Share of the tolerance by which suctions come closer to what cells hold in a step. */
export const MENDED = 0.3
/** The same as a share of what is left, where that is more. */
const FASTER = 0.1
/** The same as a share of its suction, or of a centimetre, by which a cell may move for it. */
const AT_ONCE = 0.5

/**
 * Lets suctions come closer to what the cells hold, by no more than a step may err: another manner of looking at cells, or a
 * suction that is set at an end, would else ask for flows without limit. Of a cell that is full or as good as empty no more is asked
 * than it can do in the time, and of all cells less where steps find no solution: a short step must be an easy one.
 */
export function comeCloser(work: StepWork, dt: number): void {
  const { equations, suctions, held, apart, closer, from, conductance, mending, tolerance } = work
  const { waterByOwn } = equations.terms
  const { volumes } = equations.grid
  for (let i = 0; i < suctions.length; i++) {
    const s = suctions[i]!
    const byItself = AT_ONCE * Math.max(s, 1) * Math.abs(waterByOwn[i]!)
    const byFlow = s > 1 ? 0 : dt * conductance[i]!
    const wanted = Math.max(MENDED * tolerance * volumes[i]!, FASTER * Math.abs(apart[i]!))
    const max = mending * Math.min(wanted, byItself + byFlow)
    closer[i] = apart[i]! - Math.min(Math.max(apart[i]!, -max), max)
    from[i] = held[i]! + closer[i]!
  }
}

/** Counts anew what suctions say beyond what cells hold. */
export function countApart({ equations, held, apart }: StepWork): void {
  const { water } = equations.terms
  for (let i = 0; i < apart.length; i++) apart[i] = water[i]! - held[i]!
}
