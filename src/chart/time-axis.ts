/** Ticks of a time axis: whole local hours, or local midnights on longer spans. Times are seconds since 1970 in universal time. */
export function timeTicks(from: number, to: number, hoursFromUtc: number): { x: number; text: string }[] {
  const hours = (to - from) / 3600
  const step =
    [1, 2, 3, 6, 12, 24, 48, 168, 720].find((candidate) => hours / candidate <= 9) ?? Math.ceil(hours / 9 / 24) * 24
  const offset = hoursFromUtc * 3600
  const first = Math.ceil((from + offset) / (step * 3600)) * step * 3600
  const ticks: { x: number; text: string }[] = []
  for (let local = first; local <= to + offset; local += step * 3600)
    ticks.push({ x: local - offset, text: label(local, step >= 24) })
  return ticks
}

/** A moment given in local seconds, as `07:00` or `14 May`. */
function label(local: number, dayOnly: boolean): string {
  const date = new Date(local * 1000)
  const hour = date.getUTCHours()
  if (!dayOnly) return `${String(hour).padStart(2, '0')}:${String(date.getUTCMinutes()).padStart(2, '0')}`
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
  return `${date.getUTCDate()} ${months[date.getUTCMonth()]}`
}

/** Spans longer than `longest` seconds between neighbouring readings, or between readings that are there. */
export function gapsBetween(time: ArrayLike<number>, value: ArrayLike<number>, longest: number): [number, number][] {
  const gaps: [number, number][] = []
  let last = Number.NaN
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(value[i])) continue
    const now = time[i] as number
    if (now - last > longest) gaps.push([last, now])
    last = now
  }
  return gaps
}
