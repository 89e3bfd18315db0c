/**
 * Rehearses `controlWatering` over all faults and media and writes the table of the guide: `npm run rehearse`, or `npm run rehearse -- 50`
 * for fifty seeds, or `npm run rehearse -- 2 probe,clock` to see some rows without writing. `--pairs` rehearses pairs of faults instead.
 * `--keep=FILE` keeps what is finished in a file of lines, so that a long run can be stopped and taken up again.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import {
  carefulPerson,
  type FaultName,
  type NamedShare,
  perfectPlanner,
  type RehearsalScenario,
  type RehearsalSummary,
  type RehearsedController,
  rehearsalFaults,
  rehearsalScenario,
  rehearsedWatering,
  rehearseMany,
} from 'porewater'

const PAGE = fileURLToPath(new URL('../guides/rehearsal-table.md', import.meta.url))
const { values, positionals: words } = parseArgs({
  allowPositionals: true,
  options: { pairs: { type: 'boolean' }, keep: { type: 'string' } },
})
const { pairs: inPairs = false, keep } = values
const seeds = Number(words[0] ?? 3)
const asked = (words[1] ?? '').split(',').filter((word) => word !== '')
const days = 7
const scenarios = (['stone-wool', 'coir-dust', 'sphagnum-peat-moss', 'pine-bark'] as const).map(rehearsalScenario)

function lists(): FaultName[][] {
  const names = rehearsalFaults()
    .map(({ fault }) => fault)
    .filter((fault) => asked.length === 0 || asked.some((word) => fault.includes(word)))
  if (!inPairs) return [...(asked.length === 0 ? [[]] : []), ...names.map((name) => [name])]
  // Each fault with some others, far from it in the list, so that probes meet clocks and valves.
  return names.flatMap((name, i) => [17, 41].map((far) => [name, names[(i + far) % names.length]!]))
}

const hours = (seconds: number) => (seconds / 3600).toFixed(1)
const share = (named: NamedShare) => (named.known ? `${Math.round(named.share * 100)} %` : '')
const HEADS = [
  'fault',
  'worst 24 h',
  'against its will',
  'longest opening',
  'stress, h a week',
  'most in one week',
  'careful person',
  'perfect planner',
  'over-wet, h',
  'named',
  'first or second',
  'after, h',
  'false alarms',
]

const CONTROLLERS = { ours: rehearsedWatering, person: carefulPerson, planner: perfectPlanner } as const
const kept = new Map<string, RehearsalSummary>()
if (keep !== undefined && existsSync(keep))
  for (const line of readFileSync(keep, 'utf8')
    .split('\n')
    .filter((text) => text !== '')) {
    const { name, row } = JSON.parse(line) as { name: string; row: RehearsalSummary }
    kept.set(name, row)
  }

function summaryOf(who: keyof typeof CONTROLLERS, faults: readonly FaultName[]): RehearsalSummary {
  const name = `${who} ${seeds} ${faults.join('+')}`
  const known = kept.get(name)
  if (known !== undefined) return known
  const controllerFor: (scenario: RehearsalScenario) => RehearsedController<never, never, never> = CONTROLLERS[
    who
  ] as never
  const [row] = rehearseMany({ scenarios, faults: [faults], seeds, days, controllerFor }) as [RehearsalSummary]
  if (keep !== undefined) appendFileSync(keep, `${JSON.stringify({ name, row })}\n`)
  return row
}

function rowOf(faults: readonly FaultName[]): { cells: string[]; ours: RehearsalSummary; planner: RehearsalSummary } {
  const ours = summaryOf('ours', faults)
  const person = summaryOf('person', faults)
  const planner = summaryOf('planner', faults)
  const cells = [
    faults.length === 0 ? 'a healthy week' : faults.join(' and '),
    ours.worstDayShare.toFixed(2),
    ours.worstDayShareInAll > ours.worstDayShare + 0.005 ? ours.worstDayShareInAll.toFixed(2) : '',
    ours.maxOpeningShare.toFixed(2),
    hours(ours.stressTime),
    hours(ours.maxStressTime),
    hours(person.stressTime),
    hours(planner.stressTime),
    hours(ours.fullTime),
    share(ours.namedShare),
    share(ours.namedFirstShare),
    ours.timeToAlarm.known ? hours(ours.timeToAlarm.time) : '',
    ours.falseAlarms.toFixed(1),
  ]
  return { cells, ours, planner }
}

const asks = lists()
if (asks.length === 0) throw new Error(`no fault has ${asked.join(' or ')} in its name`)
const rows = asks.map((faults) => {
  const row = rowOf(faults)
  console.log(row.cells.join(' | '))
  return row
})

const worst = Math.max(...rows.map(({ ours }) => ours.worstDayShare))
const outside = rows.reduce((sum, { ours }) => sum + ours.outsideByBothClocks, 0)
const stress = rows.reduce((sum, { ours }) => sum + ours.stressTime, 0) / rows.length
const unavoidable = rows.reduce((sum, { planner }) => sum + planner.stressTime, 0) / rows.length
const summary =
  `${rows.length} rows, ${scenarios.length} media, ${seeds} seeds, ${days} days: worst 24 h ${worst.toFixed(2)} of the limit, ` +
  `${outside} openings outside the allowed hours by the true and the controller's clock, ${hours(stress)} h of stress a week in the mean; ` +
  `a planner that sees the truth, within the same limits, has ${hours(unavoidable)} h.`
console.log(summary)

if (asked.length === 0 && !inPairs) {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  const page = `# Rehearsal of controlWatering, fault by fault

Made by \`npm run rehearse -- ${seeds}\`; do not edit. ${summary}

Zones, faults and sizes are invented; see [Rehearse your own logic](rehearse-your-logic.md). Water is given as a share of the limit of
any 24 h, the longest opening as a share of its limit. *Against its will* counts what passes a valve that is stuck or weeps. The careful person
waters by a timetable and looks at the probes; the perfect planner knows the true water content and keeps the limit of a day, so that its
stress is what nobody could have avoided within the limits. *Named* is the share of faults that any alarm named, *after* the median time to it.

${line(HEADS)}
${line(HEADS.map((_, i) => (i === 0 ? '---' : '---:')))}
${rows.map(({ cells }) => line(cells)).join('\n')}
`
  writeFileSync(PAGE, page)
}
