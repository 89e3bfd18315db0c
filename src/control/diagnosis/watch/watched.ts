/** Hours without light. */
export interface DarkHours {
  /** When it gets dark. Unit: h. Range: [0, 24]. */
  readonly from: number
  /** When it gets light. Unit: h. Range: [0, 24]. */
  readonly until: number
}

/** Settings that make sense, in plain numbers. */
export interface Watched {
  readonly names: readonly string[]
  readonly volume: number
  readonly flow: number
  readonly min: number
  readonly max: number
  readonly full: number
  readonly responseTime: number
  readonly maxAge: number
  readonly dark: DarkHours | null
}
