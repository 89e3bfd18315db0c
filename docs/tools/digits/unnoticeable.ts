import type { Literal, Slip } from './literals.js'

/** Numbers of one line whose slips no test can notice. */
export interface Unnoticeable {
  readonly path: string
  /** The line of code, without the space around it. */
  readonly line: string
  /** The numbers of the line; all where they are not named. */
  readonly numbers?: readonly string[]
  /** Which slips: of the last digit, of the sign, or both. */
  readonly kinds: readonly Slip['kind'][]
  readonly why: string
}

/** Read and decided; such slips are not tried. */
export const UNNOTICEABLE: readonly Unnoticeable[] = [
  {
    path: 'src/dielectric/relations/topp-1980.ts',
    line: '(e) => [cubic(e) - theta, (3 * 4.3e-6 * e - 2 * 5.5e-4) * e + 2.92e-2],',
    kinds: ['digit', 'sign'],
    why: 'the slope only steers a search between two ends, which bisects where a step leaves them',
  },
  {
    path: 'src/dielectric/relations/ledieu-1986.ts',
    line: '((numberIn(waterContent, CONTENT_LEDIEU) + 0.1758) / 0.1138) ** 2,',
    numbers: ['0.1138'],
    kinds: ['sign'],
    why: 'it meets a square',
  },
  {
    path: 'src/air/day-of-date.ts',
    line: 'const BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const',
    numbers: ['365'],
    kinds: ['digit'],
    why: 'the range of days refuses a 32nd of December before its length is asked',
  },
  {
    path: 'src/air/day-of-date.ts',
    line: 'let year = 1970 + Math.floor(days / 365.2425)',
    numbers: ['365.2425'],
    kinds: ['digit'],
    why: 'a year that is found one too early or too late is put right',
  },
  {
    path: 'src/air/day-of-date.ts',
    line: 'return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)',
    kinds: ['sign'],
    why: 'whether a remainder is zero does not hang on the sign of the divisor',
  },
  {
    path: 'src/air/dew-point-sonntag-1990.ts',
    line: '(t) => [Math.log(curve(t as Temperature)) - logarithm, 5400 / (t + 273.15) ** 2],',
    kinds: ['digit', 'sign'],
    why: 'the slope only steers a search between two ends, which bisects where a step leaves them',
  },
  {
    path: 'src/air/solar-hour-fao56.ts',
    line: "(Math.PI / 12) * (numberIn(place.middle, CLOCK_TIME, 'middle') / 3600 + shift + correction - 12),",
    numbers: ['12'],
    kinds: ['sign'],
    why: 'noon plus a half day is the same angle as noon less a half day; the sign of the first 12 is noticed',
  },
  {
    path: 'src/air/wet-bulb.ts',
    line: 'return t < -60 ? 0.6108 * Math.exp((17.27 * t) / (t + 237.3)) : saturationVapourPressureFao56(t as Temperature)',
    numbers: ['60'],
    kinds: ['sign'],
    why: 'both branches are the same curve; the second alone refuses what is colder',
  },
  {
    path: 'src/air/wet-bulb.ts',
    line: 'return t < -60 ? (4098 * saturation(t)) / (t + 237.3) ** 2 : slopeOfSaturationVapourPressureFao56(t as Temperature)',
    numbers: ['4098', '237.3'],
    kinds: ['digit', 'sign'],
    why: 'the slope only steers a search between two ends, which bisects where a step leaves them',
  },
  {
    path: 'src/air/wet-bulb.ts',
    line: 'return t < -60 ? (4098 * saturation(t)) / (t + 237.3) ** 2 : slopeOfSaturationVapourPressureFao56(t as Temperature)',
    numbers: ['60'],
    kinds: ['sign'],
    why: 'both branches are the same slope; the second alone refuses what is colder',
  },
  {
    path: 'src/irrigation/plan/plan-engine.ts',
    line: 'const days = Math.ceil((40 * drainLag) / 86400)',
    kinds: ['digit'],
    why: 'what has not drained after forty times the lag is lost in rounding',
  },
  {
    path: 'src/irrigation/plan/plan-limits.ts',
    line: 'const day = Math.round(86400 / request.step)',
    kinds: ['digit'],
    why: 'a count of whole steps: no step is so short that a second more makes another',
  },
  {
    path: 'src/irrigation/plan/planning.ts',
    line: 'return demand[i < demand.length ? i : i - Math.round(86400 / step)]!',
    kinds: ['digit'],
    why: 'a count of whole steps: no step is so short that a second more makes another',
  },
  {
    path: 'src/probe/calibration-polynomial.ts',
    line: 'for (let i = 0; i < 60; i++) {',
    kinds: ['digit'],
    why: 'two ends that were halved so often are neighbours',
  },
  {
    path: 'src/demand/reference/hourly-series-asce-2005.ts',
    line: 'const omega = aroundNoon((Math.PI / 12) * ((seconds - day * 86400) / 3600 + correction - 12))',
    numbers: ['12', '86400'],
    kinds: ['sign'],
    why: 'days more or less are the same angle, and an hour before noon sees as much of the sun as one behind it',
  },
  {
    path: 'src/demand/cover/stanghellini-1987.ts',
    line: '658.5 * (1 + 0.005 * (warmth - 33.6) ** 2) * Math.min(1.5, 1 + 1.1e-11 * carbon) * Math.min(3.8, 1 + 5.2 * dry)',
    numbers: ['1.5'],
    kinds: ['digit'],
    why: 'the most carbon dioxide that is taken, 5000 ppm, makes 1.0003 of it at night',
  },
  {
    path: 'src/water/permittivity-iapws-r8.ts',
    line: 'const DIPOLE = 6.138e-30',
    kinds: ['sign'],
    why: 'it meets a square',
  },
  {
    path: 'src/medium/curves/fredlund-xing-1994.ts',
    line: 'const MIN = -744',
    kinds: ['digit'],
    why: 'from the exponential of -745 to that of -744 there are two numbers, 5e-324 and 1e-323: suctions that hold the same',
  },
  {
    path: 'src/medium/curves/fredlund-xing-uncorrected.ts',
    line: 'const logX = 1 + (above > 30 ? above : Math.log(Math.expm1(above)))',
    numbers: ['30'],
    kinds: ['digit'],
    why: 'between 30 and 31 both differ by less than 1e-13',
  },
  {
    path: 'src/flow/drainage-times.ts',
    line: '((drainable / input.container.volume) * input.container.height * 360) / input.saturatedConductivity,',
    kinds: ['digit'],
    why: 'how long the steps are in which the drain is looked at; between them it is interpolated',
  },
  {
    path: 'src/flow/capillary-rise.ts',
    line: 'min /= 20',
    kinds: ['digit'],
    why: 'how far the lower end of a search goes down in one step',
  },
  {
    path: 'src/flow/drainage-times.ts',
    line: "const flow = containerFlowRichards1931({ nodes: 121, tolerance: 1e-4, ...input, base: 'seepage', surface: 'shots' })",
    kinds: ['digit'],
    why: 'into how many cells the column is cut: one more moves the times by less than they are off',
  },
  {
    path: 'src/flow/sorptivity.ts',
    line: 'let [low, high] = [near * 0.98, near * Math.SQRT2]',
    kinds: ['digit', 'sign'],
    why: 'where halving begins: a lower end goes down until it is one',
  },
  {
    path: 'src/flow/sorptivity.ts',
    line: 'while (isTooMuch(medium, from, to, low)) low *= 0.9',
    kinds: ['digit', 'sign'],
    why: 'how far the lower end of a halving goes down in one step; below zero it is one as well',
  },
  {
    path: 'src/flow/sorptivity.ts',
    line: 'for (let k = 12; k >= 0; k--) ends.push(from + (to - from) * 10 ** -k)',
    numbers: ['12'],
    kinds: ['digit'],
    why: 'one piece more beside an end, a thousandth of a millionth of the span, is integrated as well as within its neighbour',
  },
  {
    path: 'src/numerics/quadrature.ts',
    line: '0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,',
    kinds: ['sign'],
    why: 'a node is read on both sides of the middle',
  },
  {
    path: 'src/numerics/quadrature.ts',
    line: '0.4058451513773972, 0.20778495500789848, 0,',
    kinds: ['sign'],
    why: 'a node is read on both sides of the middle',
  },
  {
    path: 'src/numerics/log-excess.ts',
    line: 'for (let k = 3; k < 30; k += 2) {',
    kinds: ['digit'],
    why: 'k is odd: none lies between',
  },
  {
    path: 'src/numerics/levenberg-marquardt.ts',
    line: 'const h = moves?.[j] ?? 6e-6 * (1 + Math.abs(value))',
    kinds: ['digit'],
    why: 'how far apart the ends of a difference are: all near the third root of rounding do alike',
  },
  {
    path: 'src/numerics/student-t.ts',
    line: 'const constant = -0.5 * Math.log(2 * Math.PI) - 0.25 / n',
    numbers: ['0.25'],
    kinds: ['digit', 'sign'],
    why: "the slope only steers Newton's steps",
  },
  ...(
    [
      ['return (word << by) | (word >>> (32 - by))', '32'],
      ['h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)', '16'],
      ['return h ^ (h >>> 16)', '16'],
    ] as const
  ).map(
    ([line, number]): Unnoticeable => ({
      path: 'src/numerics/random.ts',
      line,
      numbers: [number],
      kinds: ['sign'],
      why: 'the language shifts by what is left of a division by 32',
    }),
  ),
]

/** Whether a slip is one of those. */
export function isUnnoticeable(code: string, { path, line, text }: Literal, { kind }: Slip): boolean {
  const around = code.split('\n')[line - 1]!.trim()
  return UNNOTICEABLE.some(
    (one) =>
      one.path === path && one.line === around && one.kinds.includes(kind) && (one.numbers?.includes(text) ?? true),
  )
}
