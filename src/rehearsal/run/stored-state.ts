import { randomNumbers } from '../../numerics/random.js'

/** What is left of a state after a restart: what JSON keeps of it, or less. */
export interface StoredStates {
  readonly keep: (state: unknown, time: number) => void
  readonly read: (how: 'restart-whole' | 'restart-partial' | 'restart-empty' | 'restart-old', time: number) => unknown
}

export function storedStates(seed: number): StoredStates {
  const random = randomNumbers(seed)
  const hourly: unknown[] = []
  let newest: unknown
  const asJson = (state: unknown): unknown => {
    const text = JSON.stringify(state)
    return text === undefined ? undefined : JSON.parse(text)
  }
  return {
    keep: (state, time) => {
      newest = state
      if (time % 3600 === 0) hourly[time / 3600] = state
    },
    read: (how, time) => {
      if (how === 'restart-empty') return undefined
      if (how === 'restart-whole') return asJson(newest)
      if (how === 'restart-old') return asJson(hourly[Math.max(0, Math.floor(time / 3600) - 24)])
      return damaged(asJson(newest), random.uniform)
    },
  }
}

/** A state in which at least one field is lost, null, or of another kind. */
function damaged(state: unknown, uniform: () => number): unknown {
  if (typeof state !== 'object' || state === null) return undefined
  const entries = Object.entries(state)
  const sure = Math.floor(uniform() * entries.length)
  return Object.fromEntries(
    entries.flatMap(([key, value], i): [string, unknown][] => {
      if (i !== sure && uniform() < 0.7) return [[key, value]]
      const how = uniform()
      if (how < 0.5) return []
      if (how < 0.75) return [[key, null]]
      return [[key, how < 0.9 ? `${value}` : -1]]
    }),
  )
}
