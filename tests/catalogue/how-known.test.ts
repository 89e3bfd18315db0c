import { readdirSync, readFileSync } from 'node:fs'
import {
  dryLimitsTaylorAshcroft1972,
  substrateRanges,
  texturesRawls1982,
  texturesRawls1983,
  uptakeLimitsFeddes,
} from 'porewater'
import { catalogue, sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { readHowKnown } from '../../docs/tools/how-known.js'
import { howKnown } from '../../src/catalogue/source-in-full.js'

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
  it('holds every source of a function, every table with sources, and stands first-class in the guide of contributors', () => {
    const page = readHowKnown(root)
    for (const { name } of catalogue.filter(({ sources }) => sources.some((one) => howKnown(one) !== 'own')))
      expect(page).toContain(`\`${name}\``)
    for (const table of ['texturesRawls1982', 'substrateRanges', 'uptakeLimitsFeddes', 'dryLimitsTaylorAshcroft1972'])
      expect(page).toMatch(new RegExp(`\\| \`${table}\` \\| .* \\| \\d+ \\| (?:read|confirmed|not confirmed) \\|`))
    expect(readFileSync(new URL('DEVELOPERS.md', root), 'utf8')).toMatch(
      /^## How each value is known\n\n\[docs\/how-known\.md\]\(docs\/how-known\.md\)/m,
    )
  })
  it('agrees with the rows of tables on how their works are known', () => {
    const rows = [texturesRawls1982, texturesRawls1983, uptakeLimitsFeddes, dryLimitsTaylorAshcroft1972].flatMap(
      (table) => Object.values(table as Record<string, { source: string; known: string }>),
    )
    for (const { source, known } of [...rows, ...Object.values(substrateRanges).flat()])
      expect(known, source).toBe(howKnown(source))
  })
  it('leaves no mark in words that only its writer understood', () => {
    for (const { name, sources } of catalogue)
      for (const source of sources) expect(source, name).not.toMatch(/memory|second-hand/)
  })
  it('says in the guide that FAO-56 has been revised, and takes nothing from the revision unread', () => {
    const guide = readFileSync(new URL('docs/guides/demand-from-climate.md', root), 'utf8').replace(/\s+/g, ' ')
    expect(guide).toMatch(
      /FAO-56 in this package are those of 1998\. The paper has been revised: .*Rev\. 1 \(2025\), doi:10\.4060\/cd6621en/,
    )
    for (const { name, sources } of catalogue) expect(sources.join(' '), name).not.toMatch(/cd6621en|-2025\b/)
  })
  it('names the edition of FAO-56 in every source that cites it', () => {
    for (const { name, sources } of catalogue)
      for (const source of sources.map(sourceInFull).filter((one) => /Paper 56|FAO-56/.test(one)))
        expect(source, name).toMatch(/\(1998\)/)
  })
})
