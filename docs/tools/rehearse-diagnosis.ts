/**
 * Rehearses `watchZone` over the faults that it should name: `npm run rehearse:diagnosis -- 50` measures fifty seeds a medium and writes
 * the table of the guide. `-- 2 probe,clock` only prints some rows. To measure in pieces, `-- 5 all 1000 --keep` keeps five seeds from 1000
 * on in `out/diagnosis`, and `-- --document` writes the table from all pieces that are kept. `--turns` takes the media in turn, one a seed:
 * four times as many seeds in the same time.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { afterBeginning, beginningOf, faultFrom, type History, MEDIA, withSalt } from './diagnosis/histories.js'
import { pageOf, rowsOf } from './diagnosis/page.js'
import { PROMISES } from './diagnosis/promises.js'

const PAGE = fileURLToPath(new URL('../guides/diagnosis-table.md', import.meta.url))
const PIECES = 'out/diagnosis'
/** A healthy month for one seed of five. */
const MONTH_OF = 5

const { values, positionals } = parseArgs({
  options: { keep: { type: 'boolean' }, document: { type: 'boolean' }, turns: { type: 'boolean' } },
  allowPositionals: true,
})
const [given = '2', words = 'all', firstSeed = '1000'] = positionals
const asked = words.split(',')
const wanted = (name: string) => asked.some((word) => word === 'all' || name.includes(word))

const histories = values.document ? keptPieces() : measured(Number(given), Number(firstSeed))
for (const row of rowsOf(histories)) console.log(row.join(' | '))
if (values.keep) {
  mkdirSync(PIECES, { recursive: true })
  writeFileSync(`${PIECES}/${words.replaceAll(',', '-')}-${firstSeed}-${given}.json`, JSON.stringify(histories))
} else if (values.document || words === 'all') writeFileSync(PAGE, pageOf(histories))

function keptPieces(): History[] {
  const all = readdirSync(PIECES).flatMap((file) => JSON.parse(readFileSync(`${PIECES}/${file}`, 'utf8')) as History[])
  // Pieces may overlap: the same history is the same in each.
  const keyOf = ({ fault, medium, seed, healthyDays }: History) => `${fault} ${medium} ${seed} ${healthyDays}`
  return [...new Map(all.map((one) => [keyOf(one), one])).values()]
}

function measured(seeds: number, first: number): History[] {
  const found: History[] = []
  for (let seed = first; seed < first + seeds; seed++)
    for (const medium of mediaOf(seed)) {
      const shown = PROMISES.flatMap(({ cause, faults, hours }) =>
        faults.flatMap((fault) => (wanted(fault) || wanted(cause) ? [{ fault, hours }] : [])),
      )
      if (shown.length > 0) {
        const beginning = beginningOf(medium, seed)
        found.push(healthy(medium, seed, beginning.falseAlarms, faultFrom(seed) / 86400))
        for (const { fault, hours } of shown)
          found.push(
            fault.includes('salt')
              ? withSalt(medium, seed, fault, hours)
              : afterBeginning(medium, seed, fault, hours, beginning),
          )
      }
      if (wanted('healthy') && seed % MONTH_OF === 0)
        found.push(healthy(medium, seed, beginningOf(medium, seed, 30).falseAlarms, 30))
    }
  return found
}

/** Two seeds a medium, so that each medium has its fault at either probe. */
function mediaOf(seed: number): readonly History['medium'][] {
  return values.turns ? [MEDIA[(seed >> 1) % MEDIA.length]!] : MEDIA
}

function healthy(medium: History['medium'], seed: number, falseAlarms: readonly string[], days: number): History {
  return { fault: null, medium, seed, after: null, falseAlarms, healthyDays: days, byHandWhileFull: 0 }
}
