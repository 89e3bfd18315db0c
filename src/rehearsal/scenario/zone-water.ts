/** Water on its way through a zone, in L a container since the start. */
export interface ZoneWater {
  /** Through the valve; what of it nobody ordered; by hand. */
  given: number
  unordered: number
  byHand: number
  drained: number
  used: number
  /** Beside the containers: from the line and from bursts. */
  spilt: number
  /** In the line now. */
  line: number
  /** What meter and gauge count, and what flows now. Unit: L, L, L/h. */
  metered: number
  gauged: number
  flow: number
  /** Salts of a container. Unit: dS/m L. */
  salt: number
}
