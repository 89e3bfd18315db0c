/**
 * A long course with at most two points in each of so many parts, the least and the most of each, so that no peak is lost. Values
 * that are no water content break the line.
 */
export function thinned(
  time: ArrayLike<number>,
  value: ArrayLike<number>,
  parts: number,
): { x: number[]; y: number[] } {
  const x: number[] = []
  const y: number[] = []
  const each = Math.max(1, Math.ceil(time.length / parts))
  for (let start = 0; start < time.length; start += each) {
    let low = -1
    let high = -1
    for (let i = start; i < Math.min(time.length, start + each); i++) {
      const here = value[i]!
      if (!(here >= 0 && here <= 1)) continue
      if (low < 0 || here < value[low]!) low = i
      if (high < 0 || here > value[high]!) high = i
    }
    const points = low < 0 ? [] : low === high ? [low] : [Math.min(low, high), Math.max(low, high)]
    if (points.length === 0) {
      x.push(time[start]!)
      y.push(Number.NaN)
    }
    for (const point of points) {
      x.push(time[point]!)
      y.push(value[point]!)
    }
  }
  return { x, y }
}

/**
 * What was added to a count, in mL an hour, over spans of so many whole hours, at the middle of each. Spans without are left out.
 */
export function rates(
  time: ArrayLike<number>,
  litres: ArrayLike<number>,
  step: number,
  hours: number,
): { x: number[]; y: number[] } {
  const x: number[] = []
  const y: number[] = []
  const each = Math.max(1, Math.round((3600 * hours) / step))
  for (let start = 0; start < time.length - 1; start += each) {
    const end = Math.min(time.length - 1, start + each)
    const added = ((litres[end]! - litres[start]!) * 1000 * 3600) / ((end - start) * step)
    if (!(added > 1e-9)) continue
    x.push(time[start]! + ((end - start) * step) / 2)
    y.push(added)
  }
  return { x, y }
}
