/** What every plan and every sized shot says of itself. It is the same in all of them, so it needs no code and no numbers. */
export const ADVICE = 'advice only: set your own limits'

/** A result that a person or a program may act on. */
export interface Advice {
  /** What must hold before anything acts on it; the same in every result. */
  readonly caution: string
}
