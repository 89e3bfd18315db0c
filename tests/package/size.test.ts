import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { describe, expect, it } from 'vitest'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

const topics = [
  'air',
  'control',
  'demand',
  'dielectric',
  'flow',
  'irrigation',
  'medium',
  'probe',
  'quantity',
  'record',
  'uncertainty',
  'water',
]

/** Bytes after bundling, minifying and gzip of what one import brings into an app. */
async function cost(statement: string): Promise<number> {
  const result = await build({
    stdin: { contents: statement, resolveDir: dist },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
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
  it.each(topics)('something small from %s: no table or class that it does not use comes along', async (topic) => {
    const names = Object.keys(await import(`${dist}${topic}/index.js`)).filter((name) => /^[a-z]/.test(name))
    const costs = await Promise.all(
      names.slice(0, 40).map((name) => cost(`export { ${name} } from './${topic}/index.js'`)),
    )
    expect(Math.min(...costs)).toBeLessThanOrEqual(650)
  })
  it('an import for its own sake: nothing', async () => {
    expect(await cost(`import './index.js'`)).toBeLessThanOrEqual(20)
  })
})
