import { motorStartLimitsNema, saltTolerance } from 'porewater'
import { describe } from 'vitest'
import { checkEveryCell } from '../support/printed-table.js'

describe('tables of motors and crops', () => {
  checkEveryCell('motorStartsNema', 20, (horsepower) =>
    ([2, 4, 6] as const).flatMap((poles) => {
      const { maxStarts, maxStartsTimesInertia, minRest } = motorStartLimitsNema({ horsepower, poles })
      return [maxStarts, maxStartsTimesInertia, minRest]
    }),
  )
  checkEveryCell('saltToleranceMaas1990', 23, (crop) => {
    const { thresholdEC, lossPerDecisiemens } = saltTolerance(crop)
    return [thresholdEC, lossPerDecisiemens]
  })
})
