import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const folder = fileURLToPath(new URL('../guides/', import.meta.url))

/** The guides in the order of the job. One that is not listed stands at the end. */
export const GUIDES: readonly { readonly part: string; readonly names: readonly string[] }[] = [
  { part: 'Before you start', names: ['cautions', 'glossary'] },
  { part: 'Read the medium', names: ['probe-to-water-content', 'care-for-probes', 'what-your-container-holds'] },
  { part: 'See the water move', names: ['learn-the-dry-down', 'water-on-the-move'] },
  { part: 'Know the demand', names: ['demand-from-climate', 'demand-under-cover'] },
  { part: 'Water', names: ['size-a-shot', 'drain-and-salts', 'plan-a-day', 'by-hand-and-by-night'] },
  {
    part: 'Let it run',
    names: ['safe-automation', 'what-is-wrong', 'diagnosis-table', 'rehearse-your-logic', 'rehearsal-table'],
  },
  { part: 'In your program', names: ['at-the-terminal', 'embedding', 'from-one-zone-to-ten-thousand'] },
  { part: 'To look up', names: ['formula-sheet', 'deviations'] },
]

/** Names of the guides that are there, in order. */
export function guideNames(): string[] {
  const listed = GUIDES.flatMap(({ names }) => names).filter((name) => existsSync(`${folder}${name}.md`))
  const others = readdirSync(folder)
    .filter((file) => file.endsWith('.md') && !listed.includes(file.slice(0, -3)))
    .map((file) => file.slice(0, -3))
  return [...listed, ...others.sort()]
}

export function guideText(name: string): string {
  return readFileSync(`${folder}${name}.md`, 'utf8')
}

/** The first heading of a guide. */
export function guideTitle(text: string): string {
  return /^# (.+)$/m.exec(text)?.[1]?.replace(/`/g, '') ?? ''
}
