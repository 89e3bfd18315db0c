/** What valves take together over time, in pieces of constant flow: each begins at its time and lasts until the next. */
export interface PumpProfile {
  /** Beginnings of the pieces, rising. */
  readonly times: number[]
  /** Flow in each piece. */
  readonly flows: number[]
}

/** A pump that serves nobody. */
export function idlePump(): PumpProfile {
  return { times: [Number.NEGATIVE_INFINITY], flows: [0] }
}

/** The first moment from `from` on at which `flow` fits under `most` for a whole span of time. */
export function firstFit(
  { times, flows }: PumpProfile,
  from: number,
  duration: number,
  flow: number,
  max: number,
): number {
  let start = from
  for (let i = pieceAt(times, from); i < times.length && times[i]! < start + duration; i++) {
    // A piece that is too full puts the beginning off to its end; the last piece is always empty.
    if (flows[i]! + flow > max && times[i + 1]! > start) start = times[i + 1]!
  }
  return start
}

/** Adds a flow to a span of time. */
export function take({ times, flows }: PumpProfile, from: number, to: number, flow: number): void {
  const first = split(times, flows, from)
  const end = split(times, flows, to)
  for (let i = first; i < end; i++) flows[i] = flows[i]! + flow
}

/** Forgets what lies before a moment, which no later shot can need. */
export function forgetBefore({ times, flows }: PumpProfile, time: number): void {
  const past = pieceAt(times, time)
  times.splice(0, past)
  flows.splice(0, past)
}

function split(times: number[], flows: number[], time: number): number {
  const i = pieceAt(times, time)
  if (times[i] === time) return i
  times.splice(i + 1, 0, time)
  flows.splice(i + 1, 0, flows[i]!)
  return i + 1
}

/** The piece in which a moment lies, by halving. */
function pieceAt(times: readonly number[], time: number): number {
  let low = 0
  let high = times.length
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (times[middle]! <= time) low = middle
    else high = middle
  }
  return low
}
