/** Something a caller should know about a result: a limit reached, a validity left, an assumption made. */
export interface Finding {
  /** Stable short name for programs, in kebab case. */
  readonly code: string
  /** How much it matters: a `note` explains, a `caution` asks for a look, a `danger` must not be acted on unseen. */
  readonly level: 'note' | 'caution' | 'danger'
  /** One sentence for people, with numbers and units. */
  readonly message: string
  /** Which input or output it is about. */
  readonly about?: string
  /** The number that tells. Unit: that of `unit`. */
  readonly value?: number
  /** Unit of the value. */
  readonly unit?: string
  /** Where the rule comes from, works by their keys (`sourceInFull()` writes them out); `common practice, no source` where there is none. */
  readonly source?: string
}
