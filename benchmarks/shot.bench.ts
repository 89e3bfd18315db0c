/** What one call for a whole shot costs against the bare formula, and how many bytes it brings into an app. */
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import {
  type DrainFraction,
  fraction,
  litres,
  litresPerHour,
  minutes,
  percent,
  type SizeShotInput,
  seconds,
  sizeShot,
  waterContentChange,
} from 'porewater'
import { compare, report } from './timing.js'

/** Above that many times the bare formula, in a process of its own, the guards have become slower. */
const MOST = 3.5
const TURNS = 5

interface BareShot {
  readonly substrate: number
  readonly rise: number
  readonly drain: number
  readonly q: number
  readonly n: number
  readonly fill: number
}
/** The formula alone, with the same numbers in and out and nothing checked. */
const bare = ({ substrate, rise, drain, q, n, fill }: BareShot) => {
  const volume = (rise * substrate) / (1 - drain)
  return { volume, perEmitter: volume / n, runTime: (volume / (q * n)) * 3600 + fill, drained: drain * volume }
}

export async function run(quick: boolean, alone: boolean): Promise<void> {
  const calls = quick ? 200_000 : 2_000_000
  const usual: SizeShotInput = {
    substrateVolume: litres(11.25),
    rise: waterContentChange(0.03),
    drainFraction: percent<DrainFraction>(15),
    emitterFlow: litresPerHour(2.1),
    emitters: 3,
    lineFill: seconds(12),
    minRunTime: minutes(1),
    maxRunTime: minutes(15),
  }
  const shots = Array.from({ length: 1024 }, (_, i) => ({
    ...usual,
    rise: waterContentChange(0.03 + (i % 32) / 2000),
    drainFraction: fraction<DrainFraction>(0.1 + (i % 7) / 100),
  }))
  const bares = shots.map((shot) => ({
    substrate: shot.substrateVolume as number,
    rise: shot.rise as number,
    drain: shot.drainFraction as number,
    q: shot.emitterFlow as number,
    n: shot.emitters,
    fill: 12,
  }))
  const turn = () =>
    compare([
      { name: 'bare formula', run: () => total(calls, (i) => bare(bares[i & 1023]!)) },
      { name: 'sizeShot', run: () => total(calls, (i) => sizeShot(shots[i & 1023]!)) },
    ])
  // A machine that does other things troubles one turn, not all; what has become slower is slow in each.
  const ratios: number[] = []
  for (let i = 0; i < (alone ? TURNS : 1) && !ratios.some((ratio) => ratio <= MOST); i++) {
    const timings = turn()
    report(`A whole shot, ${calls} calls`, timings)
    ratios.push(timings[1]?.ratio ?? Number.NaN)
  }
  if (alone && !ratios.some((ratio) => ratio <= MOST)) {
    const all = ratios.map((ratio) => ratio.toFixed(2)).join(', ')
    console.error(`sizeShot took ${all} times the bare formula, in no turn at most ${MOST} times`)
    process.exitCode = 1
  }
  for (const name of ['sizeShot', 'shotVolume', 'runTime'])
    process.stdout.write(`  ${name} alone: ${await bytes(name)} bytes minified and gzipped\n`)
  process.stdout.write('\n')
}

function total(calls: number, shot: (i: number) => { readonly volume: number; readonly runTime: number }): number {
  let sum = 0
  for (let i = 0; i < calls; i++) {
    const { volume, runTime } = shot(i)
    sum += volume + runTime
  }
  return sum
}

async function bytes(name: string): Promise<number> {
  const result = await build({
    stdin: {
      contents: `export { ${name} } from '../src/irrigation/index.ts'`,
      resolveDir: fileURLToPath(new URL('.', import.meta.url)),
      loader: 'ts',
    },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
  })
  return gzipSync(result.outputFiles[0]?.contents ?? new Uint8Array(), { level: 9 }).length
}
