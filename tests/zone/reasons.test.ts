import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { explainZoneFinding, type ZoneReason } from 'porewater'
import { describe, expect, it } from 'vitest'

const words = (reason: string) => explainZoneFinding({ code: reason as ZoneReason }).message
const folder = (name: string) => fileURLToPath(new URL(`../../src/${name}/`, import.meta.url))

/** Codes that say why something is not known, as the results of a folder carry them. */
function reasonsOf(name: string): string[] {
  const files = readdirSync(folder(name), { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'))
  const code = files.map((path) => readFileSync(folder(name) + path, 'utf8')).join('\n')
  const given = [...code.matchAll(/known: false,[^}]*?reason:\s*'([a-z-]+)'/g)]
  return [...new Set(given.map(([, reason]) => reason as string))].sort()
}

describe('a result of a zone that is not known', () => {
  it.each([...reasonsOf('zone'), ...reasonsOf('record')])('has words for %s', (reason) => {
    expect(words(reason)).not.toBe(reason.replaceAll('-', ' '))
  })
  it('has them once: what the record explains, the zone does not word otherwise', () => {
    const tableOf = (path: string) => {
      const [topic, ...file] = path.split('/')
      const code = readFileSync(folder(topic!) + file.join('/'), 'utf8')
      const table = /_REASON_WORDS[^{]*\{([\s\S]*?)\n\}/.exec(code)?.[1] ?? ''
      return [...table.matchAll(/^ {2}'?([a-z-]+)'?:/gm)].map(([, code]) => code as string)
    }
    const [zone, record] = [tableOf('zone/words/zone-reason-words.ts'), tableOf('record/record-words.ts')]
    expect(Math.min(zone.length, record.length)).toBeGreaterThan(15)
    expect(zone.filter((code) => record.includes(code))).toEqual([])
    expect(words('few-days')).toBe('fewer than seven days with a use were seen')
  })
  it('has at least the reasons that a night can have', () => {
    expect(reasonsOf('record')).toEqual(expect.arrayContaining(['short', 'shot-in-night', 'few-readings']))
    expect(words('short')).toBe('readings or drain leave less than three quarters of the night')
  })
})
