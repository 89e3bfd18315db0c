import { fileURLToPath } from 'node:url'
import { createContext, runInContext } from 'node:vm'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { expect, it } from 'vitest'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

it('porewater/catalogue loads in a page: nothing of Node, under 265 kB gzip', async () => {
  const { outputFiles } = await build({
    stdin: { contents: `export * from './catalogue/index.js'`, resolveDir: dist },
    bundle: true,
    minify: true,
    platform: 'browser',
    format: 'iife',
    globalName: 'page',
    write: false,
  })
  const code = outputFiles[0]?.contents ?? new Uint8Array()
  expect(gzipSync(code, { level: 9 }).length).toBeLessThanOrEqual(265_000)
  // A context without process, require, Buffer or a network, as strict as a page can be.
  const page = createContext({})
  runInContext(new TextDecoder().decode(code), page)
  expect(runInContext(`page.findEntries({ words: 'shot volume' })[0].name`, page)).toBe('shotVolume')
  expect(runInContext('page.bibliography().works.length', page)).toBeGreaterThan(50)
})
