import { wilson } from '../mutants/score.js'
import { type History, MEDIA } from './histories.js'
import { PROMISES, SHARE, WARM_UP } from './promises.js'

const HEADS = [
  'cause',
  'fault',
  'promised, h',
  'first or second in time',
  'named of histories',
  '95 % interval, %',
  'median, h',
  `${100 * SHARE} % within, h`,
]

/** One row a fault, in the order of the promises. */
export function rowsOf(histories: readonly History[]): string[][] {
  return PROMISES.flatMap(({ cause, faults, hours }) =>
    faults.flatMap((fault) => {
      const runs = histories.filter((one) => one.fault === fault)
      if (runs.length === 0) return []
      const times = runs.flatMap(({ after }) => (after === null ? [] : [after / 3600])).sort((a, b) => a - b)
      const named = times.filter((time) => time <= hours).length
      const share = `${Math.floor((100 * named) / runs.length)} %`
      const interval = wilson(named, runs.length).map((end) => (100 * end).toFixed(0))
      const at = (share: number) => times[Math.ceil(share * runs.length) - 1]?.toFixed(1) ?? ''
      const counts = [share, `${named} of ${runs.length}`, interval.join(' to ')]
      return [[cause, fault, `${hours}`, ...counts, at(0.5), at(SHARE)]]
    }),
  )
}

/** What healthy zones brought. */
function summaryOf(histories: readonly History[]): string {
  const well = histories.filter(({ healthyDays }) => healthyDays > 0)
  const polls = [...new Set(well.map(({ poll }) => poll))].sort((a, b) => a - b)
  const lines = polls.map(
    (poll) => `${wellBy(well.filter((one) => one.poll === poll))} looked at every ${poll / 60} min`,
  )
  const days = well.reduce((sum, { healthyDays }) => sum + healthyDays, 0)
  const alarms = well.flatMap(({ falseAlarms }) => falseAlarms)
  const wrong = histories.reduce((sum, { byHandWhileFull }) => sum + byHandWhileFull, 0)
  return (
    `False alarms of healthy zones: ${lines.join('; ')}; ${perMonth(alarms.length, days)} a zone and month in all. ` +
    `Somebody was sent to water by hand while the zone was full at ${wrong} moments.`
  )
}

function wellBy(well: readonly History[]): string {
  const alarms = well.flatMap(({ falseAlarms }) => falseAlarms)
  const days = well.reduce((sum, { healthyDays }) => sum + healthyDays, 0)
  const kinds = [...new Set(alarms)].sort().map((alarm) => `${alarm} ${alarms.filter((one) => one === alarm).length}`)
  const which = kinds.length === 0 ? '' : ` (${kinds.join(', ')})`
  return `${alarms.length}${which} in ${(days / 7).toFixed(0)} weeks, ${perMonth(alarms.length, days)} a month,`
}

function perMonth(alarms: number, days: number): string {
  return days === 0 ? '0.00' : ((30 * alarms) / days).toFixed(2)
}

export function pageOf(histories: readonly History[]): string {
  const seeds = [...new Set(histories.map(({ seed }) => seed))].sort((a, b) => a - b)
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return `# What \`watchZone\` names, and how soon

Made by \`npm run rehearse:diagnosis\`; do not edit. ${seedsIn(seeds)}, ${MEDIA.length} media in turn, one history of a fault a seed; a row says how many it rests on. ${summaryOf(histories)}

Zones, faults and sizes are invented; see [What is wrong in a zone](what-is-wrong.md). Two probes, a flow meter, a drain gauge and light are
there; the zone is watched for ${WARM_UP} to ${WARM_UP + 1} days before something goes wrong, at any time of day. Shots are given by \`controlWatering\`; the rows of
salt stand for a timetable that drains every day, and salt is there from the beginning. Times count from the beginning of the fault, nights
without shots among them. A cause counts as named where it stands first or second in the list, and each history was watched for as long as
is promised. The interval is that of Wilson (1927): histories differ by their seed, and few of them say little.

${line(HEADS)}
${line(HEADS.map((_, i) => (i < 2 ? '---' : '---:')))}
${rowsOf(histories).map(line).join('\n')}
`
}

/** Seeds as stretches. */
function seedsIn(seeds: readonly number[]): string {
  const ends = seeds.filter((seed) => !seeds.includes(seed + 1))
  const stretches = seeds
    .filter((seed) => !seeds.includes(seed - 1))
    .map((from, i) => (from === ends[i] ? `${from}` : `${from} to ${ends[i]}`))
  return `${seeds.length} seeds (${stretches.join(', ')})`
}

/** What the guide promises, as lines of its table. */
export function promiseLines(): string[] {
  return PROMISES.map(
    ({ cause, faults, hours, unreliable }) =>
      `| ${cause} | ${faults.join(', ')} | ${unreliable ? 'not promised' : `${hours}`} |`,
  )
}
