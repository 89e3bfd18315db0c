import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'
import { type DayAgain, dayAgain } from './again/day.js'
import { clock, EXAMPLES, mean } from './again/raw.js'
import { reportAgain } from './again/report.js'
import { partsOf, toldIn } from './again/told.js'

/**
 * Every number that the report prints is worked out once more by a script of its own (`again/`): from the raw rows, the set-up and the
 * procedures as the documentation tells them, without the package. A number that only echoes the set-up is taken from the set-up.
 */
const folder = mkdtempSync(join(tmpdir(), 'porewater-numbers-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const picture = join(folder, 'day.svg')

const bench = { setup: 'invented-bench/readings.json', readings: 'invented-bench/readings.csv' }
const slab = { setup: 'open-record/compartment.json', readings: 'open-record/slab_5min_compartment_2.csv' }
const percent = (share: number) => `${(100 * share).toFixed(1)} %`

describe.each([
  { name: 'the invented bench', ...bench, date: '2026-05-19', args: [] },
  { name: 'the real slabs on 31 March', ...slab, date: '2020-03-31', args: ['--day', '2020-03-31'] },
  { name: 'the real slabs on their last day', ...slab, date: '2020-04-01', args: [] },
])('the report of $name', ({ args, ...example }) => {
  const table = example.readings === bench.readings ? [] : [EXAMPLES + slab.readings, '--setup', EXAMPLES + slab.setup]
  const text = oneDay([...table, ...args, '--picture', picture])
  const printed = partsOf(text)
  const again = reportAgain(example).set('Picture', toldIn(picture))
  const told = (parts: ReadonlyMap<string, string>) => [...parts].map(([title, one]) => [title, toldIn(one)])

  it('tells no number but those of an independent script, and all of them', () => {
    for (const [title, one] of printed) expect([title, toldIn(one)]).toEqual([title, again.get(title)])
    expect([...printed.keys()].sort()).toEqual([...again.keys()].sort())
  })
  it('cannot change one number unnoticed', () => {
    const numbers = [...text.matchAll(/\d+/g)]
    expect(numbers.length).toBeGreaterThan(150)
    for (const { 0: number, index } of numbers) {
      const last = index + number.length - 1
      const other = (Number(text[last]) + 1) % 10
      const changed = partsOf(text.slice(0, last) + other + text.slice(last + 1))
      expect(told(changed)).not.toEqual(told(printed))
      const noticed = [...changed].some(([title, one]) => toldIn(one).join(' ') !== again.get(title)?.join(' '))
      expect(noticed, `${number} at ${index}`).toBe(true)
    }
  })
  it('puts the numbers into the sentences that are about them', () => {
    const whole = [...printed.values()].join(' ')
    for (const sentence of sentencesOf(dayAgain(example))) expect(whole).toContain(sentence)
  })
})

/** Sentences whose numbers could be exchanged with others nearby. */
function sentencesOf({ probes, levels, seen, pause, water, demand, unseen, root, plan, done, next, zone }: DayAgain) {
  const { bench: medium, full, refill, now } = levels
  const stored = `${Math.abs(water.stored).toFixed(2)} L ${water.stored < 0 ? 'came out of' : 'went into'} storage`
  return [
    `Longest stretch without a shot: from ${clock(pause[0])} to ${clock(pause[1])}, ${((pause[1] - pause[0]) / 3600).toFixed(1)} h.`,
    ...probes.map(
      (_, p) =>
        `shots seen, the first rise from ${clock(seen[p]![0]!.start.t)}, the last from ${clock(seen[p]!.at(-1)!.start.t)}, by ${(100 * mean(seen[p]!.map(({ start, peak }) => peak.x - start.x))).toFixed(1)} points on average.`,
    ),
    ...probes.map(
      ({ full: own }) => `Level after drain: ${percent(own.level)} ± ${percent(own.spread)} (${own.shots} shots).`,
    ),
    ...probes.map((_, p) => {
      const above = levels.lasts[p]! - levels.refills[p]!
      return `Its own refill point is ${percent(levels.refills[p]!)}; the day ended at ${percent(levels.lasts[p]!)}, ${(100 * Math.abs(above)).toFixed(1)} points ${above < 0 ? 'below' : 'above'} it.`
    }),
    ...(medium
      ? [
          `porosity ${percent(medium.porosity)}, container capacity at a height of 12 cm ${percent(medium.capacity)}, with ${percent(medium.porosity - medium.capacity)} of air; 14 L of it hold ${(14 * medium.capacity).toFixed(1)} L.`,
        ]
      : []),
    `By the probes: ${stored}. Used by the plants: ${water.use.toFixed(2)} L a container, ${(water.use / 2).toFixed(2)} L a plant.`,
    `${demand.plant.toFixed(2)} L a plant and ${demand.container.toFixed(2)} L a container`,
    ...probes.flatMap(({ name }, p) =>
      unseen[p]!.length > 0
        ? [
            `nobody can say whether ${name} rose after the shot${unseen[p]!.length > 1 ? 's' : ''} at ${unseen[p]!.map(clock).join(', ')}: readings are missing there`,
          ]
        : [],
    ),
    ...(Math.min(...root) < 18 ? [`the root zone was at its coldest ${Math.min(...root).toFixed(1)} °C: cool`] : []),
    ...(Math.max(...root) > 25 ? [`the root zone was at its warmest ${Math.max(...root).toFixed(1)} °C: warm`] : []),
    `full point ${percent(full)} (level after drain), refill point ${percent(refill)}; the day ended at ${percent(now)}.`,
    ...(next
      ? [
          `Expected use ${next.use.toFixed(2)} L a container, from the days so far (nine of ten days between ${next.ninety[0].toFixed(2)} L and ${next.ninety[1].toFixed(2)} L)`,
        ]
      : [`Expected use ${water.use.toFixed(2)} L a container, from the water balance of this day`]),
    `; ${percent(plan.share)} of it should drain (asked: ${percent(Number.parseFloat(zone.limits.drainFraction) / 100)}).`,
    `Different from this day: ${plan.openings.length} shots, ${done.length} on the day before;`,
  ]
}
