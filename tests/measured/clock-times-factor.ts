import type { DryDown } from './walk-forward.js'

/**
 * The fall by the clock times the factor of tonight, as simply as it can be told, beside the package's own forecaster: rates of 48 half hours, each drawn
 * to the newest by 1/n and at least a half; an unseen half hour takes the nearest one before, none is slower than 0.35 of their mean; the factor of
 * tonight is drawn to 1 by a usual fall and kept between 0.75 and 1.33. It uses nothing of the package.
 */
export function clockTimesFactor(lineEnd: (down: DryDown, now: number) => number) {
  const rates = new Array<number | undefined>(48).fill(undefined)
  const seen = new Array<number>(48).fill(0)
  let usual: number | undefined
  const binOf = (time: number) => ((Math.floor(time / 1800) % 48) + 48) % 48
  const expected = () => {
    const known = rates.filter((one) => one !== undefined)
    if (known.length === 0) return undefined
    const slowest = (0.35 * known.reduce((a, b) => a + b, 0)) / known.length
    return rates.map((_, b) => {
      let k = b
      while (rates[k] === undefined) k = (k + 47) % 48
      return Math.max(rates[k]!, slowest, 1e-9)
    })
  }
  const fallOf = (of: readonly number[], from: number, to: number) => {
    let fall = 0
    for (let t = from; t < to; ) {
      const end = Math.min(to, (Math.floor(t / 1800) + 1) * 1800)
      fall += (of[binOf(t)]! * (end - t)) / 1800
      t = end
    }
    return fall
  }
  return {
    /** Hours until the level of a dry-down has fallen by so much, at most 48; undefined before the first night is known. */
    hours(down: DryDown, now: number, fall: number): number | undefined {
      const of = expected()
      if (of === undefined || usual === undefined) return undefined
      const fallen = down.waterContent[0]! - lineEnd(down, now)
      const factor = Math.min(1.33, Math.max(0.75, (fallen + usual) / (fallOf(of, down.start, now) + usual)))
      let rest = fall / factor
      for (let t = now; t < now + 172800; ) {
        const end = (Math.floor(t / 1800) + 1) * 1800
        const here = (of[binOf(t)]! * (end - t)) / 1800
        if (here >= rest) return (t - now + ((end - t) * rest) / here) / 3600
        rest -= here
        t = end
      }
      return 48
    },
    /** Learns from a dry-down that has ended. */
    learn(down: DryDown): void {
      const first = Math.ceil(down.start / 1800) * 1800
      for (let t = first; t + 1800 <= down.end; t += 1800) {
        const b = binOf(t)
        const fall = lineEnd(down, t) - lineEnd(down, t + 1800)
        const known = rates[b]
        seen[b] = seen[b]! + 1
        rates[b] = known === undefined ? fall : known + Math.max(0.5, 1 / seen[b]!) * (fall - known)
      }
      if (down.end - down.start < 7200) return
      const fall = down.waterContent[0]! - (down.waterContent.at(-1) as number)
      usual = Math.max(0.002, usual === undefined ? fall : usual + 0.2 * (fall - usual))
    },
  }
}
