/** Means of two lists, and sums of squares and products about them: slope and correlation are their ratios. */
export interface SumsAboutMeans {
  readonly meanX: number
  readonly meanY: number
  readonly xx: number
  readonly xy: number
  readonly yy: number
}

/** Of two lists of the same length. */
export function sumsAboutMeans(x: readonly number[], y: readonly number[]): SumsAboutMeans {
  const mean = (list: readonly number[]) => list.reduce((total, value) => total + value, 0) / list.length
  const [meanX, meanY] = [mean(x), mean(y)]
  let [xx, xy, yy] = [0, 0, 0]
  x.forEach((value, i) => {
    const [dx, dy] = [value - meanX, y[i]! - meanY]
    xx += dx * dx
    xy += dx * dy
    yy += dy * dy
  })
  return { meanX, meanY, xx, xy, yy }
}
