import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { brooksCorey1964 } from '../curves/brooks-corey-1964.js'
import { connected } from './connected.js'
import type { RetentionForm } from './retention-form.js'

/** How `brooksCorey1964` is fitted. */
export const formBrooksCorey1964: RetentionForm = {
  kind: 'brooks-corey-1964',
  hasResidual: true,
  conducts: true,
  shape: [
    { name: 'airEntry', role: 'suction', trials: 16 },
    { name: 'lambda', role: 'exponent', min: 0, max: 30, trials: [0.08, 0.2, 0.5, 1, 2, 5] },
  ],
  minConnection: -1.99,
  make: (saturated, residual, [airEntry = 0, lambda = 0], connection) =>
    brooksCorey1964({ residual, saturated, airEntry: airEntry as SuctionHead, lambda, ...connected(connection) }),
}
