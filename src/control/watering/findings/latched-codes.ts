/** Findings that stand until somebody acknowledges them. */
export const LATCHED_CODES = [
  'flow-while-closed',
  'no-flow',
  'flow-too-large',
  'flow-too-small',
  'drain-while-dry',
  'no-drain',
  'drain-too-large',
  'valve-does-not-close',
] as const

/** One of them. */
export type LatchedCode = (typeof LATCHED_CODES)[number]
