import { existsSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** Every folder with a public index. The catalogue describes itself too, but its data is what is being written. */
export function topics(): string[] {
  return readdirSync(`${root}src`, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(`${root}src/${entry.name}/index.ts`))
    .map((entry) => entry.name)
    .sort()
}
