import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { campbell1974 } from '../curves/campbell-1974.js'
import type { RetentionForm } from './retention-form.js'

/** How `campbell1974` is fitted. */
export const formCampbell1974: RetentionForm = {
  kind: 'campbell-1974',
  hasResidual: false,
  conducts: true,
  shape: [
    { name: 'airEntry', role: 'suction', trials: 16 },
    { name: 'b', role: 'exponent', min: 0, max: 60, trials: [0.3, 1, 2, 4, 8, 16] },
  ],
  make: (saturated, _, [airEntry = 0, b = 0]) => campbell1974({ saturated, airEntry: airEntry as SuctionHead, b }),
}
