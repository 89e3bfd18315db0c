import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { logLogisticRetention } from '../curves/log-logistic-retention.js'
import type { RetentionForm } from './retention-form.js'

/** How `logLogisticRetention` is fitted. */
export const formLogLogistic: RetentionForm = {
  kind: 'log-logistic',
  hasResidual: true,
  conducts: false,
  shape: [
    { name: 'halfSuction', role: 'suction', trials: 12 },
    { name: 'slope', role: 'exponent', min: 0, max: 30, trials: [0.2, 0.5, 1, 2, 4] },
  ],
  make: (saturated, residual, [halfSuction = 0, slope = 0]) =>
    logLogisticRetention({ residual, saturated, halfSuction: halfSuction as SuctionHead, slope }),
}
