/** Complex relative permittivity, real part less i times the loss. */
export interface ComplexPermittivity {
  /** Real part: what is stored. Unit: 1. */
  readonly real: number
  /** Imaginary part, as a positive number: what is lost. Unit: 1. */
  readonly loss: number
}

/** One relaxation of Debye: from the static to the high-frequency value around a relaxation time in seconds. */
export function debye(step: number, relaxationTime: number, frequency: number): ComplexPermittivity {
  const x = 2 * Math.PI * frequency * relaxationTime
  const real = step / (1 + x * x)
  return { real, loss: real * x }
}
