import {
  explainPlanFinding,
  explainPlannedShot,
  explainWeatherFinding,
  inMillilitres,
  inMinutes,
  litres,
  timeToRefill,
} from 'porewater'
import type { DayAnalysis, ProbeDay } from './analyse.js'
import type { Checked } from './check.js'
import { type Loaded, localDate, localTime } from './load.js'
import type { Setup } from './setup.js'

const percent = (share: number, digits = 1) => `${(share * 100).toFixed(digits)} %`
const counted = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`
const content = (value: number) => `${(value * 100).toFixed(1)} %`

/** The report for the grower, as lines of text. */
export function report(loaded: Loaded, checked: Checked, day: DayAnalysis, setup: Setup, picture: string): string {
  const sections: [string, string[]][] = [
    [`${setup.title}, ${day.date}`, [setup.about]],
    ['What was read', whatWasRead(loaded, checked, day, setup)],
    ['What the probes say', day.probes.flatMap((probe) => probeLines(probe, day, setup))],
    ['What the container holds', containerLines(day, setup)],
    ['Feed and drain', balanceLines(day, setup)],
    ['Demand', demandLines(day, setup)],
    ['Plan for tomorrow', planLines(day, setup)],
    ['Before you act on it', CAUTIONS],
    ['Picture', [picture]],
  ]
  return `${sections.map(([title, lines]) => `${title}\n${'-'.repeat(title.length)}\n${lines.map(folded).join('\n')}`).join('\n\n')}\n`
}

function whatWasRead(loaded: Loaded, checked: Checked, day: DayAnalysis, setup: Setup): string[] {
  const first = loaded.time[0] as number
  const last = loaded.time[loaded.time.length - 1] as number
  const lines = [
    `${counted(loaded.time.length, 'reading')} from ${localDate(first, setup)} ${localTime(first, setup)} to ${localDate(last, setup)} ${localTime(last, setup)}; ${day.readings} of them on ${day.date}.`,
  ]
  for (const { name, counts, extrapolated, shots } of checked.probes) {
    lines.push(
      `${name}: ${counts.pass + counts.notEvaluated} good, ${counts.suspect} doubtful, ${counts.fail} wrong, ${counts.missing} missing; ${shots.length} shots in the whole record${extrapolated > 0 ? `; ${counted(extrapolated, 'reading')} outside the calibrated span` : ''}.`,
    )
  }
  if (checked.seams.length === 0) lines.push('The clock runs on without a gap.')
  for (const seam of checked.seams.slice(0, 8)) {
    const at = loaded.time[seam.index] as number
    const what =
      seam.kind === 'gap'
        ? `a gap of ${inMinutes(seam.seconds).toFixed(0)} minutes ends`
        : seam.kind === 'step back'
          ? `the clock is set back by ${(-seam.seconds / 60).toFixed(0)} minutes`
          : 'a time stands twice'
    lines.push(`At ${localDate(at, setup)} ${localTime(at, setup)} ${what}: nothing is followed across it.`)
  }
  if (checked.seams.length > 8)
    lines.push(`... and ${checked.seams.length - 8} more places where the times do not run on.`)
  for (const [name, from, to] of missingStretches(loaded, checked, setup).slice(0, 6))
    lines.push(
      `${name} has no reading that can be trusted from ${localDate(from, setup)} ${localTime(from, setup)} to ${localDate(to, setup)} ${localTime(to, setup)}.`,
    )
  return lines
}

/** Stretches of at least half an hour without a good reading. */
function missingStretches(loaded: Loaded, checked: Checked, setup: Setup): [string, number, number][] {
  const stretches: [string, number, number][] = []
  for (const { name, content: values } of checked.probes) {
    let last = -1
    values.forEach((value, i) => {
      if (Number.isNaN(value)) return
      const from = last < 0 ? (loaded.time[0] as number) : (loaded.time[last] as number)
      const missing = i - last - 1
      if (missing * setup.minutesBetweenReadings >= 30) stretches.push([name, from, loaded.time[i] as number])
      last = i
    })
  }
  return stretches.sort((a, b) => a[1] - b[1])
}

function probeLines(probe: ProbeDay, day: DayAnalysis, setup: Setup): string[] {
  if (!Number.isFinite(probe.lowest)) return [`${probe.name}: no reading on this day can be trusted.`]
  const lines = [
    `${probe.name}: water content from ${content(probe.lowest)} to ${content(probe.highest)}; ${probe.shots.length} shots seen${probe.shots.length > 0 ? `, the first at ${localTime(probe.shots[0]?.start as number, setup)}, the last at ${localTime(probe.shots.at(-1)?.start as number, setup)}, with a mean rise of ${content(probe.shots.reduce((sum, shot) => sum + shot.rise, 0) / probe.shots.length)}` : ''}.`,
  ]
  lines.push(
    probe.plateau.known
      ? `  After drain it settles at ${content(probe.plateau.level)} ± ${content(probe.plateau.spread)} (${probe.plateau.shots} shots).`
      : `  The level after drain is not known: ${probe.plateau.reason}.`,
  )
  if (!probe.night.known) lines.push(`  The overnight dry-down is not known: ${probe.night.reason}.`)
  else {
    const { from, to, fall, line } = probe.night.value
    lines.push(
      `  Overnight dry-down ${content(fall)} from ${localTime(from, setup)} to ${localTime(to, setup)}; in the dark it falls by ${(Math.abs(line.slopePerHour) * 100).toFixed(2)} ± ${(line.slopeError * 100).toFixed(2)} points an hour.`,
    )
    if (day.limits.known) {
      const reach = timeToRefill({ line, refillPoint: day.limits.value.refillPoint })
      if (!reach.falling) lines.push(`  When the refill point is reached cannot be said: ${reach.reason}.`)
      else if (reach.time === 0) lines.push('  The night ended at the refill point or below it.')
      else
        lines.push(
          `  At that speed the refill point is ${(reach.time / 3600).toFixed(1)} h away from where the night ended.`,
        )
    }
  }
  return lines
}

function containerLines(day: DayAnalysis, setup: Setup): string[] {
  const { container, medium } = setup
  if (!day.medium.known) return [`Not known: ${day.medium.reason}.`]
  const { porosity, capacity, air } = day.medium.value
  const lines = [
    `${medium?.name}: porosity ${percent(porosity)}; container capacity at a height of ${container.heightCentimetres} cm ${content(capacity)}, with ${percent(air)} of air.`,
    `${container.substrateLitres} L of it hold ${(capacity * container.substrateLitres).toFixed(1)} L of water at capacity, ${((capacity * container.substrateLitres) / container.plants).toFixed(1)} L a plant.`,
  ]
  for (const { name, plateau } of day.probes) {
    if (!plateau.known) continue
    const difference = plateau.level - capacity
    if (Math.abs(difference) > 0.05)
      lines.push(
        `${name} settles ${content(Math.abs(difference))} ${difference > 0 ? 'above' : 'below'} that capacity: a probe sees one place, so weigh a container before you trust either.`,
      )
  }
  return lines
}

function balanceLines(day: DayAnalysis, setup: Setup): string[] {
  if (!day.balance.known) return [`Not known: ${day.balance.reason}.`]
  const { feed, drain, events, feedEC, drainEC, stored, use } = day.balance.value
  const lines = [
    `${feed.toFixed(2)} L given in ${events} ${events === 1 ? 'entry' : 'entries'} of the log, ${drain.toFixed(2)} L drained: a drain fraction of ${feed > 0 ? percent(drain / feed) : 'nothing'}.`,
  ]
  lines.push(
    `The probes say that ${Math.abs(stored).toFixed(2)} L ${stored < 0 ? 'came out of' : 'went into'} storage, so the plants used about ${use.toFixed(2)} L a container, ${(use / setup.container.plants).toFixed(2)} L a plant.`,
  )
  for (const { name, shots } of day.probes) {
    if (events > 1 && shots.length !== events)
      lines.push(
        `The log has ${events} entries, ${name} saw ${counted(shots.length, 'shot')}: a shot while readings were missing, one that did not reach the probe, or a valve that did not open. Look which.`,
      )
  }
  if (feedEC.known && drainEC.known) {
    const rise = drainEC.value - feedEC.value
    lines.push(
      `Feed ${feedEC.value.toFixed(2)} dS/m, drain ${drainEC.value.toFixed(2)} dS/m (weighted by volume): the drain is ${Math.abs(rise).toFixed(2)} dS/m ${rise >= 0 ? 'saltier' : 'weaker'}.`,
    )
    const steady = feedEC.value / drainEC.value
    if (feed > 0 && drain / feed < steady - 0.05)
      lines.push(
        `At a steady state without uptake of salts ${percent(steady, 0)} would drain; less did, so salts are being taken up or stored. This is not a target for drain.`,
      )
  }
  if (use < 0) lines.push('A negative use is impossible: the log, the share of a container or a probe is wrong.')
  return lines
}

function demandLines(day: DayAnalysis, setup: Setup): string[] {
  if (!day.demand.known) return [`Not estimated: ${day.demand.reason}.`]
  const { reference, crop, perPlant, perContainer } = day.demand.value
  const lines = [
    `Reference evapotranspiration by FAO-56 ${reference.referenceET.toFixed(2)} mm/d; times ${setup.crop.coefficient} for ${setup.crop.name} ${crop.toFixed(2)} mm/d: ${perPlant.toFixed(2)} L a plant, ${perContainer.toFixed(2)} L a container.`,
  ]
  for (const warning of reference.warnings) lines.push(`Doubtful: ${explainWeatherFinding(warning).message}.`)
  lines.push(
    'FAO-56 was made for open fields. Under cover take it as an index and correct its coefficient with your own water balance.',
  )
  if (day.balance.known && day.balance.value.use > 0)
    lines.push(`The water balance of this day gives ${percent(day.balance.value.use / perContainer, 0)} of that.`)
  return lines
}

function planLines(day: DayAnalysis, setup: Setup): string[] {
  if (!day.plan.known || !day.limits.known) return [`No plan: ${day.plan.known ? '' : day.plan.reason}.`]
  const { fullPoint, refillPoint, from } = day.limits.value
  const { plan, use, from: useFrom } = day.plan.value
  const lines = [
    `Full point ${content(fullPoint)}: ${from}. Refill point ${content(refillPoint)}: ${percent(setup.wanted.depletion, 0)} of the available water used.`,
    `Expected use ${use.toFixed(2)} L a container, from ${useFrom}${day.light.measured ? ', spread with the light that was measured' : ', spread with an assumed day of light'}.`,
    `${plan.shots.length} shots, ${plan.applied.toFixed(2)} L together; ${percent(plan.drainFraction)} of it should drain (asked: ${percent(setup.wanted.drainFraction)}).`,
  ]
  plan.shots.forEach((shot, i) => {
    lines.push(
      `  ${String(i + 1).padStart(2)}. ${localTime(shot.time, setup)}  ${inMillilitres(shot.volume).toFixed(0).padStart(5)} mL (${inMillilitres(shot.perEmitter).toFixed(0)} mL an emitter), valve open ${runTimeText(shot.runTime)}: ${explainPlannedShot(shot)}`,
    )
  })
  for (const found of plan.findings) lines.push(`To be known: ${explainPlanFinding(found).message}.`)
  const last = day.probes.map((probe) => probe.last).filter((value) => !Number.isNaN(value))
  if (last.length > 1 && Math.max(...last) - Math.min(...last) > 0.05)
    lines.push(
      `The probes differ by ${content(Math.max(...last) - Math.min(...last))} at the end of the day; the plan rests on their mean.`,
    )
  if (litres(plan.applied) > 0 && plan.shots.length === 0) lines.push('Nothing is given.')
  return lines
}

function runTimeText(seconds: number): string {
  const whole = Math.round(seconds)
  return `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`
}

const CAUTIONS = [
  'This is advice from a model and a few readings, not an order. A wrong calibration or a probe that has moved can cost a crop: look at the plants, the drain and the weight of a container first.',
  'If a controller acts on it, every valve needs a longest run time, a most per day, a leak check and a safe state when readings are missing.',
  'Keep electricity away from water: extra-low voltage at the plants, a residual-current device, and a licensed electrician for the rest. Acids and concentrated fertiliser burn: goggles, gloves, acid into water. Drain carries nutrients: discharge or reuse it as local law says.',
]

/** Folds a line at 100 characters and keeps its indent. */
function folded(line: string): string {
  const indent = /^\s*/.exec(line)?.[0] ?? ''
  let out = ''
  let width = 0
  for (const word of line.trim().split(/(?<=\S) (?=\S)/)) {
    if (width > 0 && width + word.length > 99) {
      out += `\n${indent}  `
      width = indent.length + 2
    } else if (width > 0) {
      out += ' '
      width++
    } else out += indent
    out += word
    width += word.length
  }
  return out
}
