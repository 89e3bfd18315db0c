/**
 * Rehearses `watchZone` over the faults that it should name. `npm run rehearse:diagnosis -- 48 --keep=FILE` measures 48 histories of each
 * fault, the media in turn, and writes the table of the guide; `-- 48 all 2000` counts seeds from 2000 on; `-- 2 probe,clock` only
 * prints some rows. With `--keep=FILE` each finished history stands in a file of lines at once: stop the run when you like, and the same
 * command goes on with it. `--table` measures nothing and writes the table from what the file holds: rows may then rest on unlike numbers.
 */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import {
  afterBeginning,
  type Beginning,
  beginningOf,
  type History,
  healthy,
  mediumOf,
  withSalt,
} from './diagnosis/histories.js'
import { keptHistories } from './diagnosis/kept-histories.js'
import { pageOf, rowsOf } from './diagnosis/page.js'
import { HEALTHY_POLLS, PROMISES } from './diagnosis/promises.js'

const PAGE = fileURLToPath(new URL('../guides/diagnosis-table.md', import.meta.url))

const { values, positionals } = parseArgs({
  options: { keep: { type: 'string' }, table: { type: 'boolean' } },
  allowPositionals: true,
})
const [count = '4', words = 'all', firstSeed = '2000'] = positionals
const asked = words.split(',')
const wanted = (name: string) => asked.some((word) => word === 'all' || name.includes(word))
const kept = await keptHistories(values.keep)

const shown = PROMISES.flatMap(({ cause, faults, hours }) =>
  faults.flatMap((fault) => (wanted(fault) || wanted(cause) ? [{ fault, hours }] : [])),
)
if (!values.table)
  for (let seed = Number(firstSeed); seed < Number(firstSeed) + Number(count); seed++) {
    measure(seed)
    console.error(`seed ${seed}, ${Math.round(process.cpuUsage().user / 1e6)} s of the processor`)
  }

const histories = kept.all()
for (const row of rowsOf(histories)) console.log(row.join(' | '))
if ((words === 'all' || values.table) && histories.length > 0) writeFileSync(PAGE, pageOf(histories))

/** All histories of a seed. The healthy beginning is simulated only where one of them is still missing. */
function measure(seed: number): void {
  const medium = mediumOf(seed)
  let beginning: Beginning | undefined
  const begun = () => {
    beginning ??= beginningOf(medium, seed)
    return beginning
  }
  const take = (name: string, run: () => History) => kept.take(`${name} ${seed}`, run)
  if (wanted('healthy')) {
    take('beginning', () => begun().healthy)
    for (const poll of HEALTHY_POLLS) take(`healthy ${poll}`, () => healthy(medium, seed, poll))
  }
  for (const { fault, hours } of shown)
    take(`${fault} ${hours}`, () =>
      fault.includes('salt')
        ? withSalt(medium, seed, fault, hours)
        : afterBeginning(medium, seed, fault, hours, begun()),
    )
}
