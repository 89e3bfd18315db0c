import type { Cause, CauseCode, Suspicion } from '../cause/cause.js'
import type { ZoneWatchState } from '../state/zone-state.js'

const LEVELS = { danger: 0, caution: 1, note: 2 } as const

/** One cause for each code, the likeliest first; of equals the more dangerous. */
export function ranked(suspicions: readonly Suspicion[], standing: ZoneWatchState['standing'], now: number): Cause[] {
  const byCode = new Map<CauseCode, Suspicion>()
  for (const one of suspicions) {
    const other = byCode.get(one.code)
    byCode.set(one.code, other === undefined ? one : joined(one, other))
  }
  return [...byCode.values()]
    .map((one) => ({ ...one, since: standing.find(({ code }) => code === one.code)?.since ?? now }))
    .sort((a, b) => b.weight - a.weight || LEVELS[a.level] - LEVELS[b.level] || (a.code < b.code ? -1 : 1))
}

function joined(one: Suspicion, other: Suspicion): Suspicion {
  const [first, second] = one.weight > other.weight ? [one, other] : [other, one]
  const about = [...new Set([...(first.about ?? []), ...(second.about ?? [])])]
  const level = LEVELS[one.level] < LEVELS[other.level] ? one.level : other.level
  return {
    ...first,
    level,
    evidence: [...first.evidence, ...second.evidence],
    ...(about.length === 0 ? {} : { about }),
  }
}
