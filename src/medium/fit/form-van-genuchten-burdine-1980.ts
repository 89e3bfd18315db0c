import type { InverseSuction } from '../../quantity/generated/kinds.js'
import { vanGenuchtenBurdine1980 } from '../curves/van-genuchten-burdine-1980.js'
import { connected } from './connected.js'
import type { RetentionForm } from './retention-form.js'

/** How `vanGenuchtenBurdine1980` is fitted. */
export const formVanGenuchtenBurdine1980: RetentionForm = {
  kind: 'van-genuchten-burdine-1980',
  hasResidual: true,
  conducts: true,
  shape: [
    { name: 'alpha', role: 'inverse-suction', trials: 10 },
    { name: 'n', role: 'exponent', min: 2, max: 30, trials: [2.08, 2.2, 2.5, 3, 4, 7] },
  ],
  minConnection: -0.99,
  make: (saturated, residual, [alpha = 0, n = 0], connection) =>
    vanGenuchtenBurdine1980({ residual, saturated, alpha: alpha as InverseSuction, n, ...connected(connection) }),
}
