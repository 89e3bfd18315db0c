import { sum } from './raw.js'

const STEP = 600

/** What a plan keeps to; litres, seconds of the day, litres a second. */
export interface PlanLimits {
  readonly substrate: number
  readonly flow: number
  readonly lineFill: number
  readonly minRun: number
  readonly maxRun: number
  readonly rest: number
  readonly perDay: number
  readonly drain: number
  readonly first: number
  readonly last: number
}
/** Where the container stands, and between what levels it is kept. */
export interface PlanLevels {
  readonly now: number
  readonly full: number
  readonly refill: number
}
export interface Opening {
  readonly at: number
  readonly litres: number
  readonly seconds: number
  readonly why: 'morning rewet' | 'at the refill point' | 'last shot of the day'
  readonly level: number
}

/**
 * A bucket in steps of ten minutes: light takes 85 % of the use, the clock the rest; a tenth of a shot runs past, and what a step leaves
 * above the full point drains. A shot lifts the bucket to full and lets a share run through; that share is sought so that of the day the
 * wanted one drains.
 */
export function planOf(limits: PlanLimits, levels: PlanLevels, use: number, light: readonly number[]) {
  const { substrate, flow, lineFill } = limits
  const { full, refill } = levels
  const all = sum(light)
  const demand = light.map((here) => use * ((0.85 * here) / all + 0.15 / light.length))
  const [least, most] = [limits.minRun, limits.maxRun].map((run) => (run - lineFill) * flow) as [number, number]
  const [first, last] = [Math.ceil(limits.first / STEP - 1e-9), Math.floor(limits.last / STEP + 1e-9)]
  const run = (share: number) => {
    let [content, given, drain, free, filled] = [Math.min(full, levels.now), 0, 0, 0, false]
    const openings: Opening[] = []
    demand.forEach((used, i) => {
      const half = (full + refill) / 2
      const missing = (full - content) * substrate
      const why =
        !filled && content < half
          ? 'morning rewet'
          : content <= refill + 1e-9
            ? 'at the refill point'
            : i === last && missing >= least
              ? 'last shot of the day'
              : undefined
      let litres = 0
      if (why && i >= first && i <= last && i * STEP >= free - 1e-9) {
        const wanted = Math.min(Math.max((missing + used) / (1 - Math.max(share, 0.1)), least), most)
        litres = Math.min(wanted, limits.perDay - given)
        if (litres < least - 1e-9) litres = 0
        else {
          const seconds = litres / flow + lineFill
          openings.push({ at: i * STEP, litres, seconds, why, level: content })
          free = i * STEP + seconds + limits.rest
        }
      }
      const held = content + (0.9 * litres - used) / substrate
      content = Math.min(full, held)
      given += litres
      drain += 0.1 * litres + (held - content) * substrate
      if (i >= first && content >= half) filled = true
    })
    return { openings, given, share: given > 0 ? drain / given : 0 }
  }
  if (run(0).share >= limits.drain) return run(0)
  if (run(0.9).share <= limits.drain) return run(0.9)
  let [low, high] = [0, 0.9]
  while (high - low > 1e-7) {
    const middle = (low + high) / 2
    if (run(middle).share < limits.drain) low = middle
    else high = middle
  }
  return run(high)
}
