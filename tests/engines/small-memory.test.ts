import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import vm from 'node:vm'
import { newQuickJSWASMModule, newVariant, type QuickJSContext, RELEASE_SYNC } from 'quickjs-emscripten'
import { describe, expect, it } from 'vitest'
import { JOBS } from '../../docs/tools/engine-jobs.js'

/** The whole core in one file, as a controller with a small engine and little memory would load it. */
const SOURCE = readFileSync(fileURLToPath(new URL('../../dist/porewater.iife.js', import.meta.url)), 'utf8')
const MEGABYTES = 8
const MEBIBYTE = 1024 * 1024
/** What this build of the engine asks for at the least, its stack and tables in it. */
const BUILT_FOR = 16 * MEBIBYTE
const PAGE = 65_536

/** An engine with so many bytes of heap for the library and all it makes: a ballast takes away the rest. */
async function engineOf(bytes: number): Promise<QuickJSContext> {
  // WebAssembly of the host; the compiler's library of this project has no types of it.
  const { WebAssembly } = globalThis as unknown as {
    WebAssembly: { Memory: new (size: { initial: number; maximum: number }) => { buffer: ArrayBuffer } }
  }
  const wasmMemory = new WebAssembly.Memory({ initial: BUILT_FOR / PAGE, maximum: BUILT_FOR / PAGE })
  const engine = (await newQuickJSWASMModule(newVariant(RELEASE_SYNC, { wasmMemory } as never))).newContext()
  const ballast = evaluate(
    engine,
    `(() => {
      let fits = 0
      for (let step = ${BUILT_FOR}; step >= 4096; step /= 2) {
        try { new ArrayBuffer(fits + step); fits += step } catch {}
      }
      globalThis.ballast = new ArrayBuffer(fits - ${bytes})
      return ballast.byteLength
    })()`,
  )
  expect(ballast).toBeGreaterThan(0)
  return engine
}

function evaluate(engine: QuickJSContext, code: string): unknown {
  const result = engine.evalCode(code)
  if (result.error) {
    const told = JSON.stringify(engine.dump(result.error))
    result.error.dispose()
    throw new Error(told)
  }
  const value = engine.dump(result.value)
  result.value.dispose()
  return value
}

describe(`in QuickJS with ${MEGABYTES} MB`, () => {
  it.each(Object.keys(JOBS) as (keyof typeof JOBS)[])(
    'the whole core gives what Node gives: %s',
    async (job) => {
      const here = vm.createContext({})
      vm.runInContext(SOURCE, here)
      const expected = vm.runInContext(JOBS[job], here) as string
      expect(expected.length).toBeGreaterThan(100)
      const engine = await engineOf(MEGABYTES * MEBIBYTE)
      evaluate(engine, `${SOURCE}\n;0`)
      expect(evaluate(engine, JOBS[job])).toBe(expected)
      engine.dispose()
    },
    120_000,
  )
  it('has no more than that: one megabyte beyond is refused', async () => {
    const engine = await engineOf(MEGABYTES * MEBIBYTE)
    expect(() => evaluate(engine, `new ArrayBuffer(${(MEGABYTES + 1) * MEBIBYTE}); 0`)).toThrow(/memory/)
    engine.dispose()
  }, 60_000)
})
