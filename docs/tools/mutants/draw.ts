import { createHash } from 'node:crypto'
import type { Change } from './bundle.js'

/** Changes in an order that hangs on the seed and on the change alone, so that each is as likely as any other to be among the first. */
export function inDrawnOrder(changes: readonly Change[], seed: string): Change[] {
  return changes
    .map((change) => ({ change, rank: rankOf(change, seed) }))
    .sort((a, b) => (a.rank < b.rank ? -1 : 1))
    .map(({ change }) => change)
}

function rankOf({ fileName, location: { start, end }, replacement }: Change, seed: string): string {
  const place = [start.line, start.column, end.line, end.column].join(':')
  return createHash('sha256').update(`${seed} ${fileName} ${place} ${replacement}`).digest('hex')
}
