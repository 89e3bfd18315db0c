import { Misses, NORMAL } from './misses.js'
import { median, sum } from './raw.js'

/**
 * Eight levels of use, slow and quick, of no to a strong response to light, weighed by their misses; the band is that of the misses so far.
 * Written from the description of `forecastDailyUse` and the method behind it. No radiation is expected for the next day.
 */
export function useOfNextDay(uses: readonly number[], light: readonly number[]) {
  const members = [0.2, 0.6].flatMap((gain) =>
    [0, 0.2, 0.4, 0.6].map((power) => ({ gain, power, level: 0, spread: 0.15, loss: 0 })),
  )
  const misses = new Misses(
    [...NORMAL, ...NORMAL].map((one) => 0.15 * one),
    false,
  )
  let usualLight = 0
  let usualLoss = 0.02
  const mixed = () => {
    const best = Math.min(...members.map(({ loss }) => loss))
    const weights = members.map(({ loss }) => Math.exp((-4 * (loss - best)) / usualLoss))
    return sum(members.map(({ level }, k) => level * weights[k]!)) / sum(weights)
  }
  uses.forEach((use, d) => {
    const [now, before] = [light[d]!, usualLight]
    usualLight = d === 0 ? now : usualLight + Math.max(0.03, 1 / (d + 1)) * (now - usualLight)
    if (d === 0) {
      for (const one of members) one.level = use
      return
    }
    const forecast = mixed()
    const squares = members.map(({ level }) => ((use - level) / forecast) ** 2)
    const middle = median(squares)
    usualLoss =
      d === 1 ? Math.max(middle, 0.0004) : Math.max(0.0001, usualLoss * (1 + 0.1 * Math.sign(middle - usualLoss)))
    misses.add(Math.abs(use / forecast - 1))
    members.forEach((one, k) => {
      one.loss += 0.07 * (Math.min(squares[k]!, 16 * usualLoss) - one.loss)
      const factor = Math.max(0.2, (now / before) ** one.power)
      const off = Math.max(-3 * one.spread, Math.min(3 * one.spread, use / (factor * one.level) - 1))
      one.level *= 1 + Math.max(one.gain, 1 / (d + 1)) * off
      one.spread = Math.max(0.02, one.spread + 0.1 * (Math.abs(off) - one.spread))
    })
  })
  const use = mixed()
  const { half, ninety } = misses.bands
  const band = (size: number) => [use * (1 - size), use * (1 + size)] as const
  return { use, half: band(half[1]), ninety: band(ninety[1]) }
}
