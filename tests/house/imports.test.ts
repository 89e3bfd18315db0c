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
  it('refuses an upward import', () => {
    expect(
      violations({
        'src/quantity/a.ts': `export { b } from '../water/b.js'\n`,
        'src/water/b.ts': 'export const b = 1\n',
      }),
    ).toMatch(/quantity-imports-downwards/)
  })
  it('refuses a circle, even of types', () => {
    expect(
      violations({
        'src/water/a.ts': `import type { B } from './b.js'\nexport type A = B\n`,
        'src/water/b.ts': `import type { A } from './a.js'\nexport type B = A\n`,
      }),
    ).toMatch(/no-circle/)
  })
  it('refuses an index inside the house and Node in the core', () => {
    expect(
      violations({
        'src/quantity/index.ts': 'export const a = 1\n',
        'src/water/b.ts': `export { a } from '../quantity/index.js'\n`,
      }),
    ).toMatch(/no-index-inside/)
    expect(
      violations({ 'src/water/b.ts': `import { readFileSync } from 'node:fs'\nexport const b = readFileSync\n` }),
    ).toMatch(/core-has-no-dependency/)
  })
})
