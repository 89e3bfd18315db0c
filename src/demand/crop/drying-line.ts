import { InputError } from '../../quantity/errors.js'
import type { Share } from '../../quantity/generated/kinds.js'

/** The straight line of a drying store: 1 while the readily available part lasts, 0 where all is gone. */
export function dryingLine(total: number, readily: number, depletion: number, name: string): Share {
  if (readily >= total) throw new InputError(name, 'it is not below the total', 'give less than the total water')
  return Math.min(1, Math.max(0, (total - depletion) / (total - readily))) as Share
}
