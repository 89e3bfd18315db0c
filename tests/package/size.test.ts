import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import * as chart from 'porewater/chart'
import { describe, expect, it } from 'vitest'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

/** Bytes after bundling, minifying and gzip of what one import brings into an app. */
async function cost(statement: string): Promise<number> {
  const result = await build({
    stdin: { contents: statement, resolveDir: dist },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    // An import for its own sake is left out with a warning: that is what the last test wants.
    logOverride: { 'ignored-bare-import': 'silent' },
  })
  return gzipSync(result.outputFiles[0]?.contents ?? new Uint8Array(), { level: 9 }).length
}

describe('what an import costs (built package, minified, gzip)', () => {
  it('one conversion: at most 0.5 kB', async () => {
    expect(await cost(`export { waterContentTopp1980 } from './index.js'`)).toBeLessThanOrEqual(500)
    expect(await cost(`export { waterContentTopp1980 } from './dielectric/index.js'`)).toBeLessThanOrEqual(500)
  })
  it('one unit constructor: at most 0.5 kB', async () => {
    expect(await cost(`export { litres } from './index.js'`)).toBeLessThanOrEqual(500)
  })
  it('a whole shot in one call: at most 1 KiB', async () => {
    expect(await cost(`export { sizeShot } from './index.js'`)).toBeLessThanOrEqual(1024)
    expect(await cost(`export { sizeShot } from './irrigation/index.js'`)).toBeLessThanOrEqual(1024)
  })
  it('text of units: at most 6 KiB for reading, 6.85 KiB for all, without a library', async () => {
    expect(await cost(`export { parseQuantity } from './text/index.js'`)).toBeLessThanOrEqual(6144)
    expect(await cost(`export * from './text/index.js'`)).toBeLessThanOrEqual(7014)
  })
  it('a plan of a day: at most 5 kB; all charts: 33.75 kB with d3, all documents: 71 kB with zod', async () => {
    expect(await cost(`export { planDay } from './irrigation/index.js'`)).toBeLessThanOrEqual(5000)
    // Without the units of its examples, which the entry exports as well.
    expect(await cost(`export { ${Object.keys(chart).join()} } from './chart/index.js'`)).toBeLessThanOrEqual(33_750)
    expect(await cost(`export * from './schema/index.js'`)).toBeLessThanOrEqual(71_000)
  })
  it('an import for its own sake: nothing', async () => {
    expect(await cost(`import './index.js'`)).toBeLessThanOrEqual(20)
    expect(await cost(`import './text/index.js'`)).toBeLessThanOrEqual(20)
  })
})
