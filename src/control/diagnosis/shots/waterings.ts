import type { ShotEvidence } from './judge-shot.js'

/**
 * Shots that follow each other within so long are one watering: the second is begun before the first has drained, and its drain is
 * counted with that of the first. Chosen on rehearsals, in which two thirds of the drain have left after 5 to 20 minutes. Unit: s.
 */
export const TOGETHER = 1800

/** Shots that stand together, in order. */
export function together(shots: readonly ShotEvidence[]): ShotEvidence[][] {
  const groups: ShotEvidence[][] = []
  for (const shot of shots) {
    const group = groups[groups.length - 1]
    if (group !== undefined && shot.time - group[group.length - 1]!.time < TOGETHER) group.push(shot)
    else groups.push([shot])
  }
  return groups
}
