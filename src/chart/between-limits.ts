import type { Panel } from './panel-chart.js'

/** The two limits of a zone as lines, and what lies between them as a band; nothing where they are not known. */
export function betweenLimits(
  limits: { readonly refillPoint: number; readonly fullPoint: number } | undefined,
): Pick<Panel, 'rules' | 'band'> {
  if (limits === undefined) return {}
  const { refillPoint, fullPoint } = limits
  return {
    rules: [
      { name: 'full point', y: fullPoint },
      { name: 'refill point', y: refillPoint },
    ],
    band: [refillPoint, fullPoint],
  }
}
