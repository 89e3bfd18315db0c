import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { fraction, litres, shotVolume, waterContentChange } from 'porewater'
import { getQuickJS } from 'quickjs-emscripten'
import { describe, expect, it } from 'vitest'
import { hasNatsServer } from '../../docs/examples/ten-thousand-zones/cluster.js'
import { inventedReadings } from '../../docs/examples/ten-thousand-zones/invented-readings.js'
import { runInOneProcess } from '../../docs/examples/ten-thousand-zones/one-process.js'
import { sumInBareLoop, sumInDatabase, withReadings } from '../../docs/examples/ten-thousand-zones/past.js'
import { differencesFromOneProcess } from '../../docs/examples/ten-thousand-zones/same.js'
import { runStream } from '../../docs/examples/ten-thousand-zones/stream.js'
import { upTo } from '../../docs/examples/ten-thousand-zones/up-to.js'
import { step } from '../../docs/examples/ten-thousand-zones/zone-step.js'

describe('one function for many zones', () => {
  it('decides for each zone as if it were alone, whatever the others send in between', () => {
    const readings = inventedReadings(50, 48)
    const together = runInOneProcess(readings).decisions.filter((decision) => decision.zone === 'zone-7')
    const alone = runInOneProcess(readings.filter((reading) => reading.zone === 'zone-7')).decisions
    expect(together).toEqual(alone)
    expect(together.at(-1)).toMatchObject({ open: false, reason: 'no-reading' })
    expect(new Set(runInOneProcess(readings).decisions.map(({ reason }) => reason)).size).toBeGreaterThan(3)
  })
  it('keeps one row of less than three kilobytes for each zone', () => {
    const { rows } = runInOneProcess(inventedReadings(200, 48))
    expect(rows.size).toBe(200)
    expect(Math.max(...[...rows.values()].map((row) => row.length))).toBeLessThan(3000)
  })
  it('leaves the row it was given as it was', () => {
    const first = step(undefined, { zone: 'a', ordinal: 1, now: 0, waterContent: 0.5 }).row
    const kept = String(first)
    step(first, { zone: 'a', ordinal: 2, now: 600, waterContent: 0.51 })
    expect(first).toBe(kept)
  })
})

describe('a reader of a stream', () => {
  /** A server that holds the messages up to one of them. */
  const server = (held: number) => async (seq: number) =>
    (async function* () {
      for (let at = seq; at <= held; at++) yield { seq: at }
    })()
  const whole = async (messages: AsyncIterable<{ seq: number }>) => {
    const read: number[] = []
    for await (const { seq } of messages) read.push(seq)
    return read
  }
  it('goes on at another server where one came back short of messages', async () => {
    const asked: number[] = []
    const servers = [server(6), server(6), server(9)]
    const read = await whole(upTo(9, 1, async (next) => servers[asked.push(next) - 1]!(next)))
    expect(read).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
    expect(asked).toEqual([1, 7, 7])
  })
  it('says which message no server has', async () => {
    await expect(whole(upTo(9, 1, server(6), 5))).rejects.toThrow('message 7 of 9 is on no server')
  })
})

describe.skipIf(!hasNatsServer())('over NATS JetStream (skipped where nats-server is not installed)', () => {
  it('comes to what one process comes to, to the bit, while a server and half of the workers die and come back', async () => {
    const readings = inventedReadings(60, 48)
    const outcome = await runStream({ readings, workers: 4, disturbed: true })
    const alone = runInOneProcess(readings)
    expect(differencesFromOneProcess(outcome, alone)).toEqual([])
    // The comparison itself sees a decision that is missing, one that is wrong and a row of the past.
    const [name] = outcome.decisions.keys()
    outcome.decisions.delete(name as string)
    expect(differencesFromOneProcess(outcome, alone)).toHaveLength(2)
    outcome.rows.set('zone-1', '{}')
    expect(differencesFromOneProcess(outcome, alone)).toHaveLength(3)
  }, 180_000)
})

describe('as a scalar function of DuckDB over a Parquet file', () => {
  it('sums by zone and day what a bare loop sums, and loses no row', async () => {
    const rows = 200_000
    await withReadings(rows, async (connection, file) => {
      const { days, counts } = await sumInDatabase(connection, file)
      const bare = await sumInBareLoop(connection, file)
      expect(days.map(({ zone, day, rows, used }) => [zone, day, rows, used])).toEqual(
        bare.days.map(({ zone, day, rows, used }) => [zone, day, rows, used]),
      )
      days.forEach(({ sum }, i) => {
        expect(sum).toBeCloseTo(bare.days[i]?.sum as number, 9)
      })
      // By the rule that wrote the file: of 10,000 readings ten are missing, one is -999, one 65535, and one reads nearly dry.
      expect(Object.fromEntries(counts)).toEqual({
        used: rows - 200 - 60,
        missing: 200,
        'apparent permittivity below its range': 20,
        'apparent permittivity above its range': 20,
        unbelievable: 20,
      })
    })
  }, 60_000)
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
