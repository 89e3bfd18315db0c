import { dryLimitsTaylorAshcroft1972, tableRow } from 'porewater'
import { describe } from 'vitest'
import { checkEveryCell } from '../support/printed-table.js'

describe('tables of uptake', () => {
  checkEveryCell('dryLimitsTaylorAshcroft1972', 10, (crop) => {
    const { h3HighDemand, h3LowDemand } = tableRow(dryLimitsTaylorAshcroft1972, crop)
    return [h3HighDemand, h3LowDemand]
  })
})
