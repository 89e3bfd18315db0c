import type { WaterContent } from '../../quantity/generated/kinds.js'
import type { RetentionModel } from '../curves/retention-model.js'

/**
 * How a retention model is fitted: which numbers shape its curve and where a search for them begins. Each model has its own,
 * so that a program which fits one model carries no other.
 */
export interface RetentionForm {
  /** The model's own name. */
  readonly kind: string
  /** Whether the curve ends at a residual water content that is fitted. */
  readonly hasResidual: boolean
  /** The numbers that shape the curve between its limits. */
  readonly shape: readonly ShapeParameter[]
  /** Whether the equation has a conductivity. */
  readonly conducts: boolean
  /** The exponent of pore connection below which the search must not go; absent where the equation has no such exponent. Unit: 1. Range: any. */
  readonly minConnection?: number
  /** The model with these numbers; `connection` is left out when no conductivity was measured. */
  readonly make: (
    saturated: WaterContent,
    residual: WaterContent,
    shape: readonly number[],
    connection?: number,
  ) => RetentionModel
  /** Whether a start is worth a try, for models in which two numbers can change places. */
  readonly admits?: (shape: readonly number[]) => boolean
}

/** One number that shapes a retention curve. */
export type ShapeParameter =
  /** A suction in cm or its inverse, sought on a logarithmic scale across the measured suctions. */
  | { readonly name: string; readonly role: 'suction' | 'inverse-suction'; readonly trials: number }
  /** An exponent above `min`, sought on the logarithmic scale of its excess, up to `max`. */
  | {
      readonly name: string
      readonly role: 'exponent'
      readonly min: number
      readonly max: number
      readonly trials: readonly number[]
    }
  /** A share from 0 to 1. */
  | { readonly name: string; readonly role: 'share'; readonly trials: readonly number[] }
