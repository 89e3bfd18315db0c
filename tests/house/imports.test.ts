import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const cruiser = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs')
let folder = ''

function violations(files: Record<string, string>): string {
  rmSync(join(folder, 'src'), { recursive: true, force: true })
  for (const [path, code] of Object.entries(files)) {
    mkdirSync(join(folder, path, '..'), { recursive: true })
    writeFileSync(join(folder, path), code)
  }
  try {
    execFileSync('node', [cruiser, 'src', '--config', '.dependency-cruiser.cjs'], {
      cwd: folder,
      encoding: 'utf8',
      stdio: 'pipe',
    })
    return ''
  } catch (error) {
    return (error as { stdout: string }).stdout
  }
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-house-'))
  for (const file of ['.dependency-cruiser.cjs', '.dependency-map.json', 'tsconfig.json', 'package.json'])
    cpSync(join(root, file), join(folder, file))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the rule check bites', () => {
  it('lets a downward import pass', () => {
    expect(
      violations({
        'src/quantity/a.ts': 'export const a = 1\n',
        'src/water/b.ts': `export { a } from '../quantity/a.js'\n`,
      }),
    ).toBe('')
  })
  // One run of the checker reads all faults: to start it takes most of its time. Each rule must name its own files.
  it('refuses an upward import, a circle even of types, an index inside the house, and Node in the core', () => {
    const found = violations({
      'src/quantity/a.ts': `export { b } from '../water/b.js'\n`,
      'src/water/b.ts': 'export const b = 1\n',
      'src/air/a.ts': `import type { B } from './b.js'\nexport type A = B\n`,
      'src/air/b.ts': `import type { A } from './a.js'\nexport type B = A\n`,
      'src/quantity/index.ts': 'export const c = 1\n',
      'src/water/c.ts': `export { c } from '../quantity/index.js'\n`,
      'src/water/d.ts': `import { readFileSync } from 'node:fs'\nexport const d = readFileSync\n`,
    })
    for (const [rule, from, to] of [
      ['quantity-imports-downwards', 'src/quantity/a.ts', 'src/water/b.ts'],
      ['no-circle', 'src/air/a.ts', 'src/air/b.ts'],
      ['no-index-inside', 'src/water/c.ts', 'src/quantity/index.ts'],
      ['core-has-no-dependency', 'src/water/d.ts', 'fs'],
    ] as const)
      expect(found.replace(/\s+/g, ' ')).toContain(`${rule}: ${from} → ${to}`)
  })
})
