import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { fredlundXing1994 } from '../curves/fredlund-xing-1994.js'
import type { RetentionForm } from './retention-form.js'

/** The residual suction of 1500 kPa in cm: its own influence is too small to be fitted. */
const RESIDUAL_SUCTION = 15295.743194668923 as SuctionHead

/** How `fredlundXing1994` is fitted, with a residual suction of 1500 kPa. */
export const formFredlundXing1994: RetentionForm = {
  kind: 'fredlund-xing-1994',
  hasResidual: false,
  conducts: false,
  shape: [
    { name: 'scaleSuction', role: 'suction', trials: 8 },
    { name: 'n', role: 'exponent', min: 0, max: 30, trials: [0.6, 1.2, 2.5, 5] },
    { name: 'm', role: 'exponent', min: 0, max: 30, trials: [0.3, 0.7, 1.5, 3] },
  ],
  make: (saturated, _, [scaleSuction = 0, n = 0, m = 0]) =>
    fredlundXing1994({
      saturated,
      scaleSuction: scaleSuction as SuctionHead,
      n,
      m,
      residualSuction: RESIDUAL_SUCTION,
    }),
}
