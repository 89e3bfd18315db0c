/**
 * Rehearses `watchZone` over the faults that it should name and writes the table of the guide: `npm run rehearse:diagnosis`, or
 * `npm run rehearse:diagnosis -- 50` for fifty seeds a medium, or `npm run rehearse:diagnosis -- 2 probe,clock` to see some rows without writing.
 * A third word is the first seed.
 */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  type FaultName,
  minutes,
  type Observation,
  type RehearsalFault,
  type RehearsalScene,
  type RehearsedController,
  rehearsalScene,
  rehearse,
  rehearsedDiagnosis,
  rehearsedWatering,
  seconds,
} from 'porewater'

const PAGE = fileURLToPath(new URL('../guides/diagnosis-table.md', import.meta.url))
const [given = '2', words = '', firstSeed = '1000'] = process.argv.slice(2)
const seeds = Number(given)
const asked = words.split(',').filter((word) => word !== '')
const MEDIA = ['stone wool', 'coir dust', 'sphagnum peat moss', 'pine bark'] as const

/** Causes, the faults that show them, and the hours within which the guide promises that they are named first or second. */
const PROMISES: readonly (readonly [cause: string, faults: readonly FaultName[], hours: number])[] = [
  ['no-water', ['no-water', 'pump-cut', 'valve-stuck-closed'], 6],
  ['partial-water', ['low-pressure', 'all-drippers-clogged', 'very-low-pressure', 'unprobed-drippers-clogged'], 16],
  ['valve-stuck-open', ['valve-stuck-open'], 0.5],
  ['leak-between-shots', ['valve-weeps'], 1],
  ['line-leak', ['line-burst'], 18],
  ['clogged-dripper', ['one-dripper-clogged', 'one-dripper-half-clogged'], 24],
  ['channelling', ['channelling', 'water-repellent'], 48],
  ['watered-by-hand', ['water-by-hand'], 1],
  [
    'probe-dead',
    [
      'probe-reads-zero',
      'probe-reads-negative',
      'probe-reads-nan',
      'probe-reads-minus-999',
      'probe-reads-65535',
      'probe-reads-null',
      'probe-reads-text',
      'probe-silent',
    ],
    0.5,
  ],
  ['no-readings', ['probes-silent'], 0.5],
  ['probe-lifted', ['probe-lifted', 'probe-lifted-partly', 'probes-lifted-partly'], 0.5],
  ['probe-frozen', ['probe-frozen', 'probes-frozen', 'probe-frozen-dry', 'probe-frozen-wet', 'probes-frozen-dry'], 0.5],
  ['probe-drifting', ['probe-drifts-up', 'probe-drifts-down'], 48],
  ['probe-drifting, all of them', ['probes-drift-up', 'probes-drift-down'], 72],
  ['probe-noisy', ['probe-noisy', 'probes-noisy', 'probe-spikes'], 3],
  ['probes-swapped', ['probes-swapped', 'probe-of-another-zone'], 24],
  ['probe-reinserted', ['probe-reinserted-wet', 'probe-reinserted-dry'], 0.5],
  ['salt-driven', ['probe-salt-error', 'probes-salt-error'], 168],
  ['temperature-driven', ['probe-temperature-error', 'probes-temperature-error'], 30],
  ['unit-slip', ['probe-in-percent', 'probes-in-percent', 'probe-raw'], 0.5],
  ['feed-tank-wrong', ['feed-too-strong', 'feed-plain-water'], 0.5],
  ['drain-gauge-wrong', ['drain-gauge-dead', 'drain-gauge-counts-double'], 48],
  ['flow-meter-wrong', ['flow-meter-dead', 'flow-meter-counts-double'], 16],
  [
    'clock-wrong',
    [
      'clock-jumps-ahead',
      'clock-jumps-back',
      'clock-summer-time',
      'clock-winter-time',
      'clock-flaps',
      'clock-frozen',
      'clock-in-milliseconds',
      'clock-is-nan',
      'clock-fast',
      'sender-ahead',
      'sender-behind',
    ],
    2,
  ],
]

/** Salt shows only where the zone drains every day: shots by the clock, a quarter more than is used. */
function timetable(scene: RehearsalScene): RehearsedController<null, number, { open: boolean; closeAfter?: number }> {
  const shots = Math.round((1.25 * scene.usualPerDay) / scene.shot)
  const run = (scene.shot / scene.zone.flow) * 3600
  const every = 43200 / shots
  return {
    reducer: {
      start: null,
      step: (_, now) => {
        const since = (now % 86400) - 7 * 3600
        const open = since >= 0 && since < 43200 && since % every < run
        return [null, open ? { open, closeAfter: run - (since % every) } : { open }]
      },
    },
    input: ({ now }: Observation) => now,
    order: (order) => order,
  }
}

interface Outcome {
  readonly cause: number | null
  readonly falseAlarms: number
  readonly days: number
}

function run(fault: FaultName | null, medium: (typeof MEDIA)[number], seed: number): Outcome {
  const scene = rehearsalScene(medium)
  const salt = fault?.includes('salt') === true
  const days = fault === null ? 30 : salt ? 9 : fault.startsWith('probes-drift') ? 9 : 7
  // A zone is watched for three days before something goes wrong; salt is there from the first day.
  const from = salt ? 0 : 3 * 86400 + ((seed * 7919) % 1440) * 60
  const lasts = LASTS[fault ?? ''] ?? 0
  const faults: RehearsalFault[] =
    fault === null
      ? []
      : [{ fault, from: seconds(from), place: seed % 2, ...(lasts > 0 ? { until: seconds(from + lasts * 3600) } : {}) }]
  const controller = salt
    ? rehearsedDiagnosis(scene, timetable(scene))
    : rehearsedDiagnosis(scene, rehearsedWatering(scene))
  const { zone, limits } = scene
  const outcome = rehearse({
    zone,
    limits,
    controller: controller as never,
    days,
    seed,
    faults,
    keepCourse: false,
    pollEvery: minutes(salt ? 1 : 2),
  })
  const falseAlarms = outcome.alarms.filter(({ time, right }) => !right && (fault === null || time < from)).length
  return { cause: outcome.timeToFirstAlarms[0] ?? null, falseAlarms, days: fault === null ? days : from / 86400 }
}

/** Hours that a fault lasts, long enough for shots at night to be waited for. */
const LASTS: Readonly<Record<string, number>> = { 'water-by-hand': 0 }

const hours = (time: number | undefined) => (time === undefined ? '' : (time / 3600).toFixed(1))
const rows: string[][] = []
let falseAlarms = 0
let watched = 0
for (const [cause, faults, promised] of PROMISES)
  for (const fault of faults) {
    if (asked.length > 0 && !asked.some((word) => fault.includes(word) || cause.includes(word))) continue
    const runs = MEDIA.flatMap((medium) =>
      Array.from({ length: seeds }, (_, i) => run(fault, medium, Number(firstSeed) + i)),
    )
    const times = runs.flatMap((one) => (one.cause === null ? [] : [one.cause])).sort((a, b) => a - b)
    falseAlarms += runs.reduce((sum, one) => sum + one.falseAlarms, 0)
    watched += runs.reduce((sum, one) => sum + one.days, 0)
    const within = times.filter((time) => time <= promised * 3600).length / runs.length
    const tenth = times[Math.ceil(0.9 * runs.length) - 1]
    rows.push([
      cause,
      fault,
      `${promised}`,
      `${Math.round(100 * within)} %`,
      `${Math.round((100 * times.length) / runs.length)} %`,
      hours(times[times.length >> 1]),
      hours(tenth),
    ])
    console.log(rows.at(-1)?.join(' | '))
  }
if (asked.length === 0 || asked.includes('healthy')) {
  const clean = MEDIA.flatMap((medium) =>
    Array.from({ length: Math.max(1, Math.round(seeds / 5)) }, (_, i) => run(null, medium, Number(firstSeed) + i)),
  )
  falseAlarms += clean.reduce((sum, one) => sum + one.falseAlarms, 0)
  watched += clean.reduce((sum, one) => sum + one.days, 0)
}
const summary = `${falseAlarms} false alarms in ${Math.round(watched)} days of healthy zones, ${((30 * falseAlarms) / watched).toFixed(2)} a zone and month.`
console.log(summary)

if (asked.length === 0) {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  const heads = [
    'cause',
    'fault',
    'promised, h',
    'first or second in time',
    'first or second at all',
    'median, h',
    '90 % within, h',
  ]
  writeFileSync(
    PAGE,
    `# What \`watchZone\` names, and how soon

Made by \`npm run rehearse:diagnosis -- ${seeds}\`; do not edit. ${MEDIA.length} media, ${seeds} seeds each. ${summary}

Zones, faults and sizes are invented; see [What is wrong in a zone](what-is-wrong.md). Two probes, a flow meter, a drain gauge and light are
there; the zone is watched for three days before something goes wrong, at any time of day. Shots are given by \`controlWatering\`; the rows of
salt stand for a timetable that drains every day, and salt is there from the beginning. Times count from the beginning of the fault, nights without
shots among them.

${line(heads)}
${line(heads.map((_, i) => (i < 2 ? '---' : '---:')))}
${rows.map(line).join('\n')}
`,
  )
}
