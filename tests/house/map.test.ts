import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { folderOf, importsOf, root, sourceFiles } from './sources.js'

const below = JSON.parse(readFileSync(`${root}.dependency-map.json`, 'utf8')) as Record<string, string[]>

/** The table of the contributors' guide: folder, and the folders that it imports from. */
function mapInGuide(): Record<string, string[]> {
  const guide = readFileSync(`${root}DEVELOPERS.md`, 'utf8')
  const table = guide.slice(guide.indexOf('## The house'), guide.indexOf('## Quantities'))
  const rows = [...table.matchAll(/^\| `src\/([a-z]+)`[^|]*\|[^|]*\|([^|]*)\|$/gm)]
  return Object.fromEntries(
    rows.map(([, folder, from]) => [
      folder,
      (from as string).trim() === 'nothing' ? [] : (from as string).trim().split(', ').sort(),
    ]),
  )
}

/** The folders that each folder's files really import from. */
function mapInCode(): Record<string, string[]> {
  const found: Record<string, Set<string>> = {}
  for (const { path, code } of sourceFiles()) {
    if (path === 'src/index.ts') continue
    const from = folderOf(path)
    found[from] ??= new Set()
    for (const { from: target } of importsOf(path, code))
      if (target.startsWith('src/') && folderOf(target) !== from) found[from].add(folderOf(target).replace('.ts', ''))
  }
  return Object.fromEntries(Object.entries(found).map(([folder, targets]) => [folder, [...targets].sort()]))
}

describe('the map of the house', () => {
  it('in the contributors’ guide equals the imports', () => expect(mapInGuide()).toEqual(mapInCode()))
  it('that the build enforces equals the imports', () => {
    const enforced = Object.fromEntries(Object.entries(below).map(([folder, from]) => [folder, [...from].sort()]))
    expect(enforced).toEqual(mapInCode())
  })
})
