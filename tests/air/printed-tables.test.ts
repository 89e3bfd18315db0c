import { type LightSourceName, lightSources } from 'porewater'
import { describe } from 'vitest'
import { checkEveryCell } from '../support/printed-table.js'

describe('tables of light', () => {
  checkEveryCell('lightSourcesThimijan1983', 6, (name: LightSourceName) => {
    const { photonYield, luxPerMicromole } = lightSources[name]
    return [photonYield, luxPerMicromole]
  })
})
