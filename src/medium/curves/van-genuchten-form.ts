/**
 * The curve S = (1 + (αs)ⁿ)⁻ᵐ that several models share, in a form that keeps its digits at both ends: everything goes through
 * the logarithm of (αs)ⁿ, which neither overflows nor rounds to one.
 */
export interface Curve {
  readonly logAlpha: number
  readonly n: number
  readonly m: number
}

/** ln (αs)ⁿ at a positive suction. */
export function logPower({ logAlpha, n }: Curve, suction: number): number {
  return n * (logAlpha + Math.log(suction))
}

/** Logarithm of the effective saturation at a positive suction. */
export function logSaturationAt(curve: Curve, suction: number): number {
  return -curve.m * softplus(logPower(curve, suction))
}

/** Effective saturation at a positive suction. */
export function saturationAt(curve: Curve, suction: number): number {
  return Math.exp(logSaturationAt(curve, suction))
}

/** Fall of the effective saturation for each centimetre at a positive suction. */
export function fallAt(curve: Curve, suction: number): number {
  const x = logPower(curve, suction)
  return curve.m * curve.n * Math.exp(-curve.m * softplus(x) - softplus(-x) - Math.log(suction))
}

/** The part 1 - (1 - S^(1/m))^m of the closed conductivity forms, at a positive suction. */
export function conductingPart(curve: Curve, suction: number): number {
  return -Math.expm1(-curve.m * softplus(-logPower(curve, suction)))
}

/** Logarithm of the suction from the logarithm of an effective saturation, which is zero or negative. */
export function logSuctionOf({ logAlpha, n, m }: Curve, logSaturation: number): number {
  const t = -logSaturation / m
  const x = t > 30 ? t + Math.log1p(-Math.exp(-t)) : Math.log(Math.expm1(t))
  return x / n - logAlpha
}

/** ln(1 + eˣ), which overflows nowhere. */
export function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x))
}
