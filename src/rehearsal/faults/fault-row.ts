import type { Effects, ProbeEffects } from './effects.js'
import type { FaultSign } from './fault-signs.js'

/** What a fault is concerned with while it lasts. */
export interface FaultTime {
  /** How large it is, in the unit of its row. */
  readonly size: number
  /** When it began. Unit: s. */
  readonly from: number
  /** The probe at whose place it is. Unit: 1. */
  readonly place: number
}

/** One kind of fault. */
export interface FaultRow {
  /** What a right alarm says. */
  readonly sign: FaultSign
  /** What happens, in words. */
  readonly about: string
  /** How long it lasts unless the caller says otherwise; zero to the end. Unit: h. */
  readonly duration: number
  /** How large it is unless the caller says otherwise. Unit: that of `unit`. */
  readonly size: number
  readonly unit: string
  /** Whether it is at every probe. */
  readonly everywhere?: boolean
  /** What happens once, when it begins; again after each `size` hours for restarts. */
  readonly once?: 'restart-whole' | 'restart-partial' | 'restart-empty' | 'restart-old' | 'hand' | 'acknowledge'
  /** Changes the effects while it lasts; `at` are the probes concerned. */
  readonly act: (effects: Effects, time: FaultTime, at: readonly ProbeEffects[]) => void
}
