import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  celsius,
  dailyReferenceETFao56,
  dayOfYear,
  latitude,
  megajoulesPerSquareMetreDay,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
} from 'porewater'
import { seriesFromCsv } from 'porewater/schema'
import { describe, expect, it } from 'vitest'

const file = (name: string) => readFileSync(fileURLToPath(new URL(`../fixtures/open-data/${name}`, import.meta.url)))
const column = (name: string) => ({ column: name })
const clock = [{ from: 0, ahead: 0 }]

describe('a year of Dublin Airport (Met Éireann, CC BY 4.0; see the attribution beside it)', () => {
  const { time, columns, rows, refused, step } = seriesFromCsv(file('dublin_airport_2016.csv'), {
    time: 'date',
    clock,
    columns: {
      low: column('tmin_C'),
      high: column('tmax_C'),
      wind: column('wind_speed_10m_m_s'),
      solar: column('solar_radiation_MJ_m2_day'),
      published: column('published_pe_penman_monteith_mm'),
    },
    maxCharacters: 1_000_000,
  })
  it('is read whole', () => expect([rows, refused, step, time.length]).toEqual([366, 0, 86400, 366]))
  it('gives the potential evapotranspiration that the provider publishes, as near as without humidity it can', () => {
    let [error, bias, n] = [0, 0, 0]
    for (let i = 0; i < time.length; i++) {
      const [low, high, wind, solar, published] = ['low', 'high', 'wind', 'solar', 'published'].map(
        (name) => columns[name]![i]!,
      )
      if ([low, high, wind, solar, published].some((x) => Number.isNaN(x))) continue
      const et = dailyReferenceETFao56({
        latitude: latitude(53.423),
        elevation: metresAboveSeaLevel(71),
        day: dayOfYear(i + 1),
        maxTemperature: celsius(high as number),
        minTemperature: celsius(low as number),
        solar: megajoulesPerSquareMetreDay(solar as number),
        wind: { speed: metresPerSecond(wind as number), height: metres(10) },
      }).referenceET
      error += Math.abs(et - (published as number))
      bias += et - (published as number)
      n++
    }
    expect(n).toBeGreaterThan(360)
    expect(error / n).toBeLessThan(0.45)
    expect(Math.abs(bias / n)).toBeLessThan(0.3)
  })
})

describe('a year of Manhattan, Kansas (U.S. Climate Reference Network)', () => {
  it('is read with its gaps as gaps, in fractions', () => {
    const names = ['water_content_5cm_m3_m3', 'water_content_10cm_m3_m3', 'water_content_20cm_m3_m3']
    const table = seriesFromCsv(file('manhattan_kansas_2014.csv'), {
      time: 'date',
      clock,
      columns: Object.fromEntries(names.map((name) => [name, { column: name, kind: 'WaterContent' as const }])),
      maxCharacters: 1_000_000,
    })
    expect(table).toMatchObject({ rows: 365, refused: 0, step: 86400, order: 'rising' })
    const text = new TextDecoder().decode(file('manhattan_kansas_2014.csv')).trim().split('\n')
    const head = text[0]!.split(',')
    for (const name of names) {
      const cells = text.slice(1).map((line) => line.split(',')[head.indexOf(name)]!)
      expect(Array.from(table.columns[name]!)).toEqual(cells.map((cell) => (cell === '' ? Number.NaN : Number(cell))))
    }
  })
})
