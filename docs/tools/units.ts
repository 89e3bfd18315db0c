/**
 * Writes what the tables of units give, and then all that is written from their constructors: the catalogue, the report of the public face
 * and the page of sources. `npm run units`. With `--check` it writes nothing and fails where a file of the tables differs; the others have
 * checks of their own.
 */
import { execFile } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { FAMILIES } from '../../src/quantity/kinds.table.js'
import { UNITS } from '../../src/quantity/units.table.js'
import { GENERATED, generateUnits } from './units/generate.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const wanted = generateUnits(FAMILIES, UNITS)
const present = GENERATED.flatMap((folder) =>
  existsSync(join(root, folder)) ? readdirSync(join(root, folder)).map((file) => `${folder}/${file}`) : [],
)
const stale = present.filter((path) => !wanted.has(path))
const changed = [...wanted].filter(
  ([path, code]) => !existsSync(join(root, path)) || readFileSync(join(root, path), 'utf8') !== code,
)
if (process.argv.includes('--check')) {
  for (const path of [...stale, ...changed.map(([path]) => path)]) console.error(`${path} differs from the tables`)
  if (stale.length + changed.length > 0) process.exitCode = 1
} else {
  for (const path of stale) rmSync(join(root, path))
  for (const [path, code] of changed) {
    mkdirSync(dirname(join(root, path)), { recursive: true })
    writeFileSync(join(root, path), code)
  }
  console.log(`${wanted.size} files, ${changed.length} written, ${stale.length} removed`)
  // Each in a process of its own, which reads the sources as they are now. The page of sources is written from the catalogue.
  const write = async (tool: string) => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', `docs/tools/${tool}.ts`], {
      cwd: root,
    })
    process.stdout.write(stdout)
  }
  await Promise.all([write('catalogue').then(() => write('how-known')), write('public-api')])
}
