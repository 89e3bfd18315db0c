/** What every plan and every sized shot says of itself; `adviceInFull` says why. */
export const ADVICE = 'advice only: set your own limits'

/** A result that a person or a program may act on. */
export interface Advice {
  /** What must hold before anything acts on it; the same in every result, and `adviceInFull` says why. */
  readonly caution: string
}
