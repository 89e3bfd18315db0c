import type { InverseSuction } from '../../quantity/generated/kinds.js'
import { milksFontenoLarson1989 } from '../curves/milks-fonteno-larson-1989.js'
import type { RetentionForm } from './retention-form.js'

/** How `milksFontenoLarson1989` is fitted. */
export const formMilksFontenoLarson1989: RetentionForm = {
  kind: 'milks-fonteno-larson-1989',
  hasResidual: true,
  conducts: false,
  shape: [
    { name: 'alpha', role: 'inverse-suction', trials: 8 },
    { name: 'n', role: 'exponent', min: 0, max: 30, trials: [0.6, 1.2, 2.5, 5] },
    { name: 'm', role: 'exponent', min: 0, max: 30, trials: [0.1, 0.4, 1, 3] },
  ],
  make: (saturated, residual, [alpha = 0, n = 0, m = 0]) =>
    milksFontenoLarson1989({ residual, saturated, alpha: alpha as InverseSuction, n, m }),
}
