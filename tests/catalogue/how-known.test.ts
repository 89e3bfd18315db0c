import { readdirSync, readFileSync } from 'node:fs'
import { catalogue, sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { readHowKnown } from '../../docs/tools/how-known.js'

const root = new URL('../../', import.meta.url)

describe('the page on how each value is known', () => {
  it('is what the documentation and the published rows say', () => {
    expect(readFileSync(new URL('docs/how-known.md', root), 'utf8')).toBe(readHowKnown(root))
  })
  it('counts every file of published rows', () => {
    const page = readHowKnown(root)
    for (const file of readdirSync(new URL('tests/published', root)))
      if (file !== 'not-testable.json') expect(page).toContain(`| ${file} |`)
  })
  it('leaves no mark in words that only its writer understood', () => {
    for (const { name, sources } of catalogue)
      for (const source of sources) expect(source, name).not.toMatch(/memory|second-hand/)
  })
  it('names the edition of FAO-56 in every source that cites it', () => {
    for (const { name, sources } of catalogue)
      for (const source of sources.map(sourceInFull).filter((one) => /Paper 56|FAO-56/.test(one)))
        expect(source, name).toMatch(/\(1998\)/)
  })
})
