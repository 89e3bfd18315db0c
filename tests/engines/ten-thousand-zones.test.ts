import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { attempt, fraction, litres, shotVolume, waterContentChange } from 'porewater'
import { getQuickJS } from 'quickjs-emscripten'
import initSqlJs from 'sql.js'
import { describe, expect, it } from 'vitest'
import { inventedReadings, runPartitioned, step } from '../../docs/examples/ten-thousand-zones.js'

describe('one function for many zones', () => {
  it('decides the same however the zones are spread over partitions', () => {
    const readings = inventedReadings(200, 48)
    const alone = runPartitioned(readings, 1)
    for (const partitions of [2, 7, 64]) {
      const spread = runPartitioned(readings, partitions)
      expect(spread.decisions).toEqual(alone.decisions)
      expect(Object.fromEntries(spread.rows)).toEqual(Object.fromEntries(alone.rows))
    }
    expect(new Set(alone.decisions.map((decision) => decision.reason)).size).toBeGreaterThan(3)
  })
  it('decides for each zone as if it were alone, whatever the others send in between', () => {
    const readings = inventedReadings(50, 48)
    const together = runPartitioned(readings, 4).decisions.filter((decision) => decision.zone === 'zone-7')
    const alone = runPartitioned(
      readings.filter((reading) => reading.zone === 'zone-7'),
      1,
    ).decisions
    expect(together).toEqual(alone)
    expect(together.at(-1)).toMatchObject({ open: false, reason: 'no-reading' })
  })
  it('runs 10,000 zones with one row of about a kilobyte each', () => {
    const { rows } = runPartitioned(inventedReadings(10_000, 4), 16)
    expect(rows.size).toBe(10_000)
    expect(Math.max(...[...rows.values()].map((row) => row.length))).toBeLessThan(1500)
  })
  it('leaves the row it was given as it was', () => {
    const first = step(undefined, { zone: 'a', now: 0, waterContent: 0.5 }).row
    const kept = String(first)
    step(first, { zone: 'a', now: 600, waterContent: 0.51 })
    expect(first).toBe(kept)
  })
})

describe('as a scalar function of an SQL engine (SQLite as WebAssembly)', () => {
  it('sizes a shot in each row and marks the rows that it refuses', async () => {
    const SQL = await initSqlJs()
    const db = new SQL.Database()
    db.run(`create table zone (name text, substrate_l real, rise real, drain real);
      insert into zone values ('a', 11.25, 0.03, 0.15), ('b', 14, 0.02, 0.25), ('bad', -1, 0.03, 0.15)`)
    db.create_function('shot_litres', (substrate: number, rise: number, drain: number) => {
      const shot = attempt(() =>
        shotVolume({
          substrateVolume: litres(substrate),
          rise: waterContentChange(rise),
          drainFraction: fraction(drain),
        }),
      )
      return shot.ok ? shot.value : null
    })
    const [result] = db.exec('select name, round(shot_litres(substrate_l, rise, drain), 5) from zone order by name')
    expect(result?.values).toEqual([
      ['a', 0.39706],
      ['b', 0.37333],
      ['bad', null],
    ])
    db.close()
  })
})

describe('as a function in an engine that embeds JavaScript without modules (QuickJS)', () => {
  it('gives what Node gives', async () => {
    const source = readFileSync(fileURLToPath(new URL('../../dist/porewater.iife.js', import.meta.url)), 'utf8')
    const QuickJS = await getQuickJS()
    const vm = QuickJS.newContext()
    const run = (code: string): string => {
      const result = vm.evalCode(code)
      if (result.error) throw new Error(JSON.stringify(vm.dump(result.error)))
      const value = vm.dump(result.value)
      result.value.dispose()
      return value as string
    }
    run(source)
    const answer = run(`JSON.stringify([0.15, 0.25, 1].map((drain) => {
      const { attempt, shotVolume, litres, waterContentChange, fraction } = porewater
      return attempt(() => shotVolume({ substrateVolume: litres(11.25), rise: waterContentChange(0.03), drainFraction: fraction(drain) }))
    }).map((shot) => shot.ok ? shot.value : shot.error.message))`)
    const here = [0.15, 0.25].map(
      (drain) =>
        shotVolume({
          substrateVolume: litres(11.25),
          rise: waterContentChange(0.03),
          drainFraction: fraction(drain),
        }) as number,
    )
    expect(JSON.parse(answer)).toEqual([...here, expect.stringMatching(/^drainFraction is 1, outside \[0, 1\)/)])
    vm.dispose()
  })
})
