/**
 * Builds and packs twice from nothing and compares: the same sources give the same package, byte for byte. With `--built` the first of the
 * two is what `npm run build` has left.
 */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'

const { values: asked } = parseArgs({ options: { built: { type: 'boolean', default: false } } })
const root = fileURLToPath(new URL('../../', import.meta.url))
const hashOf = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex')

function build(): void {
  rmSync(`${root}dist`, { recursive: true, force: true })
  execFileSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] })
}

/** The hash of the packed package, and of each file in it. */
function packed(builds: boolean): { readonly whole: string; readonly files: ReadonlyMap<string, string> } {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-packed-'))
  try {
    if (builds) build()
    const words = ['pack', '--json', '--pack-destination', folder]
    const [{ filename, files }] = JSON.parse(execFileSync('npm', words, { cwd: root, encoding: 'utf8' })) as [
      { filename: string; files: { path: string }[] },
    ]
    return {
      whole: hashOf(join(folder, filename)),
      files: new Map(files.map(({ path }) => [path, hashOf(join(root, path))])),
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const [first, second] = [packed(!asked.built), packed(true)]
const paths = [...new Set([...first.files.keys(), ...second.files.keys()])]
const different = paths.filter((path) => first.files.get(path) !== second.files.get(path))
process.stdout.write(`sha256 ${first.whole}\nsha256 ${second.whole}\n${paths.length} files\n`)
if (first.whole !== second.whole) throw new Error(`two builds differ in ${different.join(', ') || 'the archive'}`)
