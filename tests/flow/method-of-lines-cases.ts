import { readFileSync } from 'node:fs'
import type { FeddesLimits } from 'porewater'

export interface Case {
  n: number
  alpha: number
  ks: number
  residual: number
  saturated: number
  height: number
  start: number
  use: number
  steps: [duration: number, depth: number][]
  rows: { drained: number; waterContent: number }[]
}

/** Rows from method-of-lines.py: another discretisation, integrated by BDF of scipy, in which nothing is shared with this package. */
export const { cases } = JSON.parse(readFileSync(new URL('./method-of-lines.json', import.meta.url), 'utf8')) as {
  cases: Case[]
}

/** Roots of those runs: they take what is asked for down to 10⁶ cm. */
export const limits = {
  h1: 0,
  h2: 1,
  h3HighDemand: 1e6,
  h3LowDemand: 1e6,
  h4: 2e6,
  highDemand: 5,
  lowDemand: 1,
} as unknown as FeddesLimits
