/** Builds and packs twice from nothing and compares: the same sources give the same package, byte for byte. */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../../', import.meta.url))
const hashOf = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex')

/** The hash of the packed package, and of each file in it. */
function built(): { readonly whole: string; readonly files: ReadonlyMap<string, string> } {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-packed-'))
  try {
    rmSync(`${root}dist`, { recursive: true, force: true })
    execFileSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] })
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

const [first, second] = [built(), built()]
const paths = [...new Set([...first.files.keys(), ...second.files.keys()])]
const different = paths.filter((path) => first.files.get(path) !== second.files.get(path))
process.stdout.write(`sha256 ${first.whole}\nsha256 ${second.whole}\n${paths.length} files\n`)
if (first.whole !== second.whole) throw new Error(`two builds differ in ${different.join(', ') || 'the archive'}`)
