import { checkWatering, controlWatering, deadBand, explainControlFinding, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { throwing, withThrowing } from '../support/hostile.js'
import { safeWatering as safe } from '../support/safe-watering.js'
import { MIDNIGHT, settings } from './watering/zone.js'

const PARTS = ['request', 'limits', 'facts'] as const
const FIELDS = PARTS.flatMap((part) => Object.keys(safe[part]).map((name) => [part, name] as const))

describe('the last gate before the valve', () => {
  it.each(FIELDS)('refuses a shot whose %s has a %s that throws when it is read', (part, name) => {
    const check = checkWatering({ ...safe, [part]: withThrowing(safe[part], name) })
    expect(check).toEqual({ allowed: false, refusals: [{ code: 'input-unreadable', level: 'danger' }] })
  })
  it('refuses what throws as a whole', () => {
    for (const input of [throwing(), ...PARTS.map((part) => ({ ...safe, [part]: throwing() }))])
      expect(checkWatering(input).allowed).toBe(false)
    for (const part of PARTS) expect(checkWatering(withThrowing(safe, part)).allowed).toBe(false)
  })
  it('says in words that it could not read', () => {
    const [refusal] = checkWatering(throwing()).refusals
    expect(explainControlFinding(refusal!).message).toContain('cannot be read')
  })
  it('tells of a limit under a name that it does not know, and takes requests and facts that carry more', () => {
    const { maxPerShot, ...others } = safe.limits
    const slip = checkWatering({ ...safe, limits: { ...safe.limits, backUpAfer: 7200 } as never })
    expect(slip.refusals).toEqual([{ code: 'limit-unknown', level: 'danger', about: 'backUpAfer' }])
    const missing = checkWatering({ ...safe, limits: { ...others, maxPerShots: maxPerShot } as never }).refusals
    expect(missing.map(({ code, about }) => [code, about])).toEqual([
      ['limit-unknown', 'maxPerShots'],
      ['limit-missing', 'maxPerShot'],
    ])
    const carried = { zone: 'north', note: 'by hand' }
    const { request, facts } = safe
    expect(
      checkWatering({ ...safe, request: { ...request, ...carried }, facts: { ...facts, ...carried } }).allowed,
    ).toBe(true)
  })
})

describe('a controller', () => {
  const { start, step } = controlWatering(settings)
  const input = (minute: number) => ({
    now: MIDNIGHT + 9 * 3600 + 60 * minute,
    readings: [{ waterContent: 0.5, time: MIDNIGHT + 9 * 3600 + 60 * minute }],
    locked: false,
  })
  const open = Array.from({ length: 60 }, (_, i) => i).reduce(
    (made, minute) => (made.decision?.open ? made : stepped(made.state, minute)),
    { state: start, decision: undefined as ReturnType<typeof step>[1] | undefined, minute: 0 },
  )
  function stepped(before: typeof start, minute: number) {
    const [state, decision] = step(before, input(minute))
    return { state, decision, minute }
  }

  it('has opened the valve to begin with', () => expect(open.decision?.open).toBe(true))
  it.each(['now', 'readings', 'locked', 'override', 'acknowledge', 'metered', 'valve'])(
    'closes it on a message whose %s throws when it is read, and goes on with the next',
    (name) => {
      const [state, decision] = step(open.state, withThrowing(input(open.minute + 1), name))
      expect(decision).toMatchObject({ open: false, closeAfter: 0, reason: 'message-unreadable' })
      expect(step(state, input(open.minute + 2))[1].reason).not.toBe('message-unreadable')
    },
  )
  it('closes it on a reading that throws, and on a message that throws as a whole', () => {
    const readings = [withThrowing({ waterContent: waterContent(0.5), time: 0 }, 'time')]
    for (const message of [throwing(), { ...input(open.minute + 1), readings }])
      expect(step(open.state, message)[1].open).toBe(false)
  })
  it.each(Object.keys(start))('takes a state whose %s throws for lost, and closes', (name) => {
    const [state, decision] = step(withThrowing(open.state, name), input(open.minute + 1))
    expect(decision).toMatchObject({ open: false, reason: 'state-lost' })
    expect(() => JSON.stringify(state)).not.toThrow()
  })
  it('closes where neither state nor message can be read', () => {
    expect(step(throwing(), throwing())[1]).toMatchObject({ open: false, reason: 'state-lost' })
  })
  it('of the barest kind was not on where its state throws', () => {
    const band = deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) })
    expect(band.step(throwing(), 0.55)).toEqual([{ on: false }, false])
  })
})
