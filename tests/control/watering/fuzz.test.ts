import { controlWatering, hours, seconds, type WateringInput, type WateringSettings } from 'porewater'
import { describe, expect, it } from 'vitest'
import { lots } from './lots.js'
import { MIDNIGHT, settings } from './zone.js'

/** A million steps with `POREWATER_FUZZ=1000000`; fewer by default. */
const STEPS = Number(process.env.POREWATER_FUZZ ?? 40_000)

const LIES: readonly unknown[] = [
  Number.NaN,
  null,
  undefined,
  Infinity,
  -Infinity,
  -999,
  65535,
  0,
  -0.2,
  '0.45',
  'error',
  true,
  {},
  [],
]
const pick = <T>(random: () => number, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T

/** What comes in: a level that wanders, lies, silence, words that nobody knows, and a clock that misbehaves for a while. */
function sender(random: () => number, often: number) {
  let level = 0.5
  let fault = 'none'
  let frozen = 0
  let drained = 0
  return (time: number): WateringInput => {
    if (random() < 0.002 * often) {
      fault = pick(random, ['none', 'none', 'none', 'day', 'back', 'frozen', 'milliseconds', 'nan', 'word', 'flap'])
      frozen = time
    }
    level = Math.min(0.75, Math.max(0.3, level + 0.004 * (random() - 0.5)))
    const shown = random() < 0.1 * often ? pick(random, LIES) : Math.round(level * 1000) / 1000
    // Drain in spells, so that refills begin, end and are given up; now and then a counter that lies or begins anew.
    if (random() < 0.02 * (1 + Math.sin(time / 40_000)))
      drained = random() < 0.01 * often ? 0 : drained + 0.2 * random()
    const now = clockOf(fault, time, frozen, random)
    const readings =
      random() < 0.05
        ? pick(random, [[], null, undefined, 'none', [null], [{}]])
        : [{ waterContent: shown, time: pick(random, [now, now, now, time, time - 3000, null]) }]
    return {
      now,
      readings,
      drained: (random() < 0.03 * often ? pick(random, LIES) : drained) as never,
      locked: random() < 0.02 * often ? pick(random, [true, null, undefined, 'no', 0]) : false,
      ...(random() < 0.01 * often && {
        override: pick<unknown>(random, [
          { action: 'water', until: time + 3600 },
          { action: 'wtaer', until: 1 },
          'open',
          { action: 'close', until: time * 1000 },
        ]),
      }),
      ...(random() < 0.01 * often && {
        acknowledge: pick<unknown>(random, [
          ['shots-without-rise'],
          ['no such code'],
          'all',
          null,
          ['use-too-small', 'clock-doubtful'].slice(0, 1),
        ]),
      }),
      ...(random() < 0.01 * often && { valve: pick<unknown>(random, ['open', 'closed', 'opne', 1, null]) }),
      ...(random() < 0.01 * often && { metered: pick<unknown>(random, [Number.NaN, -1, '12', 1e9, null]) }),
    } as WateringInput
  }
}

function clockOf(fault: string, time: number, frozen: number, random: () => number): unknown {
  if (fault === 'day') return time + 86400
  if (fault === 'back') return time - 5000
  if (fault === 'frozen') return frozen
  if (fault === 'milliseconds') return time * 1000
  if (fault === 'nan') return pick(random, LIES)
  if (fault === 'word') return 'now'
  return fault === 'flap' && random() < 0.5 ? time + 86400 : time
}

/** One field anywhere in a state removed, retyped, or nulled. */
function damaged(state: unknown, random: () => number): unknown {
  const copy = JSON.parse(JSON.stringify(state))
  let node = copy
  for (;;) {
    const key = pick(random, Object.keys(node))
    const value = node[key]
    if (typeof value === 'object' && value !== null && Object.keys(value).length > 0 && random() < 0.8) {
      node = value
      continue
    }
    const how = pick(random, ['remove', 'null', 'text', 'NaN'])
    if (how === 'remove') delete node[key]
    else node[key] = how === 'null' ? null : how === 'text' ? `${String(value)}` : Number.NaN
    return copy
  }
}

interface Water {
  readonly at: number
  readonly litres: number
}

/** Runs the reducer against an own account of what valves that close by themselves gave. */
function run(changed: Partial<WateringSettings>, poll: number, steps: number, damage: number, often = 1) {
  const random = lots(poll * 7919 + steps)
  const rules = { ...settings, ...changed }
  const reducer = controlWatering(rules)
  const send = sender(random, often)
  let state: unknown = reducer.start
  let [open, until, since, longest, worst, outside] = [false, 0, 0, 0, 0, 0]
  const recent: Water[] = []
  let sum = 0
  let errors = 0
  let refills = 0
  for (let i = 0; i < steps; i++) {
    const time = MIDNIGHT + i * poll
    if (random() < damage) state = damaged(state, random)
    const [next, decision] = reducer.step(state as never, send(time))
    state = next
    const gave = open ? Math.min(poll, Math.max(0, until - (time - poll))) : 0
    if (gave > 0) {
      recent.push({ at: time - poll, litres: (gave * rules.flow) / 3600 })
      sum += (gave * rules.flow) / 3600
      longest = Math.max(longest, time - poll + gave - since)
    }
    while (recent[0] !== undefined && recent[0].at < time - 86400) sum -= (recent.shift() as Water).litres
    worst = Math.max(worst, sum)
    if (decision.open && !(open && until > time)) since = time
    if (decision.open) {
      const local = (time - MIDNIGHT) % 86400
      if (local < 7 * 3600 || local + decision.closeAfter > 18 * 3600 + 1) outside++
      if (!Number.isFinite(decision.closeAfter)) errors++
    }
    if (decision.reason === 'message-unreadable') errors++
    if (decision.reason === 'refill') refills++
    open = decision.open
    until = time + decision.closeAfter
  }
  return { worst, longest, outside, errors, refills, state }
}

describe('random steps', () => {
  it.each([1, 60, 900])(
    'every %s s never give more than a day may have, nor run longer than an opening may',
    (poll) => {
      const { worst, longest, errors, state } = run({}, poll, Math.ceil(STEPS / 4), 0)
      expect(worst).toBeLessThanOrEqual(settings.maxPerDay * 1.05)
      expect(longest).toBeLessThanOrEqual(settings.maxRunTime + 1e-6)
      expect(errors).toBe(0)
      expect(JSON.stringify(state).length).toBeLessThan(4000)
    },
  )
  it('from states with fields removed, retyped and nulled stay inside as well', () => {
    const { worst, longest, errors } = run({}, 60, Math.ceil(STEPS / 4), 0.002)
    expect(worst).toBeLessThanOrEqual(settings.maxPerDay * 1.05)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime + 1e-6)
    expect(errors).toBe(0)
  })
  it('in a zone that may be watered at any hour do so too', () => {
    const all = { allowedHours: [{ from: seconds(0), to: hours(24) }], minRest: seconds(0), probeLag: seconds(0) }
    expect(run(all, 60, Math.ceil(STEPS / 4), 0).worst).toBeLessThanOrEqual(settings.maxPerDay * 1.05)
  })
  it('in a calmer world, in which zones are filled until they drain, do so too', () => {
    const { worst, longest, errors, refills } = run({}, 300, Math.ceil(STEPS / 4), 0.0002, 0.02)
    expect(refills).toBeGreaterThan(0)
    expect(worst).toBeLessThanOrEqual(settings.maxPerDay * 1.05)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime + 1e-6)
    expect(errors).toBe(0)
  })
})
