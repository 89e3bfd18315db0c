/** The clock of a picture. */
export interface LocalClock {
  /** What local clocks are ahead of universal time; west is negative. Unit: h. Range: [-26, 26]. */
  readonly hoursFromUtc: number
}

/** The head of a picture. */
export interface PictureTitle {
  /** Title of the picture. */
  readonly title: string
}

/** How wide a picture is. */
export interface PictureWidth {
  /** Width of the picture; 960 by default, 360 for a telephone. Unit: px. Range: [200, 10000]. */
  readonly width?: number
}

/** When readings were taken. */
export interface ReadingTimes {
  /** Instants of the readings, seconds since 1970 in universal time, rising. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
}

/** Curves of several probes. */
export interface ProbeCurves {
  /** Curves of water content, one a probe; NaN where a reading is missing. */
  readonly waterContent: readonly { readonly name: string; readonly value: ArrayLike<number> }[]
  /** Gaps longer than this are shaded and no line is drawn across them. Unit: s. Range: any. */
  readonly maxStep: number
}

/** How the legend calls it. */
export interface LegendName {
  /** Name in the legend. */
  readonly name: string
}
