import {
  inCentimetresPerDay,
  inCentimetresPerMinute,
  inPercent,
  substratesPorometer2012,
  tableRow,
  texturesCarselParrish1988,
  texturesClappHornberger1978,
  texturesRawls1982,
  texturesRawls1983,
  topsoilsWosten2001,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkEveryCell } from '../support/printed-table.js'

describe('tables of soils and growing media', () => {
  checkEveryCell('clappHornberger1978', 11, (texture) => {
    const row = tableRow(texturesClappHornberger1978, texture)
    return [
      row.b,
      row.airEntry,
      row.wettingFrontSuction,
      row.saturated,
      inCentimetresPerMinute(row.saturatedConductivity),
    ]
  })
  checkEveryCell('carselParrish1988', 12, (texture) => {
    const row = tableRow(texturesCarselParrish1988, texture)
    return [row.residual, row.saturated, row.alpha, row.n, inCentimetresPerDay(row.saturatedConductivity)]
  })
  checkEveryCell('rawls1982', 11, (texture) => {
    const row = tableRow(texturesRawls1982, texture)
    return [row.saturated, row.residual, row.airEntry, row.lambda, row.saturatedConductivity]
  })
  checkEveryCell('rawls1983', 11, (texture) => {
    const row = tableRow(texturesRawls1983, texture)
    return [row.porosity, row.effectivePorosity, row.wettingFrontSuction, row.conductivity]
  })
  checkEveryCell('wosten2001', 13, (unit: string) => {
    const [, row] = Object.entries(topsoilsWosten2001).find(([name]) => name.startsWith(`${unit}-`))!
    const conductivity = inCentimetresPerDay(row.saturatedConductivity)
    return [row.residual, row.saturated, conductivity, row.alpha, row.poreConnection ?? null, row.n]
  })
  checkEveryCell('porometer2012', 4, (material: string) => {
    const row = tableRow(substratesPorometer2012, material.replace(/[^a-z0-9]+/g, '-'))
    return [inPercent(row.airSpace), 100 * row.containerCapacity, inPercent(row.totalPorosity), row.bulkDensity]
  })
  it('have as many rows as their prints', () => {
    const tables = [texturesClappHornberger1978, texturesCarselParrish1988, texturesRawls1982, texturesRawls1983]
    expect([...tables, topsoilsWosten2001, substratesPorometer2012].map((table) => Object.keys(table).length)).toEqual([
      11, 12, 11, 11, 13, 4,
    ])
  })
})
