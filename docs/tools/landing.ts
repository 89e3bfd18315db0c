/** Writes docs/site/index.html, the first page: a shot worked out and a week rehearsed, by the package's one-file build. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { oneFileBuild } from './one-file-build.js'
import { onePage } from './page.js'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

export function landingPage(packageBuild: string): Promise<string> {
  return onePage({
    template: here('../landing/page.html'),
    styles: [here('../explorer/page.css'), here('../landing/page.css')],
    script: here('../landing/page.mts'),
    packageBuild,
  })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const target = here('../site/index.html')
  const page = await landingPage(oneFileBuild())
  mkdirSync(dirname(target), { recursive: true })
  writeFileSync(target, page)
  process.stdout.write(`${Math.round(page.length / 1000)} kB: ${target}\n`)
}
