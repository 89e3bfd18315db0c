import type { LegendName } from './terms.js'
/** One curve, row of points or shape over the common horizontal axis. NaN breaks a curve. */
export interface PanelSeries extends LegendName {
  readonly x: ArrayLike<number>
  readonly y: ArrayLike<number>
  /** A region is a closed shape. */
  readonly draw: 'line' | 'points' | 'bars' | 'steps' | 'region'
  /** Which of the six looks (colour, dash and marker) it has; left out, its place in the list. Unit: 1. Range: integers [0, 5]. */
  readonly look?: number
  /** Width of its bars in units of the horizontal axis; left out, a thin bar. */
  readonly barWidth?: number
}

/** A horizontal line at a height, with its name beside it, in a narrow picture in the legend. */
export interface PanelRule {
  readonly name: string
  readonly y: number
}

/** A vertical line at a place of the horizontal axis, with its name above the highest panel. */
export interface PanelMark {
  readonly name: string
  readonly x: number
}

/** A shaded part of the horizontal axis, with its name above the highest panel. */
export interface PanelSpan {
  readonly name: string
  readonly from: number
  readonly to: number
}

/** One of the pictures that stand above each other over a common horizontal axis. */
export interface Panel {
  /** Title of the vertical axis, with its unit. */
  readonly yTitle: string
  readonly series: readonly PanelSeries[]
  readonly rules?: readonly PanelRule[]
  /** A shaded range of heights, as between a refill point and a full point. */
  readonly band?: readonly [low: number, high: number]
  /** What the shaded range of heights means, for the legend. */
  readonly bandName?: string
  /** The range of heights that must be visible. */
  readonly yRange?: readonly [low: number, high: number]
  /** Share of the height, against the other panels. */
  readonly weight?: number
}

/** What a picture of stacked panels is made from. */
export interface PanelChart {
  /** Title of the whole picture. */
  readonly title: string
  /** What the picture shows, in words, for people who cannot see it. */
  readonly alternative: string
  /** Title of the horizontal axis, with its unit. */
  readonly xTitle: string
  /** Ends of the horizontal axis, the lower first; above zero for a logarithmic one. */
  readonly xRange: readonly [low: number, high: number]
  /** Linear, when it is left out. */
  readonly xScale?: 'linear' | 'logarithmic'
  /** Where the horizontal axis carries numbers, and what is written there. */
  readonly xTicks?: readonly { readonly x: number; readonly text: string }[]
  /** Spans without data, shaded so that nobody reads a line into them. */
  readonly gaps?: readonly (readonly [low: number, high: number])[]
  /** What the grey of the gaps means, for the legend; `no readings` by default. */
  readonly gapName?: string
  /** Shaded parts of the horizontal axis that have a meaning. */
  readonly spans?: readonly PanelSpan[]
  /** Places of the horizontal axis that have a meaning. */
  readonly marks?: readonly PanelMark[]
  /** The pictures, from top to bottom. */
  readonly panels: readonly Panel[]
  /** Unit: px. Width of the picture. Range: [200, 10000]. */
  readonly width: number
  /** Unit: px. Height of the picture. Range: [150, 10000]. */
  readonly height: number
}
