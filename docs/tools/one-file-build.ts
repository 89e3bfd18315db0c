import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './house/source-files.js'

/** The package's one-file build, for a page to hold. One that is older than a source is refused: what its page shows could be nobody's code. */
export function oneFileBuild(folder = root): string {
  const file = join(folder, 'dist/porewater.iife.js')
  const made = statSync(file, { throwIfNoEntry: false })?.mtimeMs
  if (made === undefined) throw new Error('dist/porewater.iife.js is missing: run `npm run build` first')
  const newer = readdirSync(join(folder, 'src'), { recursive: true, encoding: 'utf8' }).find(
    (path) => path.endsWith('.ts') && statSync(join(folder, 'src', path)).mtimeMs > made,
  )
  if (newer !== undefined)
    throw new Error(`dist/porewater.iife.js is older than src/${newer}: run \`npm run build\` first`)
  return readFileSync(file, 'utf8')
}
