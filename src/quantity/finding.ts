/** What every finding has: which one it is, and how much it matters. */
export interface FoundCode<Code extends string = string> {
  /** Stable short name for programs, in kebab case; no other finding of the topic has it. */
  readonly code: Code
  /** How much it matters: a `note` explains, a `caution` asks for a look, a `danger` must not be acted on unseen. */
  readonly level: 'note' | 'caution' | 'danger'
  /** Which input or output it is about. */
  readonly about?: string
}

/** The numbers of a finding, which never come without their unit. */
export interface FoundNumbers {
  /** The number that tells. Unit: that of `unit`. Range: any. */
  readonly value?: number
  /** With what it was compared. Unit: that of `unit`. Range: any. */
  readonly limit?: number
  /** Lower end of the range that it left. Unit: that of `unit`. Range: any. */
  readonly min?: number
  /** Upper end of the range that it left. Unit: that of `unit`. Range: any. */
  readonly max?: number
  /** Unit of the numbers. */
  readonly unit: string
}

/** What a function found, as a code and the numbers that tell. The `explain…Finding` of its topic puts it into words. */
export type CodedFinding<Code extends string = string> = FoundCode<Code> &
  (FoundNumbers | { readonly [Name in keyof FoundNumbers]?: never })

/** Something a caller should know about a result, in words: a limit reached, a validity left, an assumption made. */
export type Finding = CodedFinding & {
  /** One sentence for people, with numbers and units. */
  readonly message: string
  /** Where the rule comes from, works by their keys (`sourceInFull()` writes them out); `common practice, no source` where there is none. */
  readonly source?: string
}
