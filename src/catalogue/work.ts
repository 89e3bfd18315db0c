/** How a work is known: the best that anyone here has seen of it. */
export type HowWorkIsKnown = 'read' | 'recomputed' | 'confirmed' | 'not-confirmed'

/** A published work as a row of the table of works. */
export interface WorkRow {
  /** `Topp, G. C.; Davis, J. L.`, the editors with `(ed.)`, or an institution; `and others` where more are meant. May be empty. */
  readonly authors: string
  /** Year of publication; left out where it is not known. */
  readonly year?: string
  readonly title?: string
  /** Journal of an article. */
  readonly journal?: string
  readonly volume?: string
  readonly pages?: string
  /** Who published it, or the series and its number. */
  readonly publisher?: string
  /** Number of a standard: `ISO 11461`. */
  readonly number?: string
  readonly doi?: string
  /**
   * `read`: looked up in the work, its abstract, or a copy of the place; `confirmed`: public code or text that cites it agrees;
   * `recomputed`: an independent program has the same numbers from its equation; `not-confirmed`: none of these.
   */
  readonly known: HowWorkIsKnown
}

/** One author or editor. */
export interface Person {
  /** Family name, or the whole name of an institution. */
  readonly family: string
  /** Initials. */
  readonly given?: string
  /** Whether it is an institution and not a person. */
  readonly institution?: true
}

/** A published work. */
export interface CitedWork {
  /** What sources cite it by: `topp-1980`. */
  readonly key: string
  /** `article` in a journal; `standard` of a standards body; `publication` for books, reports, papers of a series and the rest. */
  readonly type: 'article' | 'standard' | 'publication'
  readonly authors: readonly Person[]
  /** Whether more authors are meant than are named. */
  readonly moreAuthors: boolean
  /** Whether those named are the editors. */
  readonly edited: boolean
  /** Year of publication; empty where it is not known. */
  readonly year: string
  /** Title; empty where it is not known. */
  readonly title: string
  /** Journal of an article. */
  readonly journal: string
  readonly volume: string
  readonly pages: string
  /** Who published it, or the series and its number. */
  readonly publisher: string
  /** Number of a standard: `ISO 11461`. */
  readonly number: string
  readonly doi: string
  /** How it is known: `read`, `confirmed` by public code or text, `recomputed` from its equation, `not confirmed`. */
  readonly known: HowWorkIsKnown
}
