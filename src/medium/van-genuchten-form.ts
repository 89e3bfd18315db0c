/**
 * The curve S = (1 + (αs)ⁿ)⁻ᵐ that several models share, in a form that keeps its digits at both ends: everything goes through
 * the logarithm of (αs)ⁿ, which neither overflows nor rounds to one.
 */
export interface Curve {
  readonly alpha: number
  readonly n: number
  readonly m: number
}

/** Effective saturation at a positive suction. */
export function saturationOf({ alpha, n, m }: Curve, suction: number): number {
  return Math.exp(-m * softplus(n * Math.log(alpha * suction)))
}

/** Fall of the effective saturation for each centimetre at a positive suction. */
export function fallOf(curve: Curve, suction: number): number {
  const x = curve.n * Math.log(curve.alpha * suction)
  return ((curve.m * curve.n) / suction) * Math.exp(-curve.m * softplus(x) - softplus(-x))
}

/** The part 1 - (1 - S^(1/m))^m of the closed conductivity forms, at a positive suction. */
export function conductingPart({ alpha, n, m }: Curve, suction: number): number {
  return -Math.expm1(-m * softplus(-n * Math.log(alpha * suction)))
}

/** Suction from the logarithm of an effective saturation, which is zero or negative. */
export function suctionOf({ alpha, n, m }: Curve, logSaturation: number): number {
  const t = -logSaturation / m
  const x = t > 30 ? t + Math.log1p(-Math.exp(-t)) : Math.log(Math.expm1(t))
  return Math.exp(x / n) / alpha
}

/** Logarithm of the effective saturation of a water content, with all digits near saturation too. */
export function logSaturation(content: number, residual: number, saturated: number): number {
  const lack = (saturated - content) / (saturated - residual)
  return lack < 0.5 ? Math.log1p(-lack) : Math.log((content - residual) / (saturated - residual))
}

/** ln(1 + eˣ). */
function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x))
}
