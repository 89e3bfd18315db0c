import type { InverseSuction } from '../../quantity/generated/kinds.js'
import { vanGenuchten1980 } from '../curves/van-genuchten-1980.js'
import { connected } from './connected.js'
import type { RetentionForm } from './retention-form.js'

/** How `vanGenuchten1980` is fitted. */
export const formVanGenuchten1980: RetentionForm = {
  kind: 'van-genuchten-1980',
  hasResidual: true,
  conducts: true,
  shape: [
    { name: 'alpha', role: 'inverse-suction', trials: 10 },
    { name: 'n', role: 'exponent', min: 1, max: 30, trials: [1.08, 1.2, 1.5, 2, 3, 6] },
  ],
  minConnection: -1.99,
  make: (saturated, residual, [alpha = 0, n = 0], connection) =>
    vanGenuchten1980({ residual, saturated, alpha: alpha as InverseSuction, n, ...connected(connection) }),
}
