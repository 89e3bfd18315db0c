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
    path: 'src/flow/drainage-times.ts',
    line: '((drainable / input.container.volume) * input.container.height * 360) / input.saturatedConductivity,',
    kinds: ['digit'],
    why: 'how long the steps are in which the drain is looked at; between them it is interpolated',
  },
]

/** Whether a slip is one of those. */
export function isUnnoticeable(code: string, { path, line, text }: Literal, { kind }: Slip): boolean {
  const around = code.split('\n')[line - 1]!.trim()
  return UNNOTICEABLE.some(
    (one) =>
      one.path === path && one.line === around && one.kinds.includes(kind) && (one.numbers?.includes(text) ?? true),
  )
}
