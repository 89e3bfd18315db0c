import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { mapInCode } from '../../docs/tools/house/map-in-code.js'
import { importsOf, root, sourceFiles } from '../../docs/tools/house/source-files.js'

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

describe('the map of the house', () => {
  it('in the contributors’ guide equals the imports', () => expect(mapInGuide()).toEqual(mapInCode()))
  it('that the build enforces equals the imports', () => {
    const enforced = Object.fromEntries(Object.entries(below).map(([folder, from]) => [folder, [...from].sort()]))
    expect(enforced).toEqual(mapInCode())
  })
})

describe('what stands beside src', () => {
  it('flows one way: tests read docs/tools, which import no test, and tests/support import no tool', () => {
    const from = (folder: string) => sourceFiles(folder).flatMap(({ path, code }) => importsOf(path, code))
    expect(
      from('docs')
        .map((one) => one.from)
        .filter((path) => path.startsWith('tests/')),
    ).toEqual([])
    expect(
      from('tests/support')
        .map((one) => one.from)
        .filter((path) => path.startsWith('docs/tools/')),
    ).toEqual([])
  })
})
