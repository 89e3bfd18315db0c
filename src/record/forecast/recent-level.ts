/** Readings of a few minutes, put together: mean time, mean water content and their number. */
export type RecentPoint = readonly [time: number, waterContent: number, count: number]

/** Readings closer than this are put together, so that a record by the second is remembered in as little room. Unit: s. */
const TOGETHER = 150
/** The line of the present level looks back so far. Unit: s. */
const BACK = 1800

/** Takes one more reading into the points of the last half hour, of which at least the newest two stay. */
export function addReading(points: RecentPoint[], time: number, waterContent: number): void {
  let first = 0
  while (first < points.length - 1 && points[first]![0] < time - BACK) first++
  if (first > 0) points.splice(0, first)
  const last = points[points.length - 1]
  if (last !== undefined && Math.floor(last[0] / TOGETHER) === Math.floor(time / TOGETHER)) {
    const count = last[2] + 1
    points[points.length - 1] = [last[0] + (time - last[0]) / count, last[1] + (waterContent - last[1]) / count, count]
  } else points.push([time, waterContent, 1])
}

/** The most points that `addReading` keeps. */
export const MAX_POINTS = 15

/** The level at a time on the straight line through the points. */
export function levelAt(points: readonly RecentPoint[], time: number): number {
  // Distances are taken from the newest point, so that an offset of the probe changes no digit that matters.
  const [lastTime, lastWaterContent] = points[points.length - 1]!
  let [weight, meanT, meanX, tt, tx] = [0, 0, 0, 0, 0]
  for (const [t, x, count] of points) {
    weight += count
    const dt = t - lastTime - meanT
    const dx = x - lastWaterContent - meanX
    meanT += (dt * count) / weight
    meanX += (dx * count) / weight
    tt += count * dt * (t - lastTime - meanT)
    tx += count * dx * (t - lastTime - meanT)
  }
  return lastWaterContent + meanX + (tt > 0 ? (tx / tt) * (time - lastTime - meanT) : 0)
}
