import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'

/** Each file of a folder with the digest of its bytes; what is a link is left out. */
export function digestsOf(folder: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    found.set(relative(folder, path), createHash('sha256').update(readFileSync(path)).digest('hex'))
  }
  return found
}

/** Files that came, went or changed. */
export function differencesOf(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): string[] {
  const paths = new Set([...before.keys(), ...after.keys()])
  return [...paths].filter((path) => before.get(path) !== after.get(path)).sort()
}
