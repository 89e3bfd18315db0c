/** What a medium does at the suction of each node. */
export interface NodeValues {
  /** Water content. Unit: m³/m³. */
  readonly waterContent: Float64Array
  /** Its slope against suction without the minus sign. Unit: 1/cm. */
  readonly capacity: Float64Array
  /** Conductivity as a share of that at saturation. Unit: 1. */
  readonly conductivity: Float64Array
  /** Its slope against suction. Unit: 1/cm. */
  readonly conductivitySlope: Float64Array
  /** Matric flux potential as a share of the saturated conductivity: the integral of the conductivity from here to the driest. Unit: cm. */
  readonly potential: Float64Array
}

/** Room for the values of some nodes. */
export function nodeValues(nodes: number): NodeValues {
  const room = () => new Float64Array(nodes)
  return {
    waterContent: room(),
    capacity: room(),
    conductivity: room(),
    conductivitySlope: room(),
    potential: room(),
  }
}
