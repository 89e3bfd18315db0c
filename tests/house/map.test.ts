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

const files = sourceFiles()
const roomOf = (path: string) => path.split('/').slice(1, -1).join('/')
const rooms = [...new Set(files.map(({ path }) => roomOf(path)))].filter((room) => room.includes('/')).sort()

describe('the rooms of a large folder', () => {
  it('are those that the contributors’ guide names', () => {
    const guide = readFileSync(`${root}DEVELOPERS.md`, 'utf8')
    const named = [...guide.matchAll(/`([a-z/]+)\/\{([a-z,-]+)\}`/g)].flatMap(([, folder, list]) =>
      list!.split(',').map((room) => `${folder}/${room}`),
    )
    expect(named.sort()).toEqual(rooms.filter((room) => !room.endsWith('/generated')))
  })
  it('form no circle', () => {
    const above: Record<string, Set<string>> = Object.fromEntries(rooms.map((room) => [room, new Set()]))
    for (const { path, code } of files)
      for (const { from } of importsOf(path, code)) {
        const [own, other] = [roomOf(path), roomOf(from)]
        if (own !== other && own in above && other in above) above[own]!.add(other)
      }
    // What stands on nothing that still stands is taken away, floor by floor, until nothing is left.
    let standing = rooms
    for (let before = Number.POSITIVE_INFINITY; standing.length < before; ) {
      before = standing.length
      standing = standing.filter((room) => standing.some((other) => above[room]!.has(other)))
    }
    expect(standing).toEqual([])
  })
  it('are made where a folder or a room would hold more than 35 files', () => {
    const beside = (folder: string) => files.filter(({ path }) => roomOf(path) === folder).length
    const all = [...Object.keys(below), ...rooms.filter((room) => !room.endsWith('/generated'))]
    expect(all.filter((folder) => beside(folder) > 35)).toEqual([])
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
