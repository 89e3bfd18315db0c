import { describe, expect, it } from 'vitest'
import { decide, moment, openings, settled } from './zone.js'

describe('an order to close that cannot be taken', () => {
  it.each<[string, (now: number) => unknown]>([
    ['for three days', (now) => ({ action: 'close', until: now + 3 * 86400 })],
    ['in milliseconds', (now) => ({ action: 'close', until: (now + 3600) * 1000 })],
    ['without an end', () => ({ action: 'close' })],
    ['with a time to last instead of an end', () => ({ action: 'close', until: 3600 })],
    ['in another word', (now) => ({ action: 'stop', until: now + 3600 })],
    ['as text', () => 'close'],
    ['as a list', () => []],
  ])('%s opens nothing while it is sent, is told, and holds no longer', (_, order) => {
    const { state, now } = settled(0.45)
    const { told } = decide(
      now,
      now + 7200,
      60,
      (at, i) => moment(at, 0.45 + 0.002 * (i % 2), at < now + 5400 ? { override: order(at) as never } : {}),
      {},
      state,
    )
    for (const at of openings(told)) expect(at).toBeGreaterThanOrEqual(now + 5400)
    expect(openings(told).length).toBeGreaterThan(0)
    expect(told[0]!.decision.reason).toBe('override-closed')
    expect(told[0]!.decision.findings.map(({ code }) => code)).toContain('override-refused')
  })
  it('because the clock cannot be read closes as well', () => {
    const { state, now } = settled(0.45)
    const { told } = decide(
      now,
      now + 86400,
      60,
      (at) => ({ ...moment(at, 0.45), now: Number.NaN, override: { action: 'close', until: at + 3600 } }),
      {},
      state,
    )
    expect(told.some(({ decision }) => decision.open)).toBe(false)
  })
  it('closes an opening that is under way', () => {
    const { state, now } = settled(0.52)
    const { told } = decide(
      now,
      now + 3600,
      60,
      (at, i) => moment(at, 0.45 + 0.002 * (i % 2), i % 30 < 2 ? {} : { override: 'off' as never }),
      {},
      state,
    )
    expect(told.some(({ decision }, i) => decision.open && i % 30 >= 2)).toBe(false)
    expect(told.some(({ decision }) => decision.open)).toBe(true)
  })
})

describe('what is no order to close', () => {
  it.each<[string, unknown]>([
    ['an order for water without an end', { action: 'water' }],
    ['nothing', null],
    ['the word that there is none', false],
    ['an order whose end is past', { action: 'close', until: settled().now - 60 }],
  ])('%s leaves the zone to its probes', (_, order) => {
    const { state, now } = settled(0.45)
    const input = (at: number, i: number) => moment(at, 0.45 + 0.002 * (i % 2), { override: order as never })
    const { told } = decide(now, now + 7200, 60, input, {}, state)
    expect(openings(told).length).toBeGreaterThan(2)
  })
})
