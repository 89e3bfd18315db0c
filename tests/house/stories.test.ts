/** The stories that the developers' pages list are tests of that name. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const root = new URL('../../', import.meta.url)
const read = (path: string) => readFileSync(new URL(path, root), 'utf8')
const rows = read('docs/developers/stories.md')
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| what') && !line.startsWith('| ---'))
  .map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim()),
  )

describe('the stories of faults', () => {
  it('are more than forty', () => expect(rows.length).toBeGreaterThan(40))
  it.each(rows)('%s', (_, file, name) => {
    expect(read(`tests/${file}.test.ts`)).toContain(name)
  })
})
