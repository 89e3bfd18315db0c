import type { runInOneProcess } from './one-process.js'
import type { StreamOutcome } from './stream.js'

/** What an engine came to that one process does not, to the bit: nothing where all is well. */
export function differencesFromOneProcess(
  { rows, decisions, doubles }: Pick<StreamOutcome, 'rows' | 'decisions' | 'doubles'>,
  alone: ReturnType<typeof runInOneProcess>,
): string[] {
  const wrong: string[] = []
  if (doubles > 0) wrong.push(`${doubles} decisions stand twice`)
  if (decisions.size !== alone.decisions.length) wrong.push(`${decisions.size} of ${alone.decisions.length} decisions`)
  for (const decision of alone.decisions) {
    const name = `${decision.zone}/${decision.ordinal}`
    if (decisions.get(name) !== JSON.stringify(decision)) wrong.push(`decision ${name}: ${decisions.get(name)}`)
  }
  if (rows.size !== alone.rows.size) wrong.push(`${rows.size} of ${alone.rows.size} rows`)
  for (const [zone, row] of alone.rows) if (rows.get(zone) !== row) wrong.push(`row of ${zone}: ${rows.get(zone)}`)
  return wrong
}
