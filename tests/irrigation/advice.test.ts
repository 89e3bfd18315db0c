import {
  adviceInFull,
  fraction,
  joulesPerSquareCentimetre,
  lightShot,
  litres,
  millilitres,
  minutes,
  percent,
  planRecovery,
  plantsPerSquareMetre,
  pumpSchedule,
  shotSeries,
  soakCycles,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** Every function that plans or sizes carries the caution, and one function says it in full. */
const results = {
  shotSeries: shotSeries({
    waterContent: waterContent(0.4),
    target: waterContent(0.5),
    substrateVolume: litres(4),
    shot: millilitres(150),
    drainFraction: percent(10),
  }),
  lightShot: lightShot({
    threshold: joulesPerSquareCentimetre(100),
    uptakePerLight: 2,
    plantDensity: plantsPerSquareMetre(2.5),
    drainFraction: percent(25),
  }),
  soakCycles: soakCycles({ runTime: minutes(9), maxOn: minutes(3), soak: minutes(10) }),
  pumpSchedule: pumpSchedule({ zones: 3, runTime: minutes(5), rest: minutes(1), startsPerHour: 6, keepRunning: false }),
  planRecovery: planRecovery({
    waterContent: waterContent(0.334),
    fullPoint: waterContent(0.6),
    substrateVolume: litres(3.75),
    drainFraction: fraction(0.1),
    maxPerShot: millilitres(120),
    minPeriod: minutes(5),
    maxTotal: litres(3),
    clockChecked: true,
  }),
}

describe('the caution of a plan', () => {
  it.each(Object.entries(results))('stands in the result of %s, and is explained', (_, result) => {
    const told = adviceInFull(result)
    expect(told.map(({ code }) => code)).toEqual([
      'own-limits',
      'electricity-near-water',
      'acids-and-fertiliser',
      'drain-water',
    ])
    const words = told.map(({ message }) => message).join(' ')
    for (const word of ['licensed', 'local code', 'local law', 'crops']) expect(words).toContain(word)
  })
  it('is asked of results only', () => {
    for (const other of [undefined, null, {}, { caution: 'none' }])
      expect(() => adviceInFull(other as never)).toThrow(expect.objectContaining({ code: 'bad-input' }))
  })
})
