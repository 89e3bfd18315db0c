import type { CheckCode, Evidence, EvidenceCode, Suspicion } from '../cause/cause.js'

export function evidence(code: EvidenceCode, value: number, unit: string, more: Partial<Evidence> = {}): Evidence {
  return { code, value, unit, ...more }
}

export function suspicion(
  code: Suspicion['code'],
  level: Suspicion['level'],
  weight: number,
  because: readonly Evidence[],
  check: CheckCode,
  about?: readonly string[],
): Suspicion {
  return { code, level, weight, evidence: because, check, ...(about === undefined ? {} : { about }) }
}
