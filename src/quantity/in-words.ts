/** How a number is told. */
interface Telling {
  /** Whether a water content is a level, told as per cent of the volume; without it, it is a change, told in points. */
  readonly level?: boolean
  /** How many digits count; three by default. */
  readonly digits?: number
}

/** What follows the points of a rate. */
const POINTS: Readonly<Record<string, string>> = {
  'm³/m³': '',
  'm³/m³/h': ' an hour',
  'm³/m³/d': ' a day',
  'm³/m³/°C': ' for 1 °C',
  'm³/m³ per dS/m': ' for 1 dS/m',
}

/** A number of a finding as people say it: water in per cent or points of the volume, time in minutes or hours. */
export function inWords(value: number, unit: string, { level = false, digits = 3 }: Telling = {}): string {
  const short = (x: number) => withTrueMinus(String(Number(x.toPrecision(digits))))
  if (unit === 's') return inTime(value, short)
  if (unit === 'share of the flow') return `${short(100 * value)} % of the flow`
  // What no water content can be is another unit, and told as it came.
  if (level && unit === 'm³/m³') return value < -1 || value > 2 ? short(value) : `${short(100 * value)} %`
  const rate = POINTS[unit]
  if (rate !== undefined) return `${short(100 * value)} points${rate}`
  return unit === '1' ? short(value) : `${short(value)} ${unit}`
}

/** A share of one as per cent, to three digits. */
export function shareInWords(share: number): string {
  return inWords(share, 'm³/m³', { level: true })
}

function inTime(seconds: number, short: (x: number) => string): string {
  const size = Math.abs(seconds)
  if (size < 120) return `${short(seconds)} s`
  if (size < 7200) return `${short(seconds / 60)} min`
  return size < 172800 ? `${short(seconds / 3600)} h` : `${short(seconds / 86400)} d`
}

/** A share of one as per cent, with so many digits behind the point. */
export function asPercent(share: number | undefined, digits = 1): string {
  return `${fixed(100 * (share ?? Number.NaN), digits)} %`
}

/** A change of a water content in points of the volume. */
export function asPoints(change: number, digits = 1): string {
  return `${fixed(100 * change, digits)} points`
}

export function asLitres(volume: number): string {
  return `${fixed(volume, 2)} L`
}

/** A number with so many digits behind the point; what rounds to nothing has no sign. */
export function fixed(x: number, digits: number): string {
  return withTrueMinus(x.toFixed(digits).replace(/^-(?=[0.]+$)/, ''))
}

/** The same with a plus where it is not negative: a change, or a shift. */
export function signed(x: number, digits: number): string {
  const text = fixed(x, digits)
  return text.startsWith('−') ? text : `+${text}`
}

/** A written number with a minus sign in place of a hyphen. */
export function withTrueMinus(number: string): string {
  return number.replace(/^-/, '−')
}
