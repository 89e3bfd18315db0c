import type { Container, Length, RetentionModel, SuctionHead } from 'porewater'

/**
 * Litres of water in a container at rest by an independent rule: Gauss–Legendre of five points on panels that shrink towards
 * the bottom, where curves with n below 2 are not smooth, with panel ends on every kink.
 */
export function waterByPanels(container: Container, medium: RetentionModel, bottomSuction = 0, panels = 4000): number {
  const nodes = [0, Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3]
  const weights = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900]
  const kinks = [...container.breakpoints, ...medium.breakpoints.map((s) => s - bottomSuction)]
  const ends = [0, ...kinks.filter((z) => z > 0 && z < container.height).sort((a, b) => a - b), container.height]
  const f = (z: number) => medium.waterContent((bottomSuction + z) as SuctionHead) * container.area(z as Length)
  let total = 0
  for (let e = 1; e < ends.length; e++) {
    const from = ends[e - 1]!
    const width = ends[e]! - from
    for (let i = 0; i < panels; i++) {
      const low = from + width * (i / panels) ** 4
      const high = from + width * ((i + 1) / panels) ** 4
      const half = (high - low) / 2
      const middle = (high + low) / 2
      let sum = weights[0]! * f(middle)
      for (const k of [1, 2]) {
        const offset = half * nodes[k]!
        sum += weights[k]! * (f(middle - offset) + f(middle + offset))
      }
      total += sum * half
    }
  }
  return 10 * total
}
