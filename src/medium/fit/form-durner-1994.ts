import type { InverseSuction, Share } from '../../quantity/generated/kinds.js'
import { durner1994 } from '../curves/durner-1994.js'
import { connected } from './connected.js'
import type { RetentionForm } from './retention-form.js'

/** How `durner1994` is fitted: the coarse family is the one with the larger alpha. */
export const formDurner1994: RetentionForm = {
  kind: 'durner-1994',
  hasResidual: true,
  conducts: true,
  shape: [
    { name: 'coarseShare', role: 'share', trials: [0.25, 0.5, 0.75] },
    { name: 'coarseAlpha', role: 'inverse-suction', trials: 5 },
    { name: 'coarseN', role: 'exponent', min: 1, max: 30, trials: [1.3, 3] },
    { name: 'fineAlpha', role: 'inverse-suction', trials: 5 },
    { name: 'fineN', role: 'exponent', min: 1, max: 30, trials: [1.2, 2] },
  ],
  minConnection: -1.99,
  make: (saturated, residual, [share = 0, coarseAlpha = 0, coarseN = 0, fineAlpha = 0, fineN = 0], connection) =>
    durner1994({
      residual,
      saturated,
      coarseShare: share as Share,
      coarse: { alpha: coarseAlpha as InverseSuction, n: coarseN },
      fine: { alpha: fineAlpha as InverseSuction, n: fineN },
      ...connected(connection),
    }),
  admits: ([, coarseAlpha = 0, , fineAlpha = 0]) => coarseAlpha > fineAlpha,
}
