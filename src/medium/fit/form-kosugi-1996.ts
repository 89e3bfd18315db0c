import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { kosugi1996 } from '../curves/kosugi-1996.js'
import { connected } from './connected.js'
import type { RetentionForm } from './retention-form.js'

/** How `kosugi1996` is fitted. */
export const formKosugi1996: RetentionForm = {
  kind: 'kosugi-1996',
  hasResidual: true,
  conducts: true,
  shape: [
    { name: 'medianSuction', role: 'suction', trials: 12 },
    { name: 'sigma', role: 'exponent', min: 0, max: 20, trials: [0.3, 0.7, 1.5, 3, 6] },
  ],
  minConnection: -1.99,
  make: (saturated, residual, [medianSuction = 0, sigma = 0], connection) =>
    kosugi1996({ residual, saturated, medianSuction: medianSuction as SuctionHead, sigma, ...connected(connection) }),
}
